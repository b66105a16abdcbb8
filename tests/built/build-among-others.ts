/** Builds that meet at one place: after one that was killed, two that start at once, and one that comes while pages are written. */
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';

/** How a build ended, and all that it said. */
export interface Ended {
  code: number | null;
  said: string;
}

/** What came of builds that met. */
export interface Met {
  /** The lock of the one that was killed was still there when the others began. */
  isLockLeft: boolean;
  /** All but the one that was killed. */
  ended: Ended[];
}

/** What the killed build leaves in its folder, by which the next one's is told from it. */
export const LEFT = 'left.html';

/**
 * @param root a copy of the project in which nothing has been built
 * @param settings all of the environment that builds have besides where programs and homes lie
 */
export async function buildAmongOthers(root: string, settings: Readonly<Record<string, string>>): Promise<Met> {
  const start = () => startBuild(root, settings);
  const site = join(root, '.build/site');
  const killed = start();
  await until(() => existsSync(site), killed);
  killed.child.kill('SIGKILL');
  await killed.ended;
  const isLockLeft = existsSync(join(root, '.build/lock'));
  const left = join(site, LEFT);
  writeFileSync(left, '');

  const pair = [start(), start()];
  const isWriting = () => existsSync(site) && !existsSync(left);
  // The one that is refused ends first; the other one goes on.
  await Promise.all(pair.map((it) => until(isWriting, it)));
  const late = start();
  return { isLockLeft, ended: await Promise.all([...pair, late].map((it) => it.ended)) };
}

interface Build {
  child: ChildProcess;
  ended: Promise<Ended>;
}

function startBuild(root: string, settings: Readonly<Record<string, string>>): Build {
  const { PATH, HOME, TMPDIR } = process.env;
  const env = { PATH, HOME, TMPDIR, ASTRO_TELEMETRY_DISABLED: '1', NO_COLOR: '1', ...settings };
  const child = spawn(process.execPath, ['src/cli/main.ts', 'build'], { cwd: root, env });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.setEncoding('utf8').on('data', (text: string) => {
      said += text;
    });
  }
  const ended = new Promise<Ended>((resolve, reject) => {
    child.on('error', reject).on('close', (code) => resolve({ code, said }));
  });
  return { child, ended };
}

/** Waits for something, unless a process ends before it. */
async function until(isSo: () => boolean, { child }: Build): Promise<void> {
  while (!isSo() && child.exitCode === null) await sleep(20);
}
