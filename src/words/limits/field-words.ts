import type { FieldKind, FieldReading } from '../../measure/exposure/field-reading.ts';
import { isFigure } from '../../measure/figure.ts';
import { number } from '../../measure/numbers.ts';
import { say } from '../say.ts';
import { asRead } from './amounts.ts';

/** What the fields are called in a sentence. */
export const FIELD_NAMES: Readonly<Record<FieldKind, string>> = {
  magnetic: 'magnetic field',
  electric: 'electric field',
  radio: 'radio field',
};

/** 1 µT is 10 mG. */
export const MILLIGAUSS = 10;

/** Where something was read, as the tester wrote it. */
export function placeWords(distance: string | undefined): string {
  return distance === undefined ? 'the distance is not recorded' : `read at ${distance}`;
}

/** Both readings and the distance, as the first sentence of a result; empty without a reading. */
export function readWords({ kind, on, off, distance }: FieldReading): string {
  if (!isFigure(on)) return '';
  const other = kind === 'magnetic' ? ` (${on.bound ? `${on.bound} ` : ''}${number(MILLIGAUSS * on.value, 3)} mG)` : '';
  const room = isFigure(off) ? `with it off, ${asRead(off)}` : `with it off, there is no reading (${say(off.reason)})`;
  return `With the panel on, the ${FIELD_NAMES[kind]} was ${asRead(on)}${other}; ${room}; ${placeWords(distance)}.`;
}
