import { isBlock } from '../schema/block.ts';
import { CARRIED_NAMES, type CarriedName, carriedBlock } from '../schema/carried.ts';
import { inFlow } from './yaml-text.ts';

/** How a block is set out that no earlier session has read: every field that it may have. */
const USUAL: Readonly<Record<string, unknown>> = {
  peak: { red: 0, nearInfrared: 0, combined: 0 },
  grid: {
    inset: '1 in',
    rows: [
      [0, 0, 0],
      [0, 0, 0],
      [0, 0, 0],
    ],
  },
  beyond: ['right', 'top'].flatMap((edge) => ['8 cm', '20 cm', '40 cm'].map((past) => ({ edge, past, on: 0, off: 0 }))),
  wavelengths: { red: { peak: 0, fwhm: 0 }, nearInfrared: { peak: 0, fwhm: 0 } },
  mains: { standby: 0, red: 0, nearInfrared: 0, combined: 0 },
  magnetic: { distance: '6 in', off: 0, on: 0 },
  electric: { distance: '6 in', off: 0, on: 0 },
  radio: { distance: '6 in', off: 0, on: 0 },
  sound: { distance: '1 m', off: 0, on: 0 },
  flicker: {
    red: { frequency: 0, percent: 0 },
    nearInfrared: { frequency: 0, percent: 0 },
    combined: { frequency: 0, percent: 0 },
  },
  hotSpots: '',
};

/** What is set before it is read, and is set again as it was. */
const SETTINGS: ReadonlySet<string> = new Set(['distance', 'inset', 'edge', 'past']);

/** Fields that are laid out over several lines. */
const OVER_LINES: ReadonlySet<string> = new Set(['grid', 'wavelengths', 'flicker']);

/**
 * The fields of the blocks that are to be read, as comments: set out as they were read before, each with its settings and
 * a gap for each reading. A line counts once its sign of a comment is taken away.
 *
 * @param earlier the session's fields as they stand in the file, of the newest session that read each block
 * @param without fields that are read already
 */
export function blanks(
  toRead: readonly CarriedName[],
  earlier: (name: CarriedName) => unknown,
  without: ReadonlySet<string> = new Set(),
): string[] {
  return CARRIED_NAMES.filter((it) => toRead.includes(it)).flatMap((name) => {
    const before = earlier(name);
    return carriedBlock(name).fields.flatMap((field) => {
      const known = isBlock(before) ? before[field] : undefined;
      const pattern =
        known ?? (name === 'light' && before !== undefined && field !== 'beyond' ? undefined : USUAL[field]);
      return pattern === undefined || without.has(field) ? [] : laidOut(field, pattern, blank).map((it) => `# ${it}`);
    });
  });
}

/** A field that has been read, laid out as its blanks are. */
export function readLines(field: string, value: unknown): string[] {
  return laidOut(field, value, inFlow);
}

/** @param written what stands of a value on one line */
function laidOut(field: string, pattern: unknown, written: (value: unknown) => string): string[] {
  if (Array.isArray(pattern)) return [`${field}:`, ...pattern.map((it) => `  - ${written(it)}`)];
  if (!isBlock(pattern) || !OVER_LINES.has(field)) return [`${field}: ${written(pattern)}`.trimEnd()];
  return [
    `${field}:`,
    ...Object.entries(pattern).flatMap(([key, value]) =>
      key === 'rows' && Array.isArray(value)
        ? ['  rows:', ...value.map((row) => `    - ${written(row)}`)]
        : [`  ${key}: ${SETTINGS.has(key) && written === blank ? String(value) : written(value)}`.trimEnd()],
    ),
  ];
}

/** A value on one line, its readings as gaps. */
function blank(pattern: unknown): string {
  if (Array.isArray(pattern)) return `[${pattern.map(() => ' ').join(',')}]`;
  if (!isBlock(pattern)) return '';
  const fields = Object.entries(pattern).map(
    ([key, value]) => `${key}: ${SETTINGS.has(key) ? String(value) : blank(value)}`,
  );
  return `{ ${fields.join(', ').trimEnd()} }`;
}
