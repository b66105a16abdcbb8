import { existsSync, globSync } from 'node:fs';
import { sep } from 'node:path';
import type { Command } from 'commander';
import { createTwoFilesPatch } from 'diff';
import { type Upgrade, type Upgraded, upgraded } from '../content/migrations/index.ts';
import { counted, problemList } from '../content/read/problem-list.ts';
import { readContent } from '../content/read/read-content.ts';
import { UsageError } from '../content/read/usage-error.ts';
import { FORMAT } from '../content/schema/format.ts';
import { contentFolder, contentIn } from '../ledger/load-ledger.ts';
import { todayFrom } from '../ledger/today.ts';
import { ledgerCommand } from './command.ts';
import { PROBLEM_CODE } from './exit-codes.ts';
import { readText } from './files/changes.ts';
import { writeSafely } from './files/write-safely.ts';

/** `upgrade [folder]`: brings content of an older format up to the present one, the difference first. */
export function upgradeCommand(): Command {
  return ledgerCommand('upgrade', {
    does: 'Bring content files of an older format up to the present one.',
    more: `Without --write the difference is shown and nothing is changed. Comments, order and
whatever needs no change stay as they are, byte by byte.`,
    examples: [
      ['upgrade', 'show what would change'],
      ['upgrade --write', 'change it, then tell what problems are left'],
    ],
    exits: {
      0: 'shown, or written without a problem left; or nothing had to change',
      [PROBLEM_CODE]: 'problems are left in what was written; or it can’t be read or written',
    },
  })
    .argument('[folder]', 'the content folder', contentFolder())
    .option('--write', 'write what is shown')
    .action(async (given: string, { write = false }: { write?: boolean }) => {
      const folder = contentIn(given);
      const upgrade = upgraded(filesOf(folder));
      if (upgrade.from > FORMAT) {
        throw new UsageError(
          `${folder} is of format ${upgrade.from}; this version reads formats up to ${FORMAT}: update the program.`,
        );
      }
      if (upgrade.files.length === 0) {
        console.log(`${folder} is of format ${upgrade.from}, the present one: nothing has to change.`);
        return;
      }
      console.log(difference(upgrade));
      if (!write) {
        console.log('\nNothing was written. With --write, it is.');
        return;
      }
      const today = todayFrom(process.env, new Date());
      await writeSafely(folder, { files: upgrade.files }, today);
      const { problems } = readContent({ folder, today, shownAs: folder, drafts: true });
      console.log(`\nWritten: ${counted(upgrade.files.length, 'file')}.`);
      if (problems.length === 0) return;
      console.error(`\nStill to be mended:\n\n${problemList(problems)}`);
      process.exitCode = PROBLEM_CODE;
    });
}

function filesOf(folder: string): Map<string, string> {
  if (!existsSync(folder)) throw new UsageError(`${folder} is no content folder: there is no such folder.`);
  const paths = globSync(
    '{guide.yaml,cautions.mdx,{instruments,makers}/*.yaml,methods/*.mdx,panels/*/index.{md,mdx}}',
    {
      cwd: folder,
    },
  );
  return new Map(paths.map((path) => [path.split(sep).join('/'), readText(folder, path)] as const).toSorted());
}

/** All that changes: reasons and a unified difference a file; files that go are named in one list. */
function difference({ from, files }: Upgrade): string {
  const gone = files.filter((it) => it.after === undefined);
  const byReason = Map.groupBy(gone, (it) => it.why.join('; '));
  return [
    `From format ${from} to ${FORMAT}: ${counted(files.length, 'file')}.`,
    ...files.filter((it) => it.after !== undefined).map(fileDifference),
    ...[...byReason].map(([why, all]) => `Goes, since ${why}:\n${all.map((it) => `  ${it.path}`).join('\n')}`),
  ].join('\n\n');
}

function fileDifference({ path, before, after, why }: Upgraded): string {
  const patch = createTwoFilesPatch(path, path, before, after ?? '', undefined, undefined, { context: 2 });
  return `${why.map((it) => `# ${it}`).join('\n')}\n${patch.replace(/^Index: .*\n=+\n/, '').trimEnd()}`;
}
