/**
 * Spectra of fluorescent lamps that others have measured, in files that others have written: CGATS texts of Debian's
 * argyll-ref, read where it is installed (continuous integration installs it). They stay in that package, whose licence
 * is the AGPL. `Office.sp` is of office lighting, by its own words; `F8.sp` is CIE illuminant F8 (CIE 15), after a
 * lamp with mercury's lines on a broad band of phosphors. Mercury's lines: NIST Atomic Spectra Database, from memory.
 */
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { spectrumReader } from '../../../../src/content/read/files/spectrum.ts';
import { analysed } from '../../../../src/measure/spectrum/analysis.ts';
import { areaOver, centroidOver } from '../../../../src/measure/spectrum/spectrum.ts';

const FOLDER = '/usr/share/color/argyll/ref';
const STEP = 5;
const MERCURY = { violet: 404.66, blue: 435.83, green: 546.07 };

const scratch = mkdtempSync(join(tmpdir(), 'lamps-'));
afterAll(() => rmSync(scratch, { recursive: true }));

function read(path: string) {
  const it = spectrumReader.read({ path, name: path, bytes: statSync(path).size }, { file: path });
  if ('fault' in it) throw new Error(JSON.stringify(it.fault));
  return it.data;
}

/** The same numbers by a road of its own: names of the fields, and the one line of data. */
function byHand(path: string): Array<readonly [nm: number, value: number]> {
  const text = readFileSync(path, 'utf8');
  const between = (from: string, to: string) =>
    (text.split(`\n${from}\n`)[1]?.split(`\n${to}`)[0] ?? '').trim().split(/\s+/);
  const values = between('BEGIN_DATA', 'END_DATA').map(Number);
  return between('BEGIN_DATA_FORMAT', 'END_DATA_FORMAT').map(
    (it, i) => [Number(it.replace('SPEC_', '')), values[i] as number] as const,
  );
}

describe.skipIf(!existsSync(FOLDER))('a lamp that others have measured', () => {
  test.each([
    ['Office.sp', 80, ['blue', 'green'], 'green'],
    // Its yellow pair stands too little out of the phosphors' band for a peak.
    ['F8.sp', 81, ['violet', 'blue', 'green'], 'blue'],
  ] as const)('%s: its lines are where mercury has them, within a row', (name, rows, lines, highest) => {
    const path = join(FOLDER, name);
    const { spectrum, scale } = read(path);
    expect(scale).toBe('relative');
    expect(spectrum.wavelengths).toHaveLength(rows);
    const found = analysed(spectrum);
    for (const line of lines) {
      const nearest = Math.min(...found.peaks.map((it) => Math.abs(it.wavelength - MERCURY[line])));
      expect(nearest, line).toBeLessThan(STEP);
    }
    const top = found.peaks.toSorted((a, b) => b.height - a.height)[0];
    expect(Math.abs((top?.wavelength ?? 0) - MERCURY[highest])).toBeLessThan(STEP);
  });

  test.each(['Office.sp', 'F8.sp'])(
    '%s: sums and centroid are those of the plain trapezium rule, from a table too',
    (name) => {
      const path = join(FOLDER, name);
      const pairs = byHand(path);
      const { spectrum } = read(path);
      expect(Array.from(spectrum.wavelengths)).toEqual(pairs.map(([nm]) => nm));
      const sum = (of: (nm: number, value: number) => number, from: number, to: number) =>
        pairs.slice(1).reduce((total, [nm, value], i) => {
          const [before, beforeValue] = pairs[i] as readonly [number, number];
          return before >= from && nm <= to ? total + (STEP * (of(before, beforeValue) + of(nm, value))) / 2 : total;
        }, 0);
      for (const [from, to] of [
        [400, 700],
        [600, 700],
        [430, 440],
      ] as const) {
        const area = sum((_, value) => value, from, to);
        expect(areaOver(spectrum, { from, to })).toBeCloseTo(area, 9);
        // The moment is integrated between rows too, where both factors change.
        expect(centroidOver(spectrum, { from, to })).toBeCloseTo(sum((nm, value) => nm * value, from, to) / area, 0);
      }
      const table = join(scratch, `${name}.csv`);
      writeFileSync(table, `Wavelength (nm),relative\n${pairs.map((it) => it.join(',')).join('\n')}\n`);
      expect(read(table).spectrum).toEqual(spectrum);
    },
  );
});
