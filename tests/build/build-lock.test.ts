/** One build at a time: who holds the lock, who is refused, and what becomes of a lock whose owner has ended. */
import { execFile, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { releaseBuildLock, takeBuildLock } from '../../src/build/build-lock.ts';
import { UsageError } from '../../src/content/read/usage-error.ts';

const MODULE = fileURLToPath(new URL('../../src/build/build-lock.ts', import.meta.url));

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'build-lock-'));
});
afterEach(() => {
  releaseBuildLock(folder);
  rmSync(folder, { recursive: true });
});

const lock = () => join(folder, 'lock');
const owner = (change: object = {}) => ({ ...JSON.parse(readFileSync(lock(), 'utf8')), ...change });
const hold = (content: unknown) => writeFileSync(lock(), JSON.stringify(content));

/** A process that has ended, by its id. */
async function ended(): Promise<number> {
  const child = spawn(process.execPath, ['--version'], { stdio: 'ignore' });
  await new Promise((resolve) => child.on('close', resolve));
  return child.pid as number;
}

/** A process that runs until it is told to stop. */
function running() {
  const child = spawn(process.execPath, ['--eval', 'setInterval(() => {}, 1e6)'], { stdio: 'ignore' });
  return { pid: child.pid as number, stop: () => child.kill('SIGKILL') };
}

test('is taken, kept when it is taken again, and given back without a trace', () => {
  takeBuildLock(folder);
  expect(owner()).toMatchObject({ pid: process.pid, host: hostname() });
  takeBuildLock(folder);
  expect(readdirSync(folder)).toEqual(['lock']);
  releaseBuildLock(folder);
  expect(readdirSync(folder)).toEqual([]);
});

test('a folder that is not there is made', () => {
  const inner = join(folder, 'a', 'b');
  takeBuildLock(inner);
  expect(existsSync(join(inner, 'lock'))).toBe(true);
  releaseBuildLock(inner);
});

describe('of another process', () => {
  test('that is at work: refused in one line that names it, and left as it is', () => {
    takeBuildLock(folder);
    const other = running();
    try {
      const start = readFileSync(`/proc/${other.pid}/stat`, 'utf8').split(') ')[1]?.split(' ')[19];
      hold(owner({ pid: other.pid, start }));
      const before = readFileSync(lock(), 'utf8');
      expect(() => takeBuildLock(folder)).toThrow(UsageError);
      expect(() => takeBuildLock(folder)).toThrow(
        `Another build is at work here (process ${other.pid}); nothing was built. Start again when it has ended.`,
      );
      releaseBuildLock(folder);
      expect(readFileSync(lock(), 'utf8')).toBe(before);
      expect(readdirSync(folder)).toEqual(['lock']);
    } finally {
      other.stop();
    }
  });

  test('that has ended without giving it back: recovered', async () => {
    takeBuildLock(folder);
    hold(owner({ pid: await ended() }));
    takeBuildLock(folder);
    expect(owner().pid).toBe(process.pid);
    expect(readdirSync(folder)).toEqual(['lock']);
  });

  test('whose number has gone to a later process: recovered', () => {
    takeBuildLock(folder);
    const other = running();
    try {
      hold(owner({ pid: other.pid, start: '1' }));
      takeBuildLock(folder);
      expect(owner().pid).toBe(process.pid);
    } finally {
      other.stop();
    }
  });

  test('of another machine: refused, and the line says which file to delete', () => {
    takeBuildLock(folder);
    hold(owner({ host: 'another-machine' }));
    expect(() => takeBuildLock(folder)).toThrow(
      `on another-machine); nothing was built. If it is not, delete ${lock()}.`,
    );
  });
});

test.each(['', '{"pid":', 'null', '{"pid":-1,"host":"","start":""}'])(
  'a lock that names nobody (%j) is recovered',
  (content) => {
    writeFileSync(lock(), content);
    takeBuildLock(folder);
    expect(owner().pid).toBe(process.pid);
  },
);

test('of many that start at once over a stale lock, one gets it', async () => {
  takeBuildLock(folder);
  hold(owner({ pid: await ended() }));
  const script = `import { takeBuildLock } from ${JSON.stringify(MODULE)};
    try { takeBuildLock(process.argv[1]); console.log('has it'); process.stdin.resume().on('end', () => {}); }
    catch (error) { console.log(error.message); }`;
  const said: string[] = [];
  const children = Array.from({ length: 5 }, () => {
    const child = execFile(process.execPath, ['--input-type=module', '--eval', script, folder]);
    child.stdout?.on('data', (text: string) => said.push(text.trim()));
    return { child, closed: new Promise((resolve) => child.on('close', resolve)) };
  });
  // The one that has it waits for its input to end, so that all others meet a live owner.
  while (said.length < 5) await new Promise((resolve) => setTimeout(resolve, 20));
  for (const { child } of children) child.stdin?.end();
  await Promise.all(children.map((it) => it.closed));
  expect(said.filter((it) => it === 'has it')).toHaveLength(1);
  expect(said.filter((it) => it.startsWith('Another build is at work here'))).toHaveLength(4);
  // It went with its owner.
  expect(readdirSync(folder)).toEqual([]);
}, 60_000);
