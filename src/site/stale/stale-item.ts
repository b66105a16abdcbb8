import type { Source } from '../../content/read/source.ts';
import { fieldPath } from '../../content/schema/problem.ts';

/** What can go stale, in the order in which it is listed. */
export const STALE_KINDS = [
  'price',
  'calibration',
  'session',
  'procedure',
  'claims',
  'rate',
  'tariff',
  'link',
] as const;
export type StaleKind = (typeof STALE_KINDS)[number];

/** Something in the content that was true when it was written, and may not be any more. */
export interface StaleItem {
  kind: StaleKind;
  /** Past its time, or about to be. */
  state: 'past' | 'soon';
  /** The day that counts: of the price, of the session, on which the calibration runs out; null where there is none. */
  day: string | null;
  file: string;
  /** Counted from 1. */
  line: number;
  field: string;
  /** The panel, instrument or address that it is about. */
  name: string;
  /** What is the matter, without the name. */
  text: string;
  /** What to do about it. */
  todo: string;
}

/** An item about a field of a file. */
export function staleAt(
  source: Source,
  path: readonly PropertyKey[],
  about: Omit<StaleItem, 'file' | 'line' | 'field'>,
): StaleItem {
  return { ...about, file: source.file, line: source.lineOf(path), field: fieldPath(path) };
}
