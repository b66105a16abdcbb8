import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { FileRead } from '../../../../src/content/read/files/file-kind.ts';
import { type SpectrumFile, spectrumReader } from '../../../../src/content/read/files/spectrum.ts';
import { spectrumUnit } from '../../../../src/content/read/files/spectrum-unit.ts';
import type { SpectrumEntry } from '../../../../src/content/schema/files/spectra.ts';
import { analysed, highestPeak } from '../../../../src/measure/spectrum/analysis.ts';
import { gaussian } from '../../../support/spectrum.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'spectra-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Reads bytes as a file of a spectrum. */
function read(text: string | Uint8Array, entry: Partial<SpectrumEntry> = {}, name = 'red.csv'): FileRead<SpectrumFile> {
  const path = join(folder, name);
  writeFileSync(path, text);
  return spectrumReader.read({ path, name, bytes: Buffer.byteLength(text) }, { file: name, ...entry } as SpectrumEntry);
}

function dataOf(it: FileRead<SpectrumFile>): SpectrumFile {
  if ('fault' in it) throw new Error(JSON.stringify(it.fault));
  return it.data;
}

const LED = gaussian(660, 7, 2.5);
const ROWS = Array.from({ length: 201 }, (_, i) => 600 + i);

/** A table of the LED. */
const table = (head: string, row: (nm: number, value: number) => string) =>
  `${head}\n${ROWS.map((nm) => row(nm, LED(nm))).join('\n')}\n`;

const COMMA = (nm: number, value: number) => `${nm},${value.toFixed(5)}`;

describe('tables', () => {
  test.each([
    ['commas', table('Wavelength (nm),Irradiance (mW/cm2/nm)', COMMA)],
    ['tabs', table('nm\tmW/cm²/nm', (nm, v) => `${nm}\t${v.toFixed(5)}`)],
    [
      'semicolons and decimal commas',
      table('Wavelength [nm];E [mW·cm⁻²·nm⁻¹]', (nm, v) => `${nm},0;${v.toFixed(5).replace('.', ',')}`),
    ],
    ['W/m2/nm', table('Wavelength (nm),E (W/m2/nm)', (nm, v) => `${nm},${(10 * v).toFixed(5)}`)],
    ['uW/cm2/nm', table('Wavelength (nm),E (uW/cm^2/nm)', (nm, v) => `${nm},${(1000 * v).toFixed(3)}`)],
    ['micrometres', table('Wavelength (um),E (mW/cm2/nm)', (nm, v) => `${(nm / 1000).toFixed(4)},${v.toFixed(5)}`)],
    [
      'a unit in the head',
      `Unit: uW/cm2/nm\n${table('Wavelength,Irradiance', (nm, v) => `${nm}.0,${(1000 * v).toFixed(3)}`)}`,
    ],
    [
      'the longest wavelength first',
      table('Wavelength (nm),E (mW/cm2/nm)', COMMA)
        .split('\n')
        .toSorted((a, b) => (Number.parseFloat(b) || 1e9) - (Number.parseFloat(a) || 1e9))
        .join('\n')
        .trim(),
    ],
  ])('with %s are one spectrum', (_, text) => {
    const { spectrum, scale } = dataOf(read(text));
    expect(scale).toBe('irradiance');
    expect(spectrum.wavelengths[0]).toBe(600);
    const found = analysed(spectrum);
    expect(highestPeak(found)?.wavelength).toBeCloseTo(660, 1);
    expect(found.total).toBeCloseTo(2.5 * 7 * Math.sqrt(2 * Math.PI), 2);
  });

  test('what was converted is told', () => {
    const codes = (it: FileRead<SpectrumFile>) => ('notes' in it ? it.notes.map((note) => note.code) : []);
    expect(codes(read(table('Wavelength (um),E (rel.)', (nm, v) => `${nm / 1000},${v}`)))).toContain(
      'spectrum-in-micrometres',
    );
    expect(codes(read(table('Wavelength (nm),Signal', COMMA)))).toContain('spectrum-unit-not-stated');
    const turned = `Wavelength (nm),E (counts)\n${ROWS.toReversed()
      .map((nm) => COMMA(nm, LED(nm)))
      .join('\n')}`;
    expect(codes(read(turned))).toContain('spectrum-turned');
  });

  test('the session says a unit where the file has none, and a column where it has several', () => {
    expect(dataOf(read(table('Wavelength (nm),Signal', COMMA), { unit: 'uW/cm2/nm' })).scale).toBe('irradiance');
    const two = table('Wavelength (nm),Dark (counts),Light (counts)', (nm, v) => `${nm},3,${v}`);
    expect(dataOf(read(two, { column: 3 })).spectrum.values[60]).toBeCloseTo(2.5);
    expect(read(two)).toMatchObject({ fault: { hint: expect.stringContaining('column: 2') } });
  });
});

describe('what is no spectrum is refused', () => {
  const head = 'Wavelength (nm),E (uW/cm2/nm)\n';
  const rows = (from: number, to: number) =>
    ROWS.slice(from, to)
      .map((nm) => COMMA(nm, LED(nm)))
      .join('\n');
  test.each([
    ['an empty file', '', 'empty'],
    ['a head alone', head, 'no row'],
    ['one row', `${head}660,1\n`, '1 row'],
    ['a wavelength twice', `${head}${rows(0, 20)}\n619,1\n620,2\n`, 'second time'],
    ['rows out of order', `${head}${rows(0, 20)}\n605.5,1\n`, 'after'],
    ['NaN', `${head}${rows(0, 20)}\n620,NaN\n621,1\n`, 'NaN'],
    ['two units', `Unit: W/m2/nm\n${head}${rows(0, 50)}`, 'here, and in'],
    ['power that is not for each nanometre', `Wavelength (nm),E (uW/cm2)\n${rows(0, 50)}`, 'not for each'],
    ['an unknown unit', `Wavelength (nm),E (furlongs)\n${rows(0, 50)}`, 'furlongs'],
    ['one value in all rows', `${head}${ROWS.map((nm) => `${nm},0`).join('\n')}`, 'one value'],
    ['bytes of a picture', '\u0000\u0001PNG\u0002\u0003'.repeat(30), 'no text'],
    [
      'rows too far apart',
      `${head}${[300, 400, 500, 600, 700, 800, 900, 1000, 1100, 1200, 1300].map((nm) => `${nm},${nm}`).join('\n')}`,
      'apart',
    ],
  ])('%s', (_, text, found) => {
    const result = read(text);
    expect(result).toHaveProperty('fault');
    expect(JSON.stringify(result)).toContain(found);
  });

  test('a session that says another unit than the file', () => {
    expect(read(`${head}${rows(0, 50)}`, { unit: 'W/m2/nm' })).toMatchObject({ fault: { wanted: 'one unit' } });
  });

  test('a row that is at fault is named by its line', () => {
    expect(read(`${head}${rows(0, 20)}\n605.5,1\n`)).toMatchObject({ fault: { line: 22 } });
  });
});

describe('CGATS text', () => {
  const long = `CGATS.17\nSPECTRAL_UNIT "mW/cm2/nm"\nNUMBER_OF_FIELDS 2\nBEGIN_DATA_FORMAT\nSPECTRAL_NM SPECTRAL_DEC\nEND_DATA_FORMAT\nNUMBER_OF_SETS ${ROWS.length}\nBEGIN_DATA\n${ROWS.map((nm) => `${nm} ${LED(nm).toFixed(6)}`).join('\n')}\nEND_DATA\n`;
  const wide = (samples: number) =>
    `ISO28178\nBEGIN_DATA_FORMAT\nSAMPLE_ID ${ROWS.map((nm) => `SPEC_${nm}`).join(' ')}\nEND_DATA_FORMAT\nBEGIN_DATA\n${Array.from({ length: samples }, (_, i) => `"A ${i + 1}" ${ROWS.map((nm) => ((i + 1) * LED(nm)).toFixed(6)).join(' ')}`).join('\n')}\nEND_DATA\n`;

  test('rows and fields are one spectrum', () => {
    const [rows, fields] = [dataOf(read(long, {}, 'a.txt')), dataOf(read(wide(1), {}, 'b.txt'))];
    expect(rows.scale).toBe('irradiance');
    expect(fields.scale).toBe('relative');
    expect(fields.spectrum.values).toEqual(rows.spectrum.values);
    expect(fields.spectrum.wavelengths).toEqual(rows.spectrum.wavelengths);
  });

  test('of several samples one has to be named', () => {
    expect(read(wide(3))).toMatchObject({ fault: { hint: expect.stringContaining('sample: A 1') } });
    expect(dataOf(read(wide(3), { sample: 'A 2' })).spectrum.values[60]).toBeCloseTo(5);
    expect(read(wide(3), { sample: 'B' })).toMatchObject({ fault: { found: 'no sample "B"' } });
  });

  test.each([
    ['cut off', long.slice(0, long.indexOf('620 ')), 'END_DATA'],
    ['without fields', 'CGATS.17\nBEGIN_DATA\nEND_DATA\n', 'BEGIN_DATA_FORMAT'],
    [
      'of another kind',
      'CGATS.17\nBEGIN_DATA_FORMAT\nRGB_R RGB_G\nEND_DATA_FORMAT\nBEGIN_DATA\n1 2\nEND_DATA\n',
      'RGB_R',
    ],
    ['with a lost row', long.replace('600 0.000000\n', ''), 'NUMBER_OF_SETS'],
    ['with a word', long.replace('660 2.500000', '660 full'), 'full'],
  ])('%s is refused', (_, text, found) => {
    expect(JSON.stringify(read(text, {}, 'c.txt'))).toMatch(new RegExp(`fault.*${found}`));
  });
});

test.each([
  ['W/m²/nm', 0.1],
  ['W·m⁻²·nm⁻¹', 0.1],
  ['W m-2 nm-1', 0.1],
  ['W/(m2 nm)', 0.1],
  ['mW/m^2/nm', 1e-4],
  ['µW/cm²/nm', 1e-3],
  ['W/m2/um', 1e-4],
  ['uW cm-2 nm-1', 1e-3],
])('%s is %d mW/cm²/nm', (written, factor) => {
  expect(spectrumUnit(written)).toMatchObject({ scale: 'irradiance' });
  expect((spectrumUnit(written) as { factor: number }).factor).toBeCloseTo(factor, 12);
});

test.each(['lm/W', 'W', 'W/nm', 'nm', 'm2', 'V', '/', 'Wm'])('%s is no unit of a spectrum', (written) => {
  expect(typeof spectrumUnit(written)).not.toBe('object');
});

test('bytes that were changed give a result or a fault, never a throw', () => {
  const good = Buffer.from(table('Wavelength (nm),E (uW/cm2/nm)', COMMA));
  const change = fc.array(fc.tuple(fc.nat(good.length - 1), fc.nat(255)), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(change, fc.nat(good.length), (changes, length) => {
      const bytes = Buffer.from(good);
      for (const [at, byte] of changes) bytes[at] = byte;
      const result = read(bytes.subarray(0, length));
      if ('fault' in result) expect(result.fault.found).not.toBe('');
      else expect(analysed(result.data.spectrum).total).not.toBeNaN();
    }),
    { numRuns: 150, seed: 4 },
  );
});
