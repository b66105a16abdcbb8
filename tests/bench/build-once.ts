import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { setTimeout as sleep } from 'node:timers/promises';
import { today } from './content.ts';
import { discard } from './scratch.ts';
import { LEFTOVERS, PAGES, type Site } from './sites.ts';

export interface Build {
  /** From start to end, s. */
  seconds: number;
  /** Of the processor, by the process and all that it started, s: a busy machine hardly changes it. */
  processor: number;
  /** Most memory that they held at one moment, MiB. */
  memory: number;
}

const LONGEST = 15 * 60 * 1000;
const BETWEEN_SAMPLES = 50;
/** Of /proc/PID/stat on every Linux in use: ticks a second. */
const TICKS = 100;

/**
 * Builds a site in a process of its own, with nothing left from a build before it, or after it.
 *
 * @throws where the build fails or takes over a quarter of an hour
 */
export async function buildOnce(
  { folder, command }: Site,
  content: string,
  { isAfterAnother = false } = {},
): Promise<Build> {
  if (!isAfterAnother) for (const name of [PAGES, ...LEFTOVERS]) discard(join(folder, name));
  const start = performance.now();
  const child = spawn(process.execPath, [...command], {
    cwd: folder,
    env: {
      ...process.env,
      NODE_ENV: 'production',
      ASTRO_TELEMETRY_DISABLED: '1',
      LEDGER_CONTENT: content,
      LEDGER_TODAY: today,
    },
    stdio: ['ignore', 'ignore', 'pipe'],
    timeout: LONGEST,
    killSignal: 'SIGKILL',
  });
  const stop = () => child.kill('SIGKILL');
  // Before the folders go: what still runs would write into them.
  process.prependOnceListener('exit', stop);
  let complaints = '';
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    complaints += text;
  });
  let end: number | undefined;
  const closed = new Promise<number | null>((resolve, reject) => {
    child.once('error', reject).once('close', (status) => {
      end = performance.now();
      process.off('exit', stop);
      resolve(status);
    });
  });
  let [processor, memory] = [0, 0];
  while (end === undefined) {
    const now = usedBy(child.pid ?? 0);
    processor = Math.max(processor, now.processor);
    memory = Math.max(memory, now.memory);
    await Promise.race([sleep(BETWEEN_SAMPLES), closed]);
  }
  const status = await closed;
  if (status !== 0) throw new Error(`${command.join(' ')} ended with ${status}: ${complaint(complaints)}`);
  if (memory === 0) throw new Error('memory could not be measured: this system has no /proc');
  return { seconds: (end - start) / 1000, processor, memory };
}

/** What a process has used so far, and all that it started. */
function usedBy(pid: number, parentLine = ''): Pick<Build, 'processor' | 'memory'> {
  try {
    const line = readFileSync(`/proc/${pid}/cmdline`, 'latin1');
    // Just forked and still its parent's twin: the memory that it seems to hold is the parent's.
    if (line === parentLine) return { processor: 0, memory: 0 };
    const stat = readFileSync(`/proc/${pid}/stat`, 'latin1');
    // After the name in brackets: utime, stime, and those of children that have ended, fields 14 to 17 of proc(5).
    const ticks = stat
      .slice(stat.lastIndexOf(')') + 2)
      .split(' ')
      .slice(11, 15)
      .map(Number);
    const kilobytes = Number(/^VmRSS:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, 'latin1'))?.[1] ?? 0);
    const used = { processor: ticks.reduce((sum, it) => sum + it, 0) / TICKS, memory: kilobytes / 1024 };
    for (const child of readFileSync(`/proc/${pid}/task/${pid}/children`, 'latin1').split(' ').filter(Boolean)) {
      const { processor, memory } = usedBy(Number(child), line);
      used.processor += processor;
      used.memory += memory;
    }
    return used;
  } catch {
    // It has ended between two looks, or there is no /proc.
    return { processor: 0, memory: 0 };
  }
}

/** The message that a process ended with, without the places in the code. */
function complaint(text: string): string {
  const lines = text.split('\n').map((it) => it.trim());
  const said = lines.filter((it) => it !== '' && !/^(at |node:|\^|Node\.js )/.test(it));
  const start = said.findIndex((it) => /error/i.test(it));
  return said.slice(Math.max(0, start), Math.max(0, start) + 4).join(' / ') || 'no message';
}
