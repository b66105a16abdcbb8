import { join } from 'node:path';
import type { Command } from 'commander';
import { parse } from 'yaml';
import { openContent } from '../../content/edit/content-text.ts';
import { calledAs } from '../../content/read/called-as.ts';
import { counted } from '../../content/read/problem-list.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import { valueAt } from '../../content/schema/block.ts';
import { nearest } from '../../content/schema/suggest.ts';
import { contentFolder } from '../../ledger/load-ledger.ts';
import { todayFrom } from '../../ledger/today.ts';
import type { Conflict, Side, Take } from '../../site/bench/browser/merge-runs.ts';
import { exportRun } from '../../site/bench/browser/pad-file.ts';
import { newLog } from '../../site/bench/browser/run.ts';
import { agreedTo } from '../ask/agree.ts';
import { carryOut } from '../ask/carry-out.ts';
import { processTerminal, type Terminal } from '../ask/terminal.ts';
import { wrapped } from '../ask/wrap.ts';
import { ledgerCommand } from '../command.ts';
import { PROBLEM_CODE } from '../exit-codes.ts';
import { panelFiles } from '../files/panel-files.ts';
import { writeNewFile } from '../files/write-new.ts';
import { writeSafely } from '../files/write-safely.ts';
import { several } from '../new/settings.ts';
import { type BenchPlan, planBench, sessionRun } from './plan.ts';

interface ReadFlags {
  take?: readonly string[];
  yes?: boolean;
  dryRun?: boolean;
  json?: boolean;
}

/** `bench`: sessions from the bench pad into content files, and back. */
export function benchCommand(terminal?: Terminal): Command {
  const group = ledgerCommand('bench', {
    does: 'Take a session of the bench pad into its panel’s file, or give one to the pad.',
    examples: [['bench read --help', 'what it does, its flags, examples and exit codes']],
    exits: { 0: 'done', [PROBLEM_CODE]: 'a problem: nothing was written' },
  });
  return group.addCommand(readCommand(terminal)).addCommand(writeCommand(terminal));
}

function readCommand(terminal?: Terminal): Command {
  return ledgerCommand('read', {
    does: 'Write the content file of a run that the bench pad has saved.',
    more: `A new panel gets a file, another one a session more; a run that is not finished is
a draft. Photos that lie beside FILE go beside the panel’s file.

Where the panel has a session of that day, the two are put together: what only one
of them has is taken, and a place where they say different things is listed, as
mine (what the content folder has) and theirs (what FILE has). Nothing is
written until --take says which: for all of them, or place by place. Comments
that stand within the session’s lines go with them.`,
    examples: [
      ['bench read kelpwright-plover-2026-11-21.bench.json', 'write it, or list what does not agree'],
      ['bench read FILE --take theirs', 'take what FILE says wherever the two differ'],
      ['bench read FILE --take mine --take peak.red=theirs', 'the same the other way, but for one place'],
    ],
    exits: {
      0: 'written, shown (--dry-run), or there already',
      [PROBLEM_CODE]: 'nothing was written: a problem, two values for one place, or a no',
    },
  })
    .argument('<file>', 'a file that the pad has saved')
    .option('--take <side>', 'mine, theirs, or place=mine and place=theirs; may stand several times', several)
    .option('-y, --yes', 'write without asking')
    .option('-n, --dry-run', 'show what would be written')
    .option('--json', 'tell of it as JSON')
    .action((file: string, flags: ReadFlags) =>
      carryOut((own, tell) => read(file, flags, own, tell), { terminal, json: flags.json }),
    );
}

async function read(
  file: string,
  flags: ReadFlags,
  terminal: Terminal,
  tell: (done: object) => void,
): Promise<boolean> {
  const folder = contentFolder();
  const plan = planBench(folder, file, takeOf(flags.take ?? []));
  const { conflicts, files } = plan;
  const open = conflicts.filter((it) => !it.isDecided);
  const { say } = terminal;
  tell(jsonOf(plan, folder));
  for (const it of conflicts) say(conflictText(it));
  if (open.length > 0) {
    const them = open.length === 1 ? 'it' : 'each of them';
    terminal.complain(
      wrapped(
        `${counted(open.length, 'place')} with two values; nothing was written. --take mine or --take theirs says which counts, --take ${open[0]?.path}=theirs for ${them}.`,
      ),
    );
    return false;
  }
  if (files.length === 0) {
    say('All of it is there already; nothing was written.');
    return true;
  }
  // Place and sentence apart: a path can't be broken.
  say(`${join(folder, plan.path)}\n${wrapped(`${whatOf(plan)}.`)}`);
  if (flags.dryRun) {
    say(`\n${String(files[0]?.after)}\nNothing was written (--dry-run).`);
    return true;
  }
  if (!flags.yes && !(await agreedTo('Write it?', terminal))) return false;
  await writeSafely(folder, { files }, todayFrom(process.env, new Date()));
  say(`Wrote ${counted(files.length, 'file')}. Next: ${calledAs()} check`);
  return true;
}

function whatOf({ run, isMerged, files }: BenchPlan): string {
  const readings = counted(run.entries.length, 'reading');
  const photos = files.length > 1 ? `, ${counted(files.length - 1, 'photo')}` : '';
  const what = isMerged
    ? 'Put together with the session'
    : run.panel.isNew
      ? 'A new panel with a session'
      : 'A session';
  return `${what} of ${run.date}, ${readings}${photos}${run.isFinished ? '' : '; a draft'}`;
}

const conflictText = ({ path, mine, theirs, taken, isDecided }: Conflict) =>
  [path, `  mine    ${mine}`, `  theirs  ${theirs}`, ...(isDecided ? [`  taken   ${taken}`] : []), ''].join('\n');

const jsonOf = ({ path, conflicts, files, run, isMerged }: BenchPlan, folder: string) => ({
  file: join(folder, path),
  session: run.date,
  readings: run.entries.length,
  merged: isMerged,
  conflicts: conflicts.map(({ path: place, mine, theirs, taken, isDecided }) => ({
    place,
    mine,
    theirs,
    taken: isDecided ? taken : null,
  })),
  files: files.map((it) => join(folder, it.path)),
});

/** `--take theirs --take peak.red=mine` */
function takeOf(flags: readonly string[]): Take {
  let all: Side | undefined;
  const places: Record<string, Side> = {};
  for (const flag of flags) {
    const at = flag.lastIndexOf('=');
    const side = flag.slice(at + 1);
    if (side !== 'mine' && side !== 'theirs') {
      throw new UsageError(
        `--take "${flag}"; wanted mine, theirs, or a place with one of them, such as peak.red=theirs`,
      );
    }
    if (at < 0) all = side;
    else places[flag.slice(0, at)] = side;
  }
  return { all, places };
}

function writeCommand(terminal?: Terminal): Command {
  return ledgerCommand('write', {
    does: 'Make a file for the bench pad of a session that a panel has.',
    examples: [
      ['bench write kelpwright-gannet --out gannet.bench.json', 'the newest session, to go on with on the pad'],
      ['bench write kelpwright-gannet --date 2026-11-17', 'print that of a day'],
    ],
    exits: { 0: 'written, or printed', [PROBLEM_CODE]: 'there is no such session, or the file is there already' },
  })
    .argument('<panel>', 'the name of its folder')
    .option('--date <day>', 'day of the session; the newest one where it is left out')
    .option('--out <file>', 'where to write; printed where it is left out')
    .action((slug: string, { date, out }: { date?: string; out?: string }) => {
      const { say } = terminal ?? processTerminal();
      const panels = panelFiles(contentFolder());
      const panel = panels.find((it) => it.slug === slug);
      if (!panel) {
        const near = nearest(
          slug,
          panels.map((it) => it.slug),
        );
        throw new UsageError(`There is no panel "${slug}"${near ? `; did you mean ${near}?` : '.'}`);
      }
      const maker = valueAt(parse(openContent(panel.text, panel.path).yaml, { logLevel: 'silent' }), ['maker']);
      const run = sessionRun(panel, String(maker ?? ''), date);
      const text = exportRun(newLog(run));
      if (out === undefined) {
        say(text.trimEnd());
        return;
      }
      writeNewFile(out, text);
      say(`Wrote ${out}: the session of ${run.date}, ${counted(run.entries.length, 'reading')}.`);
    });
}
