/** A command that ends at any moment leaves each file as it was or as it should be, and the next one finishes. */
import { spawn } from 'node:child_process';
import * as fs from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { finishCutShort } from '../../../src/cli/files/edit-lock.ts';
import { finishJournal, writeJournal } from '../../../src/cli/files/journal.ts';

/** Counts what is asked of the disk; from the last call that is allowed on, the process is as good as dead. */
const disk = vi.hoisted(() => ({ calls: 0, allowed: Number.POSITIVE_INFINITY }));

vi.mock('node:fs', async (original) => {
  const real = await original<typeof fs>();
  const changing = [
    'writeFileSync',
    'renameSync',
    'rmSync',
    'fsyncSync',
    'openSync',
    'mkdirSync',
    'chmodSync',
    'rmdirSync',
    'linkSync',
  ] as const;
  const counted = changing.map((name) => [
    name,
    (...args: unknown[]) => {
      if (++disk.calls > disk.allowed) {
        // What was being written is cut off in the middle.
        if (name === 'writeFileSync' && disk.calls === disk.allowed + 1)
          real.writeFileSync(String(args[0]), String(args[1]).slice(0, 3));
        throw new Error('dead');
      }
      return (real[name] as (...them: unknown[]) => unknown)(...args);
    },
  ]);
  return { ...real, default: real, ...Object.fromEntries(counted) };
});

const OLD = { 'a.yaml': 'old a\n', 'deep/b.md': 'old b, much longer than the new one\n', 'gone.md': 'to go\n' };
const NEW = { 'a.yaml': 'new a, and longer\n', 'deep/b.md': 'new\n', 'made/c.md': 'new c\n' };
const changes = {
  files: [
    { path: 'a.yaml', before: OLD['a.yaml'], after: NEW['a.yaml'] },
    { path: 'deep/b.md', before: OLD['deep/b.md'], after: NEW['deep/b.md'] },
    { path: 'gone.md', before: OLD['gone.md'], after: undefined },
    { path: 'made/c.md', before: undefined, after: NEW['made/c.md'] },
  ],
};

let folder: string;
beforeEach(() => {
  folder = fs.mkdtempSync(join(tmpdir(), 'killed-'));
  lay();
});
afterEach(() => {
  disk.allowed = Number.POSITIVE_INFINITY;
  vi.restoreAllMocks();
  fs.rmSync(folder, { recursive: true });
});

function lay(): void {
  fs.rmSync(folder, { recursive: true });
  fs.mkdirSync(join(folder, 'deep'), { recursive: true });
  for (const [path, text] of Object.entries(OLD)) fs.writeFileSync(join(folder, path), text);
}

/** Every file of the folder, those of a command at work included. */
function files(): Record<string, string> {
  const paths = fs.globSync('{*,*/*}.{yaml,md}', { cwd: folder }).toSorted();
  return Object.fromEntries(paths.map((path) => [path, fs.readFileSync(join(folder, path), 'utf8')]));
}

/** Each file is one of the two, and there is no other. */
function expectWhole(): void {
  for (const [path, text] of Object.entries(files())) {
    expect([(OLD as Record<string, string>)[path], (NEW as Record<string, string>)[path]]).toContain(text);
  }
}

test('at each call to the disk', async () => {
  vi.spyOn(console, 'error').mockImplementation(() => {});
  const ends = new Set<string>();
  for (let allowed = 0; ; allowed++) {
    lay();
    disk.calls = 0;
    disk.allowed = allowed;
    let isDone = true;
    try {
      writeJournal(folder, changes);
      finishJournal(folder);
    } catch {
      isDone = false;
    }
    disk.allowed = Number.POSITIVE_INFINITY;
    expectWhole();
    await finishCutShort(folder);
    const now = files();
    ends.add(JSON.stringify(now));
    expect([OLD, NEW]).toContainEqual(now);
    if (isDone) break;
  }
  // It was cut short both before and after the changes counted.
  expect(ends.size).toBe(2);
  expect(disk.calls).toBeGreaterThan(20);
});

test('twice: while the next command finishes, too', async () => {
  vi.spyOn(console, 'error').mockImplementation(() => {});
  writeJournal(folder, changes);
  for (let allowed = 0; ; allowed++) {
    disk.calls = 0;
    disk.allowed = allowed;
    try {
      await finishCutShort(folder);
      break;
    } catch {
      expectWhole();
    }
  }
  expect(files()).toEqual(NEW);
  expect(fs.existsSync(join(folder, '.edits'))).toBe(false);
});

test('what a hand has changed before it could be finished is left as the hand has it', async () => {
  const said = vi.spyOn(console, 'error').mockImplementation(() => {});
  writeJournal(folder, changes);
  fs.writeFileSync(join(folder, 'a.yaml'), 'by hand\n');
  await finishCutShort(folder);
  expect(files()).toEqual({ ...NEW, 'a.yaml': 'by hand\n' });
  expect(said.mock.calls.flat().join('\n')).toContain('a.yaml');
});

test('by SIGKILL at any time', { timeout: 60_000 }, async () => {
  vi.spyOn(console, 'error').mockImplementation(() => {});
  const writer = fileURLToPath(new URL('write-for-ever.ts', import.meta.url));
  const child = () => spawn(process.execPath, [writer, folder], { stdio: ['ignore', 'pipe', 'inherit'] });
  let rounds = 0;
  for (let i = 0; i < 8; i++) {
    const writing = child();
    const ended = new Promise((resolve) => writing.once('exit', resolve));
    // Killed some while after it has begun to write, wherever it is then.
    writing.stdout.once('data', () => setTimeout(() => writing.kill('SIGKILL'), i * 1.7));
    await ended;
    for (const path of ['a.yaml', 'deep/b.md'])
      expect(fs.readFileSync(join(folder, path), 'utf8')).toMatch(/^(old|new) [\s\S]*end\n$|^old /);
    await finishCutShort(folder);
    const [a, b] = ['a.yaml', 'deep/b.md'].map((path) => fs.readFileSync(join(folder, path), 'utf8').slice(0, 3));
    expect(a).toBe(b);
    rounds++;
  }
  expect(rounds).toBe(8);
});
