import { extname } from 'node:path';
import type { Spectrum } from '../../../measure/spectrum/spectrum.ts';
import type { Statement } from '../../../measure/statement.ts';
import type { SpectrumEntry } from '../../schema/files/spectra.ts';
import { SPECTRUM_ENDINGS } from '../../schema/files/spectra.ts';
import { cgatsOf, isCgats } from './cgats.ts';
import type { BenchFile, FileFault, FileHead, FileRead, FileReader, Recognised } from './file-kind.ts';
import { type HeaderLine, readNumberTable, type TableHead, tableHead } from './number-table.ts';
import { cgatsSpectrum } from './spectrum-cgats.ts';
import { SpectrumCollector, type SpectrumRows } from './spectrum-rows.ts';
import { guessedWavelengthUnit, type SpectrumUnit, spectrumUnit, wavelengthUnit } from './spectrum-unit.ts';
import { encodingOf, headLines, headOf } from './text-lines.ts';

declare module './file-kind.ts' {
  interface BenchFileData {
    spectrum: SpectrumFile;
  }
  interface BenchFileEntry {
    spectrum: SpectrumEntry;
  }
}

declare module '../../../measure/statement.ts' {
  interface StatementData {
    'spectrum-in-micrometres': object;
    'spectrum-turned': object;
    'spectrum-unit-not-stated': object;
    'spectrum-column-taken': { name: string };
  }
}

/** A spectrum as it stands in a file, in nm, and in mW/cm²/nm where it is calibrated in power. */
export interface SpectrumFile {
  spectrum: Spectrum;
  scale: SpectrumUnit['scale'];
}

/** Largest CGATS text that is read, bytes: a spectrum has some hundred values. */
const LARGEST_CGATS = 8 * 1024 * 1024;

/** Spectra: tables of wavelengths and values, and CGATS texts. */
export const spectrumReader: FileReader<'spectrum'> = {
  kind: 'spectrum',
  called: 'a spectrum',
  places: [
    { path: ['spectra', 'red'], words: 'red alone' },
    { path: ['spectra', 'nearInfrared'], words: 'near-infrared alone' },
    { path: ['spectra', 'combined'], words: 'both channels' },
  ],
  endings: SPECTRUM_ENDINGS,
  read: (file, entry) => {
    const start = headOf(file.path);
    const encoding = encodingOf(start);
    const isText = encoding && isCgats(headLines(start, encoding, true).join('\n'));
    return isText ? readCgats(file, entry) : readTable(file, entry);
  },
  recognise,
};

function readCgats(file: BenchFile, entry: SpectrumEntry): FileRead<SpectrumFile> {
  if (file.bytes > LARGEST_CGATS) {
    return { fault: { found: 'a CGATS text of more than 8 MB', wanted: 'a text with one spectrum' } };
  }
  const bytes = headOf(file.path, Math.max(1, file.bytes));
  const text = cgatsOf(headLines(bytes, encodingOf(bytes) ?? 'windows-1252', true));
  if ('fault' in text) return text;
  const found = cgatsSpectrum(text, entry.sample);
  if ('fault' in found) return found;
  return made(found.rows, found.unit, entry, []);
}

function readTable(file: BenchFile, entry: SpectrumEntry): FileRead<SpectrumFile> {
  const collector = new SpectrumCollector();
  let unit: string | undefined;
  const notes: Statement[] = [];
  const read = readNumberTable(file.path, (head) => {
    const columns = columnsOf(head, entry);
    if ('fault' in columns) return columns;
    const { wavelength, value, factor } = columns;
    unit = columns.unit;
    if (factor !== 1) notes.push({ code: 'spectrum-in-micrometres' });
    if (head.columns.length > 2) {
      notes.push({ code: 'spectrum-column-taken', name: head.columns[value]?.name || `column ${value + 1}` });
    }
    return {
      needed: [wavelength, value],
      take: (values, line) => {
        // A decimal fraction of micrometres is no binary one: 0.6605 um is 660.5 nm.
        const nm = factor === 1 ? (values[wavelength] as number) : round((values[wavelength] as number) * factor);
        const fault = collector.take(nm, values[value] as number);
        return fault && { line, ...fault };
      },
    };
  });
  if ('fault' in read) return read;
  const rows = collector.done();
  if ('fault' in rows) return rows;
  return made(rows, unit, entry, [...read.notes, ...notes]);
}

const round = (nm: number) => Number(nm.toPrecision(12));

function made(
  { wavelengths, values, isTurned }: SpectrumRows,
  stated: string | undefined,
  entry: SpectrumEntry,
  before: readonly Statement[],
): FileRead<SpectrumFile> {
  const unit = unitOf(stated, entry.unit);
  if ('fault' in unit) return unit;
  const notes: Statement[] = [...before];
  if (isTurned) notes.push({ code: 'spectrum-turned' });
  if (stated === undefined && entry.unit === undefined) notes.push({ code: 'spectrum-unit-not-stated' });
  const isAbsolute = unit.scale === 'irradiance';
  return {
    data: {
      spectrum: { wavelengths, values: isAbsolute ? values.map((it) => it * unit.factor) : values, isAbsolute },
      scale: unit.scale,
    },
    notes,
  };
}

/** The unit by the file and by the session, which must not say two things. */
function unitOf(stated: string | undefined, entered: string | undefined): SpectrumUnit | { fault: FileFault } {
  const [own, other] = [stated, entered].map((it) => (it === undefined ? undefined : spectrumUnit(it)));
  const hint = 'if the file says it wrongly, mend it there: both are published';
  if (own === 'not-spectral') {
    return {
      fault: {
        found: `values in ${stated}, which is not for each nanometre`,
        wanted: 'spectral irradiance: W/m2/nm, mW/cm2/nm, uW/cm2/nm; or relative values',
        hint: 'export spectral irradiance, or name the unit of the file as relative in its head',
      },
    };
  }
  if (stated !== undefined && own === undefined) {
    return {
      fault: { found: `values in “${stated}”`, wanted: 'W/m2/nm, mW/cm2/nm, uW/cm2/nm, relative or counts', hint },
    };
  }
  if (own && other && other !== 'not-spectral' && !isSameUnit(own, other)) {
    return { fault: { found: `values in ${stated}, where the session says ${entered}`, wanted: 'one unit', hint } };
  }
  return own ?? (other as SpectrumUnit | undefined) ?? { scale: 'relative' };
}

function isSameUnit(one: SpectrumUnit, other: SpectrumUnit): boolean {
  if (one.scale !== other.scale) return false;
  return !('factor' in one && 'factor' in other) || Math.abs(one.factor / other.factor - 1) < 1e-9;
}

interface Columns {
  wavelength: number;
  value: number;
  /** Of wavelengths, to nm. */
  factor: number;
  unit: string | undefined;
}

function columnsOf(head: TableHead, { column }: SpectrumEntry): Columns | { fault: FileFault } {
  const numbers = head.columns.flatMap((it, i) => (it.form === 'number' ? [i] : []));
  const named = head.columns.findIndex((it) => /wave ?length|^lambda$|^λ$|wellenl/i.test(it.name));
  const wavelength = named >= 0 ? named : numbers[0];
  const others = numbers.filter((it) => it !== wavelength);
  if (wavelength === undefined || others.length === 0) {
    const count = head.columns.length;
    const found = `${count} column${count === 1 ? '' : 's'} with ${numbers.length} of numbers`;
    return { fault: { found, wanted: 'a column of wavelengths and one of values' } };
  }
  if (column !== undefined && !others.includes(column - 1)) {
    return { fault: { found: `column ${column}`, wanted: `a column of values: ${listed(others)}` } };
  }
  if (column === undefined && others.length > 1) {
    return {
      fault: {
        found: `${others.length} columns of values: ${others.map((i) => head.columns[i]?.name || `column ${i + 1}`).join(', ')}`,
        wanted: 'one, or which of them is meant',
        hint: `write it as { file: …, column: ${(others[0] ?? 1) + 1} }`,
      },
    };
  }
  const value = column === undefined ? (others[0] as number) : column - 1;
  const factor = wavelengthFactor(head, wavelength);
  if (typeof factor === 'object') return factor;
  const unit = valueUnit(head, value);
  return typeof unit === 'object' ? unit : { wavelength, value, factor, unit };
}

const listed = (places: readonly number[]) => places.map((it) => it + 1).join(', ');

function wavelengthFactor({ columns, firstLine }: TableHead, at: number): number | { fault: FileFault } {
  const { unit = '', name = '', first = '' } = columns[at] ?? {};
  const stated = [unit, name].map(wavelengthUnit).find((it) => it !== undefined);
  if (stated !== undefined) return stated;
  if (unit !== '') return { fault: { found: `wavelengths in “${unit}”`, wanted: 'nm or um' } };
  const guessed = guessedWavelengthUnit(Number(first.replace(',', '.')));
  if (guessed !== undefined) return guessed;
  return { fault: { line: firstLine, found: `“${first}” as the first wavelength`, wanted: 'wavelengths in nm or um' } };
}

/** The values' unit: that of their column, or one that another line of the head states; two that differ are refused. */
function valueUnit({ columns, header }: TableHead, at: number): string | undefined | { fault: FileFault } {
  const { unit = '', name = '' } = columns[at] ?? {};
  const own = unit !== '' ? unit : spectrumUnit(name) ? name : undefined;
  const known = own === undefined ? undefined : spectrumUnit(own);
  for (const line of header) {
    const stated = unitInLine(line);
    const other = stated === undefined ? undefined : spectrumUnit(stated);
    if (stated === undefined || typeof other !== 'object') continue;
    if (own === undefined) return stated;
    if (typeof known !== 'object' || isSameUnit(known, other)) continue;
    const found = `values in ${stated} here, and in ${own} at the head of their column`;
    return { fault: { line: line.line, found, wanted: 'one unit' } };
  }
  return own;
}

/** `Units: uW/cm2/nm`, `# Unit;W/m²/nm` */
function unitInLine({ text }: HeaderLine): string | undefined {
  return /\bunits?\b[^:;=,\t]*[:;=,\t]\s*"?([^";,\t]+)"?\s*$/i.exec(text)?.[1]?.trim();
}

function recognise({ bytes, size, name }: FileHead): Recognised | undefined {
  if (!SPECTRUM_ENDINGS.includes(extname(name).toLowerCase())) return undefined;
  const encoding = encodingOf(bytes);
  if (!encoding) return undefined;
  const isWhole = bytes.length >= size;
  if (isCgats(headLines(bytes, encoding, isWhole).join('\n'))) {
    return { confidence: 0.95, understood: 'a spectrum as CGATS text' };
  }
  const head = tableHead(bytes, isWhole);
  if ('fault' in head) return undefined;
  const columns = columnsOf(head, { file: name, column: undefined });
  if ('fault' in columns) return undefined;
  const { wavelength, value, factor, unit } = columns;
  const first = Number((head.columns[wavelength]?.first ?? '').replace(',', '.')) * factor;
  if (!(first >= 100 && first <= 3000)) return undefined;
  const column = head.columns[wavelength];
  const saysSo = wavelengthUnit(column?.unit ?? '') !== undefined || /wave ?length|wellenl/i.test(column?.name ?? '');
  const isSpectral = unit !== undefined && typeof spectrumUnit(unit) === 'object';
  const inUnit = unit === undefined ? `no unit, taken as relative` : `in ${unit}`;
  return {
    confidence: saysSo ? (isSpectral ? 1 : 0.9) : isSpectral ? 0.8 : 0.3,
    understood: `a spectrum from ${first} nm on, ${isWhole ? `${head.rowsSeen} rows` : 'many rows'}, values ${inUnit}${head.columns[value]?.name ? ` (${head.columns[value]?.name})` : ''}`,
  };
}
