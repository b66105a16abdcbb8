#!/usr/bin/env node
import { Command } from 'commander';
import { UsageError } from '../content/read/usage-error.ts';
import { buildCommand } from './build.ts';
import { changesCommand } from './changes.ts';
import { checkCommand } from './check.ts';
import { showCommand } from './show.ts';
import { staleCommand } from './stale.ts';

const program = new Command('panel-ledger').description('The tester’s commands of Panel Ledger.');
program
  .addCommand(checkCommand())
  .addCommand(buildCommand())
  .addCommand(changesCommand())
  .addCommand(staleCommand())
  .addCommand(showCommand());
try {
  await program.parseAsync();
} catch (error) {
  if (!(error instanceof UsageError)) throw error;
  console.error(error.message);
  process.exitCode = 1;
}
