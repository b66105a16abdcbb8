import type { FileFault } from './file-kind.ts';

/*
 * CGATS text (ISO 28178:2009, CGATS.17; from memory and from files as programs write them): keywords with values, a list
 * of fields between BEGIN_DATA_FORMAT and END_DATA_FORMAT, rows between BEGIN_DATA and END_DATA. A spectrum is one row
 * with a field a wavelength (SPECTRAL_NM450, SPEC_450, NM450), or rows of a wavelength and a value (SPECTRAL_NM with
 * SPECTRAL_DEC or another).
 */

/** A line of data with where it stands. */
export interface CgatsRow {
  line: number;
  cells: readonly string[];
}

/** A CGATS text as it stands. */
export interface CgatsText {
  keywords: ReadonlyMap<string, string>;
  fields: readonly string[];
  rows: readonly CgatsRow[];
}

/** True where a text begins as CGATS does. */
export function isCgats(start: string): boolean {
  return /^\s*BEGIN_DATA_FORMAT\b/m.test(start) || /^\s*(?:CGATS|ISO ?28178)/.test(start);
}

/** Field of a wavelength: its number, nm. */
const WAVELENGTH_FIELD = /^(?:SPECTRAL_NM_?|SPECTRAL_|SPEC_|NM_?|R_)(\d{3,4}(?:\.\d+)?|\d{6})$/i;

/** The wavelength that a field is for, nm; undefined where it is another. */
export function fieldWavelength(field: string): number | undefined {
  const found = WAVELENGTH_FIELD.exec(field)?.[1];
  if (found === undefined) return undefined;
  // Some programs write picometres, as in SPEC_380000.
  return found.length === 6 && !found.includes('.') ? Number(found) / 1000 : Number(found);
}

/** Reads keywords, fields and rows; a fault where something that has to be there is not. */
export function cgatsOf(lines: Iterable<string>): CgatsText | { fault: FileFault } {
  const keywords = new Map<string, string>();
  const fields: string[] = [];
  const rows: CgatsRow[] = [];
  let part: 'head' | 'fields' | 'rows' | 'end' = 'head';
  let line = 0;
  let hasData = false;
  for (const text of lines) {
    line++;
    const cells = cellsOf(text);
    const [first] = cells;
    if (first === undefined) continue;
    if (first === 'BEGIN_DATA_FORMAT') part = 'fields';
    else if (first === 'END_DATA_FORMAT') part = 'head';
    else if (first === 'BEGIN_DATA') {
      if (hasData) break;
      [part, hasData] = ['rows', true];
    } else if (first === 'END_DATA') part = 'end';
    else if (part === 'fields') fields.push(...cells);
    else if (part === 'rows') {
      if (cells.length !== fields.length) {
        const found = `${cells.length} values`;
        return { fault: { line, found, wanted: `${fields.length}, one for each field of the data format` } };
      }
      rows.push({ line, cells });
    } else if (part === 'head') keywords.set(first, cells.slice(1).join(' '));
  }
  if (fields.length === 0) return { fault: { found: 'no BEGIN_DATA_FORMAT', wanted: 'a CGATS text with its fields' } };
  if (!hasData) return { fault: { found: 'no BEGIN_DATA', wanted: 'a CGATS text with data' } };
  if (part === 'rows') {
    return { fault: { found: 'no END_DATA', wanted: 'a whole file', hint: 'it was cut off: export it anew' } };
  }
  const stated = Number(keywords.get('NUMBER_OF_SETS') ?? rows.length);
  if (stated !== rows.length) {
    return { fault: { found: `${rows.length} rows of data`, wanted: `${stated}, as NUMBER_OF_SETS says` } };
  }
  return { keywords, fields, rows };
}

/** Words of a line: what stands in quotes is one, and what follows # is a remark. */
function cellsOf(text: string): string[] {
  const cells: string[] = [];
  for (const [, quoted, bare] of text.matchAll(/"((?:[^"]|"")*)"|([^\s"#]+)|#.*$/g)) {
    if (quoted !== undefined) cells.push(quoted.replaceAll('""', '"'));
    else if (bare !== undefined) cells.push(bare);
    else break;
  }
  return cells;
}
