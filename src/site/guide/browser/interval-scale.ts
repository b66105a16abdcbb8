/** One scale of equal ratios for all intervals of a ranking, so that as long a line is as wide a doubt in any row. No DOM. */

/** From one end to the other; both above nought. */
export type Scale = readonly [low: number, high: number];

/** Length of the scale in units of its drawing. */
export const LENGTH = 200;

/** Places on the scale, from 0 to its length. */
export interface PlacedInterval {
  from: number;
  to: number;
  at: number;
}

/** Ends clear of the outermost interval by this factor. */
const CLEAR = 1.05;
/** A scale is at least so many times as high at its end as at its beginning, or a single interval would fill it. */
const LEAST = 3;

/** The scale that holds all intervals; undefined where there is none that can be drawn. */
export function scaleOf(intervals: ReadonlyArray<readonly [number, number]>): Scale | undefined {
  const drawn = intervals.filter(([low]) => low > 0);
  if (drawn.length === 0) return undefined;
  const [low, high] = [Math.min(...drawn.map((it) => it[0])) / CLEAR, Math.max(...drawn.map((it) => it[1])) * CLEAR];
  const wider = Math.sqrt(Math.max(1, LEAST / (high / low)));
  return [low / wider, high * wider];
}

/** Where a value lies, 0 to 200, whole: half of a pixel or so; undefined off the scale. */
export function placeOn([low, high]: Scale, value: number): number | undefined {
  if (!(value >= low && value <= high)) return undefined;
  return Math.round((LENGTH * Math.log(value / low)) / Math.log(high / low));
}

/** An interval on the scale; nothing where part of it is off: it would look shorter than it is. */
export function placedOn(scale: Scale, value: number, interval: readonly [number, number]): PlacedInterval | undefined {
  const [from, to, at] = [placeOn(scale, interval[0]), placeOn(scale, interval[1]), placeOn(scale, value)];
  return from === undefined || to === undefined || at === undefined ? undefined : { from, to, at };
}

/** Round numbers to name on a scale: those of a decade, fewer of them where they would crowd. */
const STEPS = [[1, 2, 3, 4, 5, 7], [1, 2, 5], [1, 3], [1]];
/** They lie at least so far apart, or their numbers would run into each other. */
const NARROWEST = 34;

/** The round numbers that a scale names, from its low end up. */
export function ticksOf(scale: Scale): Array<{ value: number; at: number }> {
  const [first, final] = [Math.floor(Math.log10(scale[0])), Math.floor(Math.log10(scale[1]))];
  const decades = Array.from({ length: final - first + 1 }, (_, i) => first + i);
  const choices = STEPS.map((steps) =>
    decades.flatMap((decade) =>
      steps.flatMap((step) => {
        const value = Number(`${step}e${decade}`);
        const at = placeOn(scale, value);
        return at === undefined ? [] : [{ value, at }];
      }),
    ),
  );
  const isClear = (it: (typeof choices)[number]) =>
    it.every((tick, i) => i === 0 || tick.at - (it[i - 1]?.at ?? 0) >= NARROWEST);
  const found = choices.find(isClear);
  if (found) return found;
  // Over many decades some powers of ten have no room either.
  let last = Number.NEGATIVE_INFINITY;
  return (choices.at(-1) ?? []).filter(({ at }) => {
    if (at - last < NARROWEST) return false;
    last = at;
    return true;
  });
}
