import { type Figure, type FigureOrGap, isFigure } from '../figure.ts';
import { number } from '../numbers.ts';
import { asRead } from './words.ts';

/** The three fields that a session reads. */
export type FieldKind = 'magnetic' | 'electric' | 'radio';

/** Readings of one field. */
export interface FieldReading {
  kind: FieldKind;
  on: FigureOrGap;
  off: FigureOrGap;
  /** The distance as the tester wrote it: "15 cm". */
  distance: string | undefined;
  /** Hz, where the meter showed it for the reading with the panel on; a gap or nothing where it did not. */
  frequency?: FigureOrGap | undefined;
  /** What the meter responds to, in its file's words. */
  response?: string | undefined;
}

/** What the fields are called in a sentence. */
export const FIELD_NAMES: Record<FieldKind, string> = {
  magnetic: 'magnetic field',
  electric: 'electric field',
  radio: 'radio field',
};

/** The value in the other units in use: 0.31 µT is 3.1 mG and 310 nT. Empty for electric fields, which have one. */
export function otherUnits(kind: FieldKind, value: number): string {
  if (kind === 'magnetic') return ` (= ${number(10 * value)} mG = ${number(1000 * value)} nT)`;
  if (kind === 'radio') return ` (= ${number(1000 * value)} µW/m² = ${number(value / 1000)} W/m²)`;
  return '';
}

/** The reading in a formula: its unit, and beside it the others. */
export function readingInCalculation(kind: FieldKind, on: Figure): string {
  return `${number(on.value)} ${on.unit}${otherUnits(kind, on.value)}`;
}

/** Both readings and the distance, as the first sentence of a result. */
export function readWords({ kind, on, off, distance }: FieldReading): string {
  if (!isFigure(on)) return '';
  const other = kind === 'magnetic' ? ` (${on.bound ? `${on.bound} ` : ''}${number(10 * on.value, 3)} mG)` : '';
  const room = isFigure(off) ? `with it off, ${asRead(off)}` : `with it off, there is no reading (${off.reason})`;
  const place = distance === undefined ? 'the distance is not recorded' : `read at ${distance}`;
  return `With the panel on, the ${FIELD_NAMES[kind]} was ${asRead(on)}${other}; ${room}; ${place}.`;
}
