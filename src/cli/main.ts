#!/usr/bin/env node
import { Command } from 'commander';
import { UsageError } from '../content/read/usage-error.ts';
import { contentFolder } from '../ledger/load-ledger.ts';
import { buildCommand } from './build.ts';
import { checkCommand } from './check.ts';
import { finishCutShort } from './files/edit-lock.ts';
import { recalibrateCommand } from './recalibrate/recalibrate.ts';
import { renameCommand } from './rename/rename.ts';
import { repriceCommand } from './reprice/reprice.ts';
import { retestCommand } from './retest/retest.ts';

const program = new Command('panel-ledger').description('The tester’s commands of Panel Ledger.');
program
  .addCommand(checkCommand())
  .addCommand(buildCommand())
  .addCommand(repriceCommand())
  .addCommand(recalibrateCommand())
  .addCommand(retestCommand())
  .addCommand(renameCommand());
// Whatever a command reads, it is all of an edit or nothing of it.
program.hook('preAction', () => finishCutShort(contentFolder()));
try {
  await program.parseAsync();
} catch (error) {
  if (!(error instanceof UsageError)) throw error;
  console.error(error.message);
  process.exitCode = 1;
}
