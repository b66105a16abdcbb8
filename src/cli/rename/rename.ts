import { Argument, Command } from 'commander';
import { counted } from '../../content/read/problem-list.ts';
import { contentFolder } from '../../ledger/load-ledger.ts';
import { todayFrom } from '../../ledger/today.ts';
import { agreedTo } from '../ask/agree.ts';
import { carryOut } from '../ask/carry-out.ts';
import type { Terminal } from '../ask/terminal.ts';
import { wrapped } from '../ask/wrap.ts';
import { PROBLEM_CODE } from '../exit-codes.ts';
import { writeSafely } from '../files/write-safely.ts';
import { type Kind, planRename, type RenamePlan } from './plan.ts';

const EXPLAINED = `
The name of a panel's folder is part of its address, that of a maker's file is
what its panels call it by. The folder or file is moved, the old name goes into
its list \`formerly\`, and what names it elsewhere follows: links in all texts,
the maker of each panel. Every other byte stays as it is. After the next build
the panel's old addresses lead on to the new ones, on any host, and links that
name the old one among their choices (/compare/?with=…, /?maker=…) mean the new.

The names that readers see, maker and model, are fields of the files, and are
changed there.

Examples:
  npm run ledger -- rename panel kelpwright-plover kelpwright-plover-2 --dry-run
  npm run ledger -- rename maker kelpwright kelp-and-wright

Exit code:
  0  renamed, or shown (--dry-run)
  ${PROBLEM_CODE}  nothing was changed: a name that is taken or not there, a problem that it
     would bring, or a no`;

interface Options {
  yes?: boolean;
  dryRun?: boolean;
}

/** `rename`: another name for a panel or a maker. Exit codes as in its help. */
export function renameCommand(terminal?: Terminal): Command {
  return new Command('rename')
    .description('Give a panel or a maker another name; old addresses lead on, and links follow.')
    .addArgument(new Argument('<kind>', 'what has the name').choices(['panel', 'maker']))
    .argument('<old>', 'its name: that of the folder or file, without an ending')
    .argument('<new>', 'the name that it gets')
    .option('-y, --yes', 'rename without asking')
    .option('-n, --dry-run', 'show what would be changed')
    .addHelpText('after', EXPLAINED)
    .action((kind: Kind, from: string, to: string, options: Options) => {
      const folder = contentFolder();
      return carryOut((own) => rename(planRename(folder, kind, from, to), folder, options, own), {
        terminal,
        undone: 'nothing was changed',
      });
    });
}

/** @returns false where nothing was changed though it was asked for, which has been said */
async function rename(plan: RenamePlan, folder: string, options: Options, terminal: Terminal): Promise<boolean> {
  const { say } = terminal;
  say(planText(plan, folder));
  if (options.dryRun) {
    say('\nNothing was changed (--dry-run).');
    return true;
  }
  if (!options.yes && !(await agreedTo('Rename it so?', terminal))) return false;
  await writeSafely(folder, plan, todayFrom(process.env, new Date()));
  const others = plan.files.length - 1;
  say(
    `\nRenamed${others > 0 ? `; ${counted(others, 'other file')} changed` : ''}. Next: npm run check, then npm run build.`,
  );
  return true;
}

/** What will be moved and changed. */
function planText({ moves, lines, left }: RenamePlan, folder: string): string {
  return [
    ...moves.map(({ from, to }) => `${folder}/${from}\n  moves to ${folder}/${to}`),
    ...[...Map.groupBy(lines, (it) => it.path)].map(([path, own]) =>
      [
        `${folder}/${path}`,
        ...own.map(({ line, what }) => wrapped(line === undefined ? what : `line ${line}: ${what}`, 2)),
      ].join('\n'),
    ),
    ...(left.length > 0
      ? [['To be changed by hand:', ...left.map((it) => `  ${folder}/${it.path}:${it.line}  ${it.address}`)].join('\n')]
      : []),
  ].join('\n');
}
