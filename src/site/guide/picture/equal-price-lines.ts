import { maxIndex, range } from 'd3-array';
import { pixels } from '../../shared/browser/plot.ts';
import { type Box, gapBetween, isWithin, nearTo, overlap, stripBoxes } from './boxes.ts';
import { type LogAxis, roundsAround } from './log-axis.ts';

/** A line along which a watt costs the same, with its words on it. */
export interface EqualPriceLine {
  path: string;
  text: string;
  /** The middle of its words, and by how many degrees they are turned. */
  x: number;
  y: number;
  turn: number;
}

/** Lines are as many as tell prices apart at a glance. */
const MOST = 5;
/** Steps in which words move along their line, px. */
const STEP = 4;
/** Between words and the ends of their line. */
const END = 6;
/** From words to the nearest thing: more is no better, px. */
const ROOM = 40;

/** What the lines are drawn on. */
export interface Ground {
  x: LogAxis;
  y: LogAxis;
  frame: Box;
}

/**
 * Lines of equal price for a watt, at round prices around those that occur. Each has its words on it, where they are
 * farthest from all else, or have room enough, near its upper end. A line that finds no place for them would say
 * nothing, and is left out.
 *
 * @param perWatt prices for a watt that occur
 * @param sizeOf the room that the words of a price need
 * @param taken marks, the frontier, and names that have a place: what they keep off
 * @returns the lines, and what their words cover
 */
export function equalPriceLines(
  perWatt: readonly number[],
  { x, y, frame }: Ground,
  words: (price: number) => string,
  sizeOf: (text: string) => { width: number; height: number },
  taken: readonly Box[],
): { lines: EqualPriceLine[]; covered: Box[] } {
  const angle = Math.atan2(-y.perDecade, x.perDecade);
  const lines: EqualPriceLine[] = [];
  const covered: Box[] = [];
  for (const price of roundsAround(perWatt, MOST)) {
    // From the lower left to the upper right, as far as both axes reach.
    const from = Math.max(x.low, y.low * price);
    const to = Math.min(x.high, y.high * price);
    if (from >= to) continue;
    const [x1, x2] = [x.place(from), x.place(to)];
    const [y1, y2] = [y.place(from / price), y.place(to / price)];
    const text = words(price);
    const size = sizeOf(text);
    const length = Math.hypot(x2 - x1, y2 - y1);
    const spots = range(size.width / 2 + END, length - size.width / 2 - END, STEP).flatMap((back) => {
      const middle = { x: x2 - (back * (x2 - x1)) / length, y: y2 + (back * (y1 - y2)) / length };
      const boxes = stripBoxes(middle, size, angle);
      if (!boxes.every((it) => isWithin(it, frame))) return [];
      const near = nearTo(boxes, taken, ROOM);
      if (boxes.some((it) => [...near, ...covered].some((other) => overlap(it, other)))) return [];
      const room = Math.min(ROOM, ...boxes.flatMap((it) => near.map((other) => gapBetween(it, other))));
      return [{ ...middle, boxes, room }];
    });
    // Of equals the first, which is nearest to the upper end.
    const best = spots[maxIndex(spots, (it) => it.room)];
    if (!best) continue;
    covered.push(...best.boxes);
    lines.push({
      path: `M${x1} ${y1}L${x2} ${y2}`,
      text,
      x: pixels(best.x),
      y: pixels(best.y),
      turn: pixels((-angle * 180) / Math.PI),
    });
  }
  return { lines, covered };
}
