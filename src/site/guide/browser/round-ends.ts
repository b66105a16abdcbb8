/** Round numbers about values, for an axis of equal ratios: 1, 2 and 5 times a power of ten. No DOM. */

const ROUND = [1, 2, 5] as const;
/** Marks keep clear of an axis's ends by this factor. */
const CLEAR = 1.1;

/** True for 20, and for 0.5; false for 30. */
export const isRound = (value: number) => /^[125]e/.test(Number(value.toPrecision(3)).toExponential());

/** Those of a value's decade, and the first of the next one. Exact where a power of ten is not: 2e-3 is 0.002. */
function roundNumbers(value: number): number[] {
  const exponent = Math.floor(Math.log10(value));
  return [...ROUND.map((it) => Number(`${it}e${exponent}`)), Number(`1e${exponent + 1}`)];
}

/** The next round numbers below and above some values, all above nought. */
export function roundEnds(values: readonly number[]): { min: number; max: number } {
  const [least, most] = [Math.min(...values) / CLEAR, Math.max(...values) * CLEAR];
  return {
    min: roundNumbers(least).findLast((it) => it <= least) ?? least,
    max: roundNumbers(most).find((it) => it >= most) ?? most,
  };
}
