import { Command } from 'commander';
import { calledAs } from '../content/read/called-as.ts';
import { contentFolder } from '../ledger/load-ledger.ts';
import { finishCutShort } from './files/edit-lock.ts';

/** The commands, in the order of the help. A command's own code alone is loaded for it: all of it takes a while. */
const COMMANDS: Readonly<Record<string, () => Promise<() => Command>>> = {
  start: async () => (await import('./start/start.ts')).startCommand,
  new: async () => (await import('./new/new.ts')).newCommand,
  dev: async () => (await import('./dev.ts')).devCommand,
  check: async () => (await import('./check.ts')).checkCommand,
  build: async () => (await import('./build.ts')).buildCommand,
  preview: async () => (await import('./preview.ts')).previewCommand,
  recipe: async () => (await import('./recipe.ts')).recipeCommand,
  changes: async () => (await import('./changes.ts')).changesCommand,
  stale: async () => (await import('./stale.ts')).staleCommand,
  show: async () => (await import('./show.ts')).showCommand,
  against: async () => (await import('./against.ts')).againstCommand,
  reprice: async () => (await import('./reprice/reprice.ts')).repriceCommand,
  recalibrate: async () => (await import('./recalibrate/recalibrate.ts')).recalibrateCommand,
  retest: async () => (await import('./retest/retest.ts')).retestCommand,
  bench: async () => (await import('./bench/bench.ts')).benchCommand,
  import: async () => (await import('./import/import.ts')).importCommand,
  plateaus: async () => (await import('./plateaus/plateaus.ts')).plateausCommand,
  correct: async () => (await import('./correct/correct.ts')).correctCommand,
  rename: async () => (await import('./rename/rename.ts')).renameCommand,
  text: async () => (await import('./text.ts')).textCommand,
  schema: async () => (await import('./schema.ts')).schemaCommand,
  upgrade: async () => (await import('./upgrade.ts')).upgradeCommand,
};

/**
 * The tester's commands.
 *
 * @param named the one that is called; all where it is none of them, as where help is asked for
 */
export async function ledgerProgram(named = ''): Promise<Command> {
  const program = new Command('panel-ledger')
    .description('The tester’s commands of Panel Ledger.')
    .addHelpText(
      'after',
      `\nExample:\n  ${calledAs()} check --help\n      what a command does, its flags, examples and exit codes`,
    );
  const wanted = Object.hasOwn(COMMANDS, named) ? [COMMANDS[named]] : Object.values(COMMANDS);
  for (const load of wanted) if (load) program.addCommand((await load())());
  // Whatever a command reads, it is all of an edit or nothing of it.
  return program.hook('preAction', () => finishCutShort(contentFolder()));
}
