import { Command } from 'commander';
import { calledAs } from '../content/read/called-as.ts';
import { contentFolder } from '../ledger/load-ledger.ts';
import { againstCommand } from './against.ts';
import { benchCommand } from './bench/bench.ts';
import { buildCommand } from './build.ts';
import { changesCommand } from './changes.ts';
import { checkCommand } from './check.ts';
import { correctCommand } from './correct/correct.ts';
import { devCommand } from './dev.ts';
import { finishCutShort } from './files/edit-lock.ts';
import { importCommand } from './import/import.ts';
import { newCommand } from './new/new.ts';
import { plateausCommand } from './plateaus/plateaus.ts';
import { previewCommand } from './preview.ts';
import { recalibrateCommand } from './recalibrate/recalibrate.ts';
import { recipeCommand } from './recipe.ts';
import { renameCommand } from './rename/rename.ts';
import { repriceCommand } from './reprice/reprice.ts';
import { retestCommand } from './retest/retest.ts';
import { schemaCommand } from './schema.ts';
import { showCommand } from './show.ts';
import { staleCommand } from './stale.ts';
import { startCommand } from './start/start.ts';
import { textCommand } from './text.ts';
import { upgradeCommand } from './upgrade.ts';

/** All of the tester's commands. */
export function ledgerProgram(): Command {
  const program = new Command('panel-ledger')
    .description('The tester’s commands of Panel Ledger.')
    .addHelpText(
      'after',
      `\nExample:\n  ${calledAs()} check --help\n      what a command does, its flags, examples and exit codes`,
    );
  for (const make of [
    startCommand,
    newCommand,
    devCommand,
    checkCommand,
    buildCommand,
    previewCommand,
    recipeCommand,
    changesCommand,
    staleCommand,
    showCommand,
    againstCommand,
    repriceCommand,
    recalibrateCommand,
    retestCommand,
    benchCommand,
    importCommand,
    plateausCommand,
    correctCommand,
    renameCommand,
    textCommand,
    schemaCommand,
    upgradeCommand,
  ])
    program.addCommand(make());
  // Whatever a command reads, it is all of an edit or nothing of it.
  return program.hook('preAction', () => finishCutShort(contentFolder()));
}
