/** Times as the guide writes them, read back: `1 h 5 min`, `3 min 47 s`, `47.1 s`. */

const SECONDS: Readonly<Record<string, number>> = { h: 3600, min: 60, s: 1 };

/** One time of the guide's notation, as a pattern. */
export const TIME = String.raw`[\d.]+ (?:h|min|s)(?: \d+ (?:min|s))*`;

/** Seconds of a time in words; NaN where it is no time. */
export function secondsIn(words: string): number {
  if (!new RegExp(`^${TIME}$`).test(words)) return Number.NaN;
  return [...words.matchAll(/([\d.]+) (h|min|s)/g)].reduce(
    (sum, [, count, unit]) => sum + Number(count) * (SECONDS[unit ?? ''] ?? Number.NaN),
    0,
  );
}
