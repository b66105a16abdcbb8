import type { Figure, FigureOrGap } from '../figure.ts';
import { number } from '../numbers.ts';

/** The three fields that a session reads. */
export type FieldKind = 'magnetic' | 'electric' | 'radio';

/** Readings of one field. */
export interface FieldReading {
  kind: FieldKind;
  on: FigureOrGap;
  off: FigureOrGap;
  /** The distance as the tester wrote it: "15 cm". */
  distance: string | undefined;
  /** Hz, where the instrument showed it for the reading with the panel on; a gap or nothing where it did not. */
  frequency?: FigureOrGap | undefined;
  /** What the instrument responds to, in its file's words. */
  response?: string | undefined;
}

/** The value in the other units in use: 0.31 µT is 3.1 mG and 310 nT. Empty for electric fields, which have one. */
function otherUnits(kind: FieldKind, value: number): string {
  if (kind === 'magnetic') return ` (= ${number(10 * value)} mG = ${number(1000 * value)} nT)`;
  if (kind === 'radio') return ` (= ${number(1000 * value)} µW/m² = ${number(value / 1000)} W/m²)`;
  return '';
}

/** The reading in a formula: its unit, and beside it the others. */
export function readingInUnits(kind: FieldKind, on: Figure): string {
  return `${number(on.value)} ${on.unit}${otherUnits(kind, on.value)}`;
}
