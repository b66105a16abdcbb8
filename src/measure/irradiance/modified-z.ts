import { mean, median, medianAbsoluteDeviation } from 'simple-statistics';

/**
 * Modified z-scores, 0.6745 (x - median) / MAD, that label outliers without being moved by them. Where more
 * than half of the values are equal, MAD is 0 and the mean absolute deviation times 1.253314 takes its place.
 *
 * Source: Iglewicz and Hoaglin 1993, How to Detect and Handle Outliers, as given in the NIST/SEMATECH
 * e-Handbook, 1.3.5.17 (from memory); the replacement at MAD = 0 is common practice.
 *
 * @returns one score a value; all 0 where the values are equal
 */
export function modifiedZScores(values: readonly number[]): number[] {
  const { centre, sigma } = modifiedZScale(values);
  return values.map((x) => (sigma === 0 ? 0 : (x - centre) / sigma));
}

/** The centre and the sigma that such scores are counted from and in; sigma is 0 where the values are equal. */
export function modifiedZScale(values: readonly number[]): { centre: number; sigma: number } {
  const all = [...values];
  const centre = median(all);
  const mad = medianAbsoluteDeviation(all);
  if (mad > 0) return { centre, sigma: mad / MAD_TO_SIGMA };
  return { centre, sigma: MEAN_DEVIATION_TO_SIGMA * mean(all.map((x) => Math.abs(x - centre))) };
}

/** The 0.75 quantile of the normal distribution: MAD of a normal sample over its sigma. */
const MAD_TO_SIGMA = 0.6745;
/** sqrt(pi / 2): sigma of a normal sample over its mean absolute deviation. */
const MEAN_DEVIATION_TO_SIGMA = 1.253314;
