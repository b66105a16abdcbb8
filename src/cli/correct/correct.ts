import { stringify } from 'yaml';
import { ContentError, problemList } from '../../content/read/problem-list.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import type { Correction } from '../../content/schema/corrections.ts';
import { contentFolder, loadLedger } from '../../ledger/load-ledger.ts';
import { changesOf } from '../../site/changes/changes-of.ts';
import { agreedTo } from '../ask/agree.ts';
import { dayFlag } from '../ask/day-flag.ts';
import { processTerminal, type Terminal } from '../ask/terminal.ts';
import { ledgerCommand } from '../command.ts';
import { PROBLEM_CODE } from '../exit-codes.ts';
import { writeSafely } from '../files/write-safely.ts';
import { wrapped } from '../text/lay-out.ts';
import { CORRECTIONS_FILE, correctable, correctionsChange, correctionsOf } from './plan.ts';

interface Options {
  against: string;
  why?: string;
  panel?: string;
  metric?: string;
  date?: string;
  yes?: boolean;
  dryRun?: boolean;
  json?: boolean;
}

/** `correct`: an entry in the public list of corrections, of what has moved since a revision. Exit codes as in its help. */
export function correctCommand(terminal?: Terminal) {
  return ledgerCommand('correct', {
    does: 'Write what you have corrected into the public list of corrections.',
    more: `Correct the reading in the panel’s file first. This command finds which figures of
which session have moved by that since a revision, and adds an entry for each
session to ${CORRECTIONS_FILE}: what was, what is, why, and what moved with it. The
panel’s pages, the page of changes, the feed and the data files then say so.

A new price, a new session or a new version of a method is no correction and is
left aside. A text or a method that was wrong is written into the file by hand.`,
    examples: [
      ['correct --why "A digit was mistyped from the bench sheet."', 'what has moved since the last commit'],
      ['correct --against HEAD~1 --panel kelpwright-gannet', 'of one panel, since the commit before'],
    ],
    exits: {
      0: 'written, or shown (--dry-run)',
      [PROBLEM_CODE]: 'nothing was written: nothing has moved, a problem, or a no',
    },
  })
    .option('--against <what>', 'a git revision, a built folder or a panels.json', 'HEAD')
    .option('--why <text>', 'how it came about, and how it was found; for readers')
    .option('--panel <name>', 'of this panel alone')
    .option('--metric <id>', 'the figure that was wrong; the others moved with it')
    .option('--date <day>', 'day of the correction, YYYY-MM-DD; today unless given')
    .option('-y, --yes', 'write without asking')
    .option('-n, --dry-run', 'show what would be written')
    .option('--json', 'print the entries as JSON')
    .action(async (options: Options) => {
      const said = terminal ?? processTerminal();
      // Of JSON nothing else may stand on that channel.
      const own: Terminal = options.json ? { ...said, say: () => {} } : said;
      try {
        const entries = await correct(options, own);
        if (!entries) process.exitCode = PROBLEM_CODE;
        else if (options.json) said.say(JSON.stringify({ file: CORRECTIONS_FILE, ...entries }, null, 2));
      } catch (error) {
        if (!(error instanceof ContentError)) throw error;
        own.complain(problemList(error.problems, 'nothing was written'));
        process.exitCode = PROBLEM_CODE;
      }
    });
}

/** What was written, or would be; undefined where it stopped, which has been said. */
async function correct(
  options: Options,
  terminal: Terminal,
): Promise<{ corrections: Correction[]; written: boolean } | undefined> {
  const folder = contentFolder();
  const loaded = loadLedger({ folder, watch: true });
  const { today, panels } = loaded.ledger;
  const date = dayFlag(options.date, today);
  const { against, changes } = await changesOf(options.against, { folder, loaded });
  const newest = new Map([...panels].flatMap(([slug, { current }]) => (current ? [[slug, current.date]] : [])));
  const moved = correctable(changes, newest);
  if (moved.length === 0) {
    terminal.complain(
      wrapped(`Against ${against} no figure has moved within a session that it has too. Nothing was written.`),
    );
    return undefined;
  }
  const why = options.why?.trim() || (await terminal.ask?.('How did it come about, for readers: ')) || '';
  if (why === '') {
    throw new UsageError('Why it was wrong is not said; readers are told. Give it as --why "…". Nothing was written.');
  }
  const corrections = correctionsOf(moved, { date, why, panel: options.panel, metric: options.metric });
  const change = correctionsChange(folder, corrections);
  terminal.say(
    `${wrapped(`Against ${against}, for ${CORRECTIONS_FILE}:`)}\n\n${stringify(corrections, { lineWidth: 78 }).trimEnd()}`,
  );
  if (options.dryRun) {
    terminal.say('\nNothing was written (--dry-run).');
    return { corrections, written: false };
  }
  if (!options.yes && !(await agreedTo(`Add it to ${CORRECTIONS_FILE}?`, terminal))) return undefined;
  await writeSafely(folder, { files: [change] }, today);
  terminal.say(`\nAdded to ${CORRECTIONS_FILE}. Next: npm run check, then npm run build.`);
  return { corrections, written: true };
}
