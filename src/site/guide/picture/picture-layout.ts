import { pixels } from '../../shared/browser/plot.ts';
import { type Box, grown, overlap } from './boxes.ts';
import { type EqualPriceLine, equalPriceLines } from './equal-price-lines.ts';
import { logAxis } from './log-axis.ts';
import { type Anchor, placeNames } from './place-names.ts';
import { textWidth } from './text-width.ts';

/** What a layout needs of a panel. */
export interface Offer {
  price: number;
  power: number;
  perWatt: number;
  /** Ends of the 95 % interval of the power. */
  interval: readonly [number, number] | undefined;
  /** Name beside its mark. */
  short: string;
  /** No other is both cheaper and stronger. */
  isOnFrontier: boolean;
}

/** Words of the axes and of the lines. */
export interface AxisWords {
  price(value: number): string;
  power(value: number): string;
  perWatt(value: number): string;
}

/** Lengths of a layout, px. */
export interface Sheet {
  name: 'wide' | 'narrow';
  width: number;
  height: number;
  frame: Box;
  /** Letter sizes of names, and of axes and lines. The style sheet has the same. */
  nameSize: number;
  wordSize: number;
}

/** A panel as a layout shows it. */
export interface DrawnMark {
  x: number;
  y: number;
  /** The 95 % interval of its power, from the middle of its mark, as its name is: hundreds of them then read alike. */
  interval: string | undefined;
  /** No other mark and no name of another is near, so that a finger may miss it by some. */
  isApart: boolean;
  name: { x: number; y: number; anchor: Anchor; text: string } | undefined;
}

/** A drawing of all panels at one size. */
export interface PictureLayout extends Sheet {
  grid: string;
  /** The frontier: the most power to be had for at most some price. */
  stairs: string;
  xTicks: Array<{ at: number; text: string }>;
  yTicks: Array<{ at: number; text: string }>;
  lines: EqualPriceLine[];
  /** In the order of the offers. */
  marks: DrawnMark[];
}

/** Half of what a mark covers. */
export const MARK = 5;
/** Half of what answers a finger. */
export const REACH = 12;
/** Lines of words stand this many letter sizes apart. */
const LINE_HEIGHT = 1.2;
/** From the middle of a line of words down to the letters' feet, in letter sizes. */
const TO_BASELINE = 0.35;
/** Names and words keep off the frame. */
const INSET = 2;
/** Between the words of two ticks. */
const TICK_GAP = 8;

/**
 * Draws offers on a sheet.
 *
 * @param offers one at least, cheapest first
 * @param order indexes of offers; those first in it get a name first
 */
export function pictureLayout(
  offers: readonly Offer[],
  order: readonly number[],
  sheet: Sheet,
  words: AxisWords,
): PictureLayout {
  const { frame, nameSize, wordSize } = sheet;
  const sizeOf = (size: number) => (text: string) => ({ width: textWidth(text, size), height: LINE_HEIGHT * size });
  const x = logAxis(
    offers.map((it) => it.price),
    [frame.left, frame.right],
    words.price,
    (text) => textWidth(text, wordSize) + TICK_GAP,
  );
  const y = logAxis(
    offers.map((it) => it.power),
    [frame.bottom, frame.top],
    words.power,
    () => LINE_HEIGHT * wordSize,
  );
  const spots = offers.map(({ price, power, interval }) => {
    const at = { x: x.place(price), y: y.place(power) };
    const ends = interval ? ([y.place(interval[0]), y.place(interval[1])] as const) : undefined;
    return { ...at, ends, covers: covered(at, ends) };
  });
  const inner = grown(frame, -INSET);
  const steps = stairSteps(
    spots.filter((_, i) => offers[i]?.isOnFrontier),
    frame.right,
  );
  const ordered = order.flatMap((i) => {
    const [spot, offer] = [spots[i], offers[i]];
    return spot && offer ? [{ i, ...spot, mark: spot.covers, ...sizeOf(nameSize)(offer.short) }] : [];
  });
  const linesBeside = (taken: readonly Box[]) =>
    equalPriceLines(
      offers.map((it) => it.perWatt),
      { x, y, frame: inner },
      words.perWatt,
      sizeOf(wordSize),
      [...spots.map((it) => it.covers), ...steps, ...taken],
    );
  let found = placeNames(ordered, inner, [], steps);
  let lines = linesBeside(found.flatMap((it) => it?.box ?? [])).lines;
  // Names come first, unless some lines would go without words for them.
  const alone = linesBeside([]);
  if (alone.lines.length > lines.length) {
    lines = alone.lines;
    found = placeNames(ordered, inner, alone.covered, steps);
  }
  const places = new Map(found.map((place, k) => [ordered[k]?.i, place]));
  const names = found.flatMap((it) => it?.box ?? []);
  const reaches = spots.map((it) => boxAround(it, REACH));
  const marks = spots.map((spot, i): DrawnMark => {
    const place = places.get(i);
    const reach = boxAround(spot, REACH);
    const others = reaches.some((other, k) => k !== i && overlap(reach, other));
    const nameNear = names.some((it) => it !== place?.box && overlap(reach, it));
    return {
      x: spot.x,
      y: spot.y,
      interval: spot.ends && `M0 ${pixels(spot.ends[0] - spot.y)}V${pixels(spot.ends[1] - spot.y)}`,
      isApart: !others && !nameNear,
      name: place && {
        x: pixels(place.x - spot.x),
        y: pixels(place.y + TO_BASELINE * nameSize - spot.y),
        anchor: place.anchor,
        text: offers[i]?.short ?? '',
      },
    };
  });
  const { left, top, right, bottom } = frame;
  /** Words at the end of the axis are moved in, so that they stay on the sheet. */
  const held = (at: number, text: string) => pixels(Math.min(at, sheet.width - textWidth(text, wordSize) / 2));
  return {
    ...sheet,
    grid: [
      ...x.ticks.map(({ at }) => `M${at} ${top}V${bottom}`),
      ...y.ticks.map(({ at }) => `M${left} ${at}H${right}`),
    ].join(''),
    stairs: stairsPath(steps),
    xTicks: x.ticks.flatMap(({ at, text }) => (text ? [{ at: held(at, text), text }] : [])),
    yTicks: y.ticks.flatMap(({ at, text }) => (text ? [{ at, text }] : [])),
    lines,
    marks,
  };
}

const boxAround = ({ x, y }: { x: number; y: number }, by: number): Box =>
  grown({ left: x, right: x, top: y, bottom: y }, by);

/** What a mark and its interval cover. */
function covered(at: { x: number; y: number }, ends: readonly [number, number] | undefined): Box {
  const box = boxAround(at, MARK);
  return ends ? { ...box, top: Math.min(box.top, ends[1]), bottom: Math.max(box.bottom, ends[0]) } : box;
}

/** The frontier's lines as boxes without breadth: level to the next panel on it, then up. */
function stairSteps(on: ReadonlyArray<{ x: number; y: number }>, right: number): Box[] {
  return on.flatMap(({ x, y }, i) => {
    const next = on[i + 1];
    const level = { left: x, right: next?.x ?? right, top: y, bottom: y };
    return next ? [level, { left: next.x, right: next.x, top: next.y, bottom: y }] : [level];
  });
}

function stairsPath(steps: readonly Box[]): string {
  const [first, ...rest] = steps;
  if (!first) return '';
  return `M${first.left} ${first.top}H${first.right}${rest.map((it) => (it.left === it.right ? `V${it.top}` : `H${it.right}`)).join('')}`;
}
