import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { strToU8, zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { folderFiles, type PackageFiles, zipFiles } from '../../../../src/content/read/others/package-files.ts';
import { readPackage } from '../../../../src/content/read/others/read-package.ts';
import { DEMO_SOURCE } from '../../../support/demo-folder.ts';

const FOLDER = join(DEMO_SOURCE, 'others/salt-pier');
const PATHS = [
  'datapackage.json',
  ...['panels', 'sessions', 'metrics', 'figures', 'readings'].map((it) => `tables/${it}.csv`),
];
const TEXTS = new Map(PATHS.map((path) => [path, readFileSync(join(FOLDER, path), 'utf8')]));

/** The package with some of its files otherwise; undefined takes one away. */
function changed(files: Record<string, string | undefined>): PackageFiles {
  return { text: (path) => (path in files ? files[path] : TEXTS.get(path)) };
}

const faults = (files: PackageFiles) =>
  readPackage(files, 'other').problems.map((it) => `${it.file}:${it.line ?? ''} ${it.field}: ${it.found}`);

test('a folder and a ZIP of it are one, wherever in the archive it lies', () => {
  const folder = readPackage(folderFiles(FOLDER), 'x').guide;
  expect(folder?.panels.map((it) => it.slug)).toEqual(['fennimarsh-reed', 'kelpwright-gannet', 'ruddlestone-r60']);
  expect(folder?.panels[0]?.figures.get('optical-power')).toMatchObject({ unit: 'W', method: 'optical-power' });
  expect(folder?.panels[0]?.blockDistances.get('sound')).toBe(100);
  const entries = (at: string) => Object.fromEntries([...TEXTS].map(([path, text]) => [`${at}${path}`, strToU8(text)]));
  for (const at of ['', 'guide/data/']) expect(readPackage(zipFiles(zipSync(entries(at))), 'x').guide).toEqual(folder);
});

test('what is wrong is told with file, line and column', () => {
  const figures = TEXTS.get('tables/figures.csv') ?? '';
  expect(faults(changed({ 'datapackage.json': undefined }))).toEqual(['other/datapackage.json: : no such file']);
  expect(faults(changed({ 'datapackage.json': '{' }))).toHaveLength(1);
  expect(faults(changed({ 'datapackage.json': '{"title":"x"}' })).join('\n')).toContain('contributors');
  expect(faults(changed({ 'tables/sessions.csv': undefined }))).toEqual([
    'other/datapackage.json: resources.sessions: the path "tables/sessions.csv", where no file of the package lies',
  ]);
  expect(faults(changed({ 'tables/figures.csv': figures.replace('interval95_low', 'low') }))).toEqual([
    'other/tables/figures.csv:1 : no column interval95_low',
  ]);
  const panels = TEXTS.get('tables/panels.csv') ?? '';
  const [address = ''] = /https:[^,]+reed\//.exec(panels) ?? [];
  expect(faults(changed({ 'tables/panels.csv': panels.replace(address, 'javascript:alert(1)') }))).toEqual([
    'other/tables/panels.csv:2 address: "javascript:alert(1)"',
  ]);
  const spoilt = figures.split('\n').map((line, i) => (i === 1 ? line.replace(/,\d+\.\d+,W/, ',much,W') : line));
  expect(faults(changed({ 'tables/figures.csv': spoilt.join('\n') }))).toEqual([
    'other/tables/figures.csv:2 value: "much"',
  ]);
});

test('nothing outside the package is read, whatever its descriptor names', () => {
  const descriptor = (path: string) => ({
    'datapackage.json': (TEXTS.get('datapackage.json') ?? '').replace('"tables/panels.csv"', JSON.stringify(path)),
  });
  const asked: string[] = [];
  for (const path of [
    '../../guide.yaml',
    '/etc/hostname.csv',
    'https://elsewhere.example/panels.csv',
    'a/../../b.csv',
  ]) {
    const files: PackageFiles = {
      text: (it) => {
        asked.push(it);
        return changed(descriptor(path)).text(it);
      },
    };
    expect(readPackage(files, 'x').problems.map((it) => it.field)).toContain('resources.panels');
  }
  expect(asked.filter((it) => it.includes('..') || it.startsWith('/') || it.includes(':'))).toEqual([]);
});

test('any bytes are an archive or a clear error, and any text a package or a problem', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 200 }), fc.string(), (bytes, text) => {
      try {
        zipFiles(bytes).text('datapackage.json');
      } catch (error) {
        expect(error).toBeInstanceOf(Error);
      }
      const read = readPackage(changed({ 'tables/figures.csv': text }), 'x');
      expect(read.guide === undefined).toBe(read.problems.length > 0);
    }),
    { numRuns: 50 },
  );
});
