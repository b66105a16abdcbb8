import type { RawReading } from '../calculation/raw-readings.ts';
import type { TextRef } from '../shared/browser/text-ref.ts';
import type { TextTable } from './text-table.ts';

/** What readings of many sessions are of; words have no unit. */
export type ReadingEntry = readonly [path: string, label: TextRef, unit: string | null];
export const READING_COLUMNS = ['path', 'label', 'unit'] as const;

/** A value that was written in its canonical unit; or value, as written (null where that is value and unit), and what there is besides. */
export type ReadingRow =
  | number
  | readonly [value: number | null, written: string | null]
  | readonly [value: number | null, written: string | null, more: Pick<RawReading, 'bound' | 'struck'>];

/** A reading, and what it is of. */
export function readingRow(
  { path, label, written, value: given, unit: inUnit, ...more }: RawReading,
  texts: TextTable,
): readonly [ReadingEntry, ReadingRow] {
  const [value, unit] = [given ?? null, inUnit ?? null];
  const entry = [path, texts.filled(label), unit] as const;
  const isPlain = value !== null && written === `${value} ${unit}`;
  if (Object.keys(more).length > 0) return [entry, [value, isPlain ? null : written, more]];
  return [entry, isPlain ? value : [value, written]];
}
