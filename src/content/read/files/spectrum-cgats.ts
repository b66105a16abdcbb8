import { type CgatsRow, type CgatsText, fieldWavelength } from './cgats.ts';
import type { FileFault } from './file-kind.ts';
import { parseNumber } from './number-cell.ts';
import { SpectrumCollector, type SpectrumRows } from './spectrum-rows.ts';

/** Fields of a value where each row has a wavelength. */
const VALUE_FIELDS = /^(?:SPECTRAL_DEC|SPECTRAL_PCT|SPECTRAL_VALUE|SPECTRAL_IRRADIANCE|IRRADIANCE|VALUE)$/i;
const NAMES = ['SAMPLE_ID', 'SAMPLE_NAME', 'SAMPLE_LOC'];

/** What a CGATS text holds of a spectrum. */
export interface CgatsSpectrum {
  rows: SpectrumRows;
  /** Unit as the text has it; undefined where it says none. */
  unit: string | undefined;
}

/** The spectrum of a CGATS text. @param sample which one, where it holds several */
export function cgatsSpectrum(text: CgatsText, sample: string | undefined): CgatsSpectrum | { fault: FileFault } {
  const { fields } = text;
  const wide = fields.flatMap((it, i) => {
    const nm = fieldWavelength(it);
    return nm === undefined ? [] : [{ nm, i }];
  });
  const long = fields.findIndex((it) => /^SPECTRAL_NM$/i.test(it));
  const rows = long >= 0 ? longRows(text, long) : wideRows(text, wide, sample);
  if ('fault' in rows) return rows;
  return { rows, unit: unitOf(text) };
}

function wideRows(
  { fields, rows }: CgatsText,
  wide: ReadonlyArray<{ nm: number; i: number }>,
  sample: string | undefined,
): SpectrumRows | { fault: FileFault } {
  if (wide.length === 0) {
    const found = `the fields ${fields.slice(0, 6).join(', ')}`;
    return { fault: { found, wanted: 'fields of a spectrum: SPECTRAL_NM with a value, or one a wavelength' } };
  }
  const row = chosenRow(fields, rows, sample);
  if ('fault' in row) return row;
  return collected(wide.map(({ nm, i }) => ({ nm, text: row.cells[i] ?? '', line: row.line })));
}

function chosenRow(
  fields: readonly string[],
  rows: readonly CgatsRow[],
  sample: string | undefined,
): CgatsRow | { fault: FileFault } {
  const nameOf = (row: CgatsRow) => NAMES.flatMap((it) => row.cells[fields.indexOf(it)] ?? []);
  const all = rows.flatMap((it) => nameOf(it).slice(0, 1));
  const listed = all.slice(0, 8).join(', ');
  if (sample !== undefined) {
    const found = rows.find((it) => nameOf(it).includes(sample));
    if (found) return found;
    return { fault: { found: `no sample "${sample}"`, wanted: `a sample that it holds${listed && `: ${listed}`}` } };
  }
  const [only, ...more] = rows;
  if (only && more.length === 0) return only;
  return {
    fault: {
      found: `${rows.length} samples`,
      wanted: 'one, or which of them is meant',
      hint: `write it as { file: …, sample: ${all[0] ?? '…'} }`,
    },
  };
}

function longRows({ fields, rows }: CgatsText, at: number): SpectrumRows | { fault: FileFault } {
  const named = fields.findIndex((it) => VALUE_FIELDS.test(it));
  const others = fields.flatMap((_, i) => (i === at ? [] : [i]));
  const value = named >= 0 ? named : others.length === 1 ? others[0] : undefined;
  if (value === undefined) {
    return { fault: { found: `the fields ${fields.join(', ')}`, wanted: 'SPECTRAL_NM with SPECTRAL_DEC' } };
  }
  const cells = rows.map(({ line, cells }) => ({ text: cells[value] ?? '', line, wavelength: cells[at] ?? '' }));
  const broken = cells.find(({ wavelength }) => numberOf(wavelength) === undefined);
  if (broken) return { fault: { line: broken.line, found: `"${broken.wavelength}"`, wanted: 'a wavelength in nm' } };
  return collected(cells.map(({ wavelength, ...it }) => ({ ...it, nm: numberOf(wavelength) ?? 0 })));
}

function collected(
  cells: ReadonlyArray<{ nm: number; text: string; line: number }>,
): SpectrumRows | { fault: FileFault } {
  const collector = new SpectrumCollector();
  for (const { nm, text, line } of cells) {
    const value = numberOf(text);
    if (value === undefined)
      return { fault: { line, found: `"${text.slice(0, 40)}" at ${nm} nm`, wanted: 'a number' } };
    const fault = collector.take(nm, value);
    if (fault) return { fault: { line, ...fault } };
  }
  return collector.done();
}

/** Blanks part the values of CGATS, so that a comma in a number is a decimal one. */
const numberOf = (text: string) => parseNumber(text, '.') ?? parseNumber(text, ',');

/** Unit of the values, where a keyword states it: the standard has none for irradiance, and programs write their own. */
function unitOf({ keywords }: CgatsText): string | undefined {
  for (const [name, value] of keywords) if (/^(?:SPECTRAL_)?(?:UNITS?|IRRADIANCE_UNITS?)$/i.test(name)) return value;
  return undefined;
}
