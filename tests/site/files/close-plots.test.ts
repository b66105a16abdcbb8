import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import type { ClosePlot } from '../../../src/site/files/browser/close-plot.ts';
import { closeFiles } from '../../../src/site/files/close-plots.ts';
import { fileFindings } from '../../../src/site/files/file-findings.ts';
import { DEMO_FOLDER } from '../../support/demo-folder.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

/** The data of a panel's plot by the start of its name. */
function plotOf(slug: string, name: string): ClosePlot {
  const found = closeFiles(demo.panel(slug)).find((it) => it.address.includes(`/plots/${name}`));
  if (!found) throw new Error(`${slug} has no ${name}`);
  return found.plot();
}

/** Rows of a file of the demonstration, two numbers each. */
function rowsOf(slug: string, file: string, separator: string): number[][] {
  return readFileSync(join(DEMO_FOLDER, 'panels', slug, file), 'utf8')
    .split(/\r?\n/)
    .map((line) => line.split(separator).map((it) => Number(it.replace(',', '.'))))
    .filter((it) => it.length === 2 && it.every((cell) => Number.isFinite(cell)));
}

describe('who looks closer', () => {
  test('gets every reading of a sweep as it stands in the file', () => {
    const rows = rowsOf('ostrel-vagg', 'sweep-both.csv', ',');
    const [curve] = plotOf('ostrel-vagg', 'log-2').curves;
    expect(rows.length).toBeGreaterThan(400);
    expect(curve?.x).toEqual(rows.map(([time]) => time));
    expect(curve?.y).toEqual(rows.map(([, value]) => value));
  });

  test('gets a spectrum row by row, in its unit, but for the dark level', () => {
    const rows = rowsOf('quennick-tope', 'tope-both.csv', ';');
    const plot = plotOf('quennick-tope', 'spectra');
    const [curve] = plot.curves;
    expect(curve?.x).toEqual(rows.map(([nm]) => nm));
    // W/m²/nm are a tenth of them in mW/cm²/nm.
    const dark = rows.map(([, value], i) => (value as number) / 10 - (curve?.y[i] ?? 0));
    expect(Math.max(...dark) - Math.min(...dark)).toBeLessThan(1e-4);
    expect(plot.y.unit).toBe('mW/cm²/nm');
    expect(plot.uprights?.map((it) => it.at)).toEqual([660, 850]);
  });

  test('sees each fault where it is marked', () => {
    expect(plotOf('ostrel-vagg', 'spectra').tops?.map((it) => it.text)).toEqual(['661 nm', '852 nm', '941 nm']);
    expect(plotOf('quennick-tope', 'clips').uprights).toMatchObject([{ text: '8.2 kHz' }]);
    const { uprights = [] } = plotOf('ruddlestone-r150', 'log-1');
    expect(uprights.map((it) => it.text)).toEqual(['settled', 'readings begin']);
    expect(uprights[1]?.at).toBeLessThan(uprights[0]?.at ?? 0);
  });

  test('gets no more than a screen can show of any file', () => {
    const all = ['ostrel-vagg', 'quennick-tope', 'ruddlestone-r150'].flatMap((it) => closeFiles(demo.panel(it)));
    expect(all.length).toBe(16);
    for (const it of all) expect(JSON.stringify(it.plot()).length, it.address).toBeLessThan(100_000);
  });
});

test.each([
  ['ostrel-vagg', 'A peak at 941 nm that the maker does not name, 7.2 % of the light', 'spectra-2026-09-08'],
  [
    'ruddlestone-r150',
    'Readings begun 45 min after switching on, with the light still 0.99 % above where it settled',
    'log-1-2026-09-22',
  ],
  ['quennick-tope', 'A tone at 8.2 kHz, prominent, which one number in dB(A) hides', 'clips-2026-10-27'],
])('%s: what its files have brought to light is said first, with its place', (slug, text, anchor) => {
  const [first] = demo.panel(slug).sessions.map(fileFindings);
  expect(first?.[0]).toMatchObject({ text, anchor });
});
