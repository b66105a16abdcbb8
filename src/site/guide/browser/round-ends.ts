/** Round numbers about values, for an axis of equal ratios: 1, 2 and 5 times a power of ten. No DOM. */

const ROUND = [1, 2, 5] as const;
/** Marks keep clear of an axis's ends by this factor. */
const CLEAR = 1.1;

/** True for 20, and for 0.5; false for 30. */
export const isRound = (value: number) => /^[125]e/.test(Number(value.toPrecision(3)).toExponential());

/** The next round numbers below and above some values, all above nought. */
export function roundEnds(values: readonly number[]): { min: number; max: number } {
  const [least, most] = [Math.min(...values) / CLEAR, Math.max(...values) * CLEAR];
  const from = 10 ** Math.floor(Math.log10(least));
  const to = 10 ** Math.floor(Math.log10(most));
  return {
    min: from * (ROUND.findLast((it) => from * it <= least) ?? 1),
    max: to * (ROUND.find((it) => to * it >= most) ?? 10),
  };
}
