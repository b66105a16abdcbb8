import { join } from 'node:path';
import { Command, Option } from 'commander';
import { parse } from 'yaml';
import { UsageError } from '../../content/read/usage-error.ts';
import { isBlock } from '../../content/schema/block.ts';
import { CARRIED_NAMES, type CarriedName, carriedBlock } from '../../content/schema/carried.ts';
import { nearest } from '../../content/schema/suggest.ts';
import { contentFolder } from '../../ledger/load-ledger.ts';
import { todayFrom } from '../../ledger/today.ts';
import { procedureVersions } from '../../measure/irradiance/bench-procedure.ts';
import { agreedTo } from '../ask/agree.ts';
import { carryOut } from '../ask/carry-out.ts';
import { dayFlag } from '../ask/day-flag.ts';
import type { Terminal } from '../ask/terminal.ts';
import { wrapped } from '../ask/wrap.ts';
import { PROBLEM_CODE } from '../exit-codes.ts';
import { readText } from '../files/changes.ts';
import { type PanelFile, panelFiles } from '../files/panel-files.ts';
import { writeSafely } from '../files/write-safely.ts';
import { blockNames, type Carry, planRetest } from './plan.ts';

const EXPLAINED = `
The session is a draft: the published guide leaves it out until you have filled
in what you read and taken the line \`draft: true\` out. What is not read again is
named with the day on which it was; its values stay in that session, and the
guide says beside each that it is from then.

What can be carried over:
${CARRIED_NAMES.map((name) => {
  const { fields, name: words } = carriedBlock(name);
  return `  ${name.padEnd(12)} ${fields.length > 1 ? `${fields.join(', ')}, all or none` : words}`;
}).join('\n')}

Examples:
  npm run ledger -- retest fennimarsh-sedge --carry mains,sound,flicker
  npm run ledger -- retest fennimarsh-sedge --carry-all
  npm run ledger -- retest fennimarsh-sedge --read light,mains --date 2026-11-24

Exit code:
  0  written, or shown (--dry-run)
  ${PROBLEM_CODE}  nothing was written: a problem, or a no`;

interface Options {
  date?: string;
  carry?: CarriedName[];
  read?: CarriedName[];
  carryAll?: boolean;
  yes?: boolean;
  dryRun?: boolean;
}

/** `retest`: a new session in a panel's file. Exit codes as in its help. */
export function retestCommand(terminal?: Terminal): Command {
  return new Command('retest')
    .description('Add a new session to a panel’s file, ready to be filled in; the rest is carried over.')
    .argument('<panel>', 'the name of its folder')
    .option('--date <day>', 'YYYY-MM-DD; today where it is left out')
    .addOption(
      new Option('--carry <blocks>', 'what is not read again')
        .argParser(blockNames('--carry'))
        .conflicts(['read', 'carryAll']),
    )
    .addOption(
      new Option('--read <blocks>', 'what is read again: all else is carried over')
        .argParser(blockNames('--read'))
        .conflicts('carryAll'),
    )
    .option('--carry-all', 'the same as --read light')
    .option('-y, --yes', 'write without asking')
    .option('-n, --dry-run', 'show what would be written')
    .addHelpText('after', EXPLAINED)
    .action((slug: string, options: Options) => carryOut((own) => retest(slug, options, own), { terminal }));
}

/** @returns false where nothing was written though it was asked for, which has been said */
async function retest(slug: string, options: Options, terminal: Terminal): Promise<boolean> {
  const { say } = terminal;
  const folder = contentFolder();
  const today = todayFrom(process.env, new Date());
  const panel = panelOf(slug, folder);
  const { files, text, line, carried } = planRetest(panel, {
    date: dayFlag(options.date, today),
    carry: carryOf(options),
    methodVersion: versionOf(folder),
  });
  const place = `${join(folder, panel.path)}:${line}`;
  say(`${place}\n\n${text}`);
  if (carried.size === 0)
    say(`\n${wrapped('Nothing is carried over; --carry or --carry-all names what is not read again.')}`);
  if (options.dryRun) {
    say('\nNothing was written (--dry-run).');
    return true;
  }
  if (!options.yes && !(await agreedTo('Write this session?', terminal))) return false;
  await writeSafely(folder, { files }, today);
  say(`\n${wrapped(`Wrote it. Next: fill in the readings at ${place}, take out draft, then npm run check.`)}`);
  return true;
}

function panelOf(slug: string, folder: string): PanelFile {
  const panels = panelFiles(folder);
  const found = panels.find((it) => it.slug === slug);
  if (found) return found;
  const near = nearest(
    slug,
    panels.map((it) => it.slug),
  );
  throw new UsageError(`There is no panel "${slug}"${near ? `; did you mean ${near}?` : '.'} Nothing was written.`);
}

function carryOf({ carry, read, carryAll }: Options): Carry {
  if (read) return { allBut: read };
  if (carryAll) return { allBut: ['light'] };
  return { only: carry ?? [] };
}

/** The version of the bench procedure that the guide's sessions follow now; the newest one where it names none. */
function versionOf(folder: string): number {
  const guide: unknown = parse(readText(folder, 'guide.yaml'), { logLevel: 'silent' });
  const own = isBlock(guide) ? guide.methodVersion : undefined;
  return typeof own === 'number' ? own : Math.max(...procedureVersions());
}
