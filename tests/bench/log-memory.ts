/**
 * Memory that a process has at most which reads a large file of the bench and works out what it says; and that `import` and
 * `check` have, beside what they have with a short file.
 *
 *     npx node tests/bench/log-memory.ts [megabytes]
 */
import { spawnSync } from 'node:child_process';
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import packageJson from '../../package.json' with { type: 'json' };
import { today } from './content.ts';
import { LARGE_FILES, writeClip, writeTable } from './large-files.ts';
import { type Line, printed, type Section } from './report.ts';
import { discard, PROJECT, scratchFolder } from './scratch.ts';

const MEGA = 1e6;
/** With which the tester's commands start. */
const FLAGS: readonly string[] = packageJson.scripts.ledger.match(/--\S+/g) ?? [];

/** Of a whole process, for a file of 100 MB. */
const BUDGET = 300;
/** What a command may have more for it than for a short file: the file's numbers once, and what is made on the way. */
const COMMAND_BUDGET = 150;
const COMMANDS = ['import', 'check'] as const;
type Command = (typeof COMMANDS)[number];

const mb = (bytes: number) => `${(bytes / MEGA).toFixed(0)} MB`;

/** How much memory files of so many megabytes take. */
export function logMemory(megabytes = 100): Section {
  const folder = scratchFolder('log-memory');
  const lines: Line[] = [];
  const path = (name: string) => join(folder, name);
  const add = (what: string, kind: string, file: string) => {
    const { atStart, afterReading, peak, seconds, fault } = readLog(kind, file);
    lines.push({
      what: fault === undefined ? what : `${what} (refused)`,
      measured: `${mb(peak)} at most, ${seconds.toFixed(1)} s`,
      against: `${mb(atStart)} at the start, ${mb(afterReading)} when read`,
      budget: `${BUDGET} MB`,
      isWithin: peak <= BUDGET * MEGA,
    });
  };
  for (const [what, table] of Object.entries(LARGE_FILES)) {
    writeTable(path('log.csv'), table, megabytes * MEGA);
    add(what, table.kind, path('log.csv'));
  }
  writeClip(path('clip.wav'), megabytes * MEGA);
  add('sound clip', 'sound', path('clip.wav'));

  writeTable(path('sweep.csv'), LARGE_FILES.sweep, megabytes * MEGA);
  writeTable(path('short.csv'), LARGE_FILES.sweep, MEGA);
  const [short, long] = [commandsWith(path('short.csv')), commandsWith(path('sweep.csv'))];
  for (const command of COMMANDS) {
    lines.push({
      what: `\`${command}\` with the sweep`,
      measured: `${mb(long[command] - short[command])} more`,
      against: `${mb(short[command])} with one of 1 MB`,
      budget: `${COMMAND_BUDGET} MB`,
      isWithin: long[command] - short[command] <= COMMAND_BUDGET * MEGA,
    });
  }
  discard(folder);
  return { title: `Memory of a process that reads a file of ${megabytes} MB`, lines };
}

function readLog(kind: string, file: string) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [...FLAGS, join(PROJECT, 'tests/bench/read-log.ts'), kind, file],
    {
      encoding: 'utf8',
    },
  );
  if (status !== 0) throw new Error(stderr);
  return JSON.parse(stdout) as { atStart: number; afterReading: number; peak: number; seconds: number; fault?: string };
}

/** Bytes that the commands have at most that put a sweep into a small guide of its own, and check that. */
function commandsWith(sweep: string): Record<Command, number> {
  const content = scratchFolder('content');
  cpSync(join(PROJECT, 'tests/fixtures/tiny-content'), content, { recursive: true });
  const memory = {
    import: peakOf(content, ['import', sweep, '--panel', 'plover', '--kind', 'sweep', '--yes']),
    check: peakOf(content, ['check']),
  };
  discard(content);
  return memory;
}

/** Says at the end of a process what memory it had at most. */
const TELL =
  'process.on("exit", () => process.getBuiltinModule("fs").writeFileSync(process.env.PEAK, String(process.resourceUsage().maxRSS)))';

function peakOf(content: string, args: readonly string[]): number {
  const peak = join(content, '..', 'peak');
  writeFileSync(peak, '');
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [
      ...FLAGS,
      '--import',
      `data:text/javascript,${encodeURIComponent(TELL)}`,
      join(PROJECT, 'src/cli/main.ts'),
      ...args,
    ],
    { encoding: 'utf8', env: { ...process.env, LEDGER_CONTENT: content, LEDGER_TODAY: today, PEAK: peak } },
  );
  if (status !== 0) throw new Error(`${args[0]}: ${stdout}${stderr}`);
  return Number(readFileSync(peak, 'utf8')) * 1024;
}

if (import.meta.main) console.log(printed(logMemory(Number(process.argv[2] ?? 100))));
