import { Command } from 'commander';
import { buildCommand } from './build.ts';
import { checkCommand } from './check.ts';
import { calledAs } from './command.ts';
import { devCommand } from './dev.ts';
import { newCommand } from './new/new.ts';
import { previewCommand } from './preview.ts';

/** All of the tester's commands. */
export function ledgerProgram(): Command {
  const program = new Command('panel-ledger')
    .description('The tester’s commands of Panel Ledger.')
    .addHelpText(
      'after',
      `\nExample:\n  ${calledAs()} check --help\n      what a command does, its flags, examples and exit codes`,
    );
  for (const make of [newCommand, devCommand, checkCommand, buildCommand, previewCommand]) program.addCommand(make());
  return program;
}
