/** A value with its 95 % coverage interval. */
export interface Stated {
  value: number;
  interval95: readonly [low: number, high: number];
}

/** How two results of one thing stand to each other. */
export interface Agreement {
  /** Own less other, in their unit. */
  difference: number;
  /** The difference over the expanded uncertainty of the difference; its sign is that of the difference. */
  en: number;
}

/** Up to here, either way, the two intervals explain the difference (ISO 13528:2022 and ISO/IEC 17043, from memory). */
export const EN_LIMIT = 1;

/**
 * The E_n number of two results: (x − X) / √(U_x² + U_X²), with expanded uncertainties of 95 % coverage (ISO 13528:2022,
 * E_n scores; ISO/IEC 17043: both from memory, their texts were not seen). Of a lopsided interval the side that faces
 * the other result counts (our own rule; the same for an even one).
 *
 * The two are taken for independent. Where both meters were calibrated against one standard they share an error that the
 * difference does not have, and E_n comes out too small.
 *
 * @throws RangeError where both are told as exact, so that there is nothing to divide by, or where a value lies outside
 *   its interval
 * @example enNumber({ value: 10.5, interval95: [10.2, 10.8] }, { value: 10, interval95: [9.6, 10.4] }).en // 1
 */
export function enNumber(own: Stated, other: Stated): Agreement {
  const difference = own.value - other.value;
  const [ownSide, otherSide] = difference > 0 ? [below(own), above(other)] : [above(own), below(other)];
  const expanded = Math.hypot(ownSide, otherSide);
  if (!(expanded > 0)) throw new RangeError('two exact values have no E_n number');
  return { difference, en: difference / expanded };
}

const below = ({ value, interval95: [low] }: Stated) => width(value - low);
const above = ({ value, interval95: [, high] }: Stated) => width(high - value);

function width(it: number): number {
  if (!(it >= 0)) throw new RangeError('a value outside its interval');
  return it;
}
