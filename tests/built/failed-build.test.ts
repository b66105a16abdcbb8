import { existsSync } from 'node:fs';
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { build, differences, fingerprints } from './build.ts';
import { CONTENT, DIST, panelFiles } from './site.ts';

let content: string;
beforeEach(async () => {
  content = await mkdtemp(join(tmpdir(), 'panel-ledger-content-'));
  await cp(CONTENT, content, { recursive: true });
});
afterEach(() => rm(content, { recursive: true }));

/** Changes a file of the content that is to fail. */
async function change(file: string, edit: (text: string) => string): Promise<void> {
  const path = join(content, file);
  const before = await readFile(path, 'utf8');
  const after = edit(before);
  expect(after, `${file} was to be changed`).not.toBe(before);
  await writeFile(path, after);
}

const good = fingerprints(DIST);

/** Builds from the changed content, and sees that the last good site stays as it was. */
async function failingBuild(): Promise<string> {
  const { code, stdout, stderr } = await build({ LEDGER_CONTENT: content });
  expect(code).toBe(1);
  expect(differences(good, fingerprints(DIST))).toEqual([]);
  expect(existsSync(`${DIST}.old`)).toBe(false);
  return stdout + stderr;
}

test('faults in two files: all are named, with file and line, and the last good site stays', async () => {
  const slug = panelFiles('published')[0]?.slug as string;
  const panel = `panels/${slug}/index.md`;
  await change(panel, (text) => text.replace(/combined: [\d.]+/, 'combined: 41 furlongs'));
  await change('guide.yaml', (text) => text.replace('referenceDistance: 6 in', 'referenceDistance: 6 kg'));
  const said = await failingBuild();
  const line =
    (await readFile(join(content, panel), 'utf8')).split('\n').findIndex((it) => it.includes('furlongs')) + 1;
  expect(said).toContain(`${panel}:${line}`);
  expect(said).toContain('furlongs');
  expect(said).toMatch(/guide\.yaml:\d+/);
  expect(said).toContain('2 problems');
  // Problems of the content are told as such, not as a fault of the program.
  expect(said).not.toMatch(/^\s+at .*\.ts:\d+/m);
});

test('a fault that only rendering finds: the last good site stays as well', async () => {
  await change('methods/optical-power.mdx', (text) => `${text}\n\n<NoSuchComponent />\n`);
  expect(await failingBuild()).toMatch(/NoSuchComponent/);
});
