import { type Box, grown, isWithin, nearTo, overlap } from './boxes.ts';

/** A mark that would have its name beside it. */
export interface Named {
  /** What the mark covers, with its interval. */
  mark: Box;
  /** Where the mark's value lies. */
  x: number;
  y: number;
  /** Room that the name needs. */
  width: number;
  height: number;
}

/** Which end of a name stands at its x. */
export type Anchor = 'start' | 'middle' | 'end';

/** Where a name stands: its x, the middle of its height, and the box that it fills. */
export interface Place {
  x: number;
  y: number;
  anchor: Anchor;
  box: Box;
}

/** Between a mark and its name. */
const GAP = 3;
/** Between a name and a mark that is not its own, so that no reader takes it for that one's. */
const CLEAR = 2;
/** How far a name moves up or down beside its mark, in heights of it. */
const SHIFTS = [0, -0.45, 0.45];
/** How many names move in turn to let one more in. */
const DEEPEST = 2;

/**
 * Finds places for names beside their marks so that no name touches another, a mark or what else
 * is taken, and none leaves the frame. A name that finds none goes without.
 *
 * Each takes the first place that is free. Where all are taken, names that stand in the way of one move to another place of
 * theirs, if they have one: a name that has a place never loses it to a later one. Same input, same places.
 *
 * @param names the most important first
 * @param taken what no name may stand on
 * @param avoided what a name stands on only where it has no better place
 * @returns a place for each name, in the same order; undefined for one that goes without
 */
export function placeNames(
  names: readonly Named[],
  frame: Box,
  taken: readonly Box[] = [],
  avoided: readonly Box[] = [],
): Array<Place | undefined> {
  const spaces = names.map((it) => grown(it.mark, CLEAR));
  const choices = names.map((it, own) => {
    const places = placesOf(it);
    const near = nearTo(
      places.map(({ box }) => box),
      spaces,
    );
    const open = places.filter(
      ({ box }) =>
        isWithin(box, frame) &&
        !taken.some((other) => overlap(box, other)) &&
        !near.some((space) => overlap(box, space === spaces[own] ? it.mark : space)),
    );
    const isClear = ({ box }: Place) => !avoided.some((other) => overlap(box, other));
    return [...open.filter(isClear), ...open.filter((place) => !isClear(place))];
  });
  const placed: Array<Place | undefined> = names.map(() => undefined);

  /** Finds a place that keeps out of some boxes; others may move for it. */
  const settle = (name: number, kept: readonly Box[], depth: number): boolean => {
    const open = (choices[name] ?? []).filter((it) => !kept.some((box) => overlap(it.box, box)));
    const inWay = open.map((it) =>
      placed.flatMap((other, i) => (i !== name && other && overlap(it.box, other.box) ? [i] : [])),
    );
    const free = inWay.findIndex((it) => it.length === 0);
    if (free >= 0) {
      placed[name] = open[free];
      return true;
    }
    if (depth === 0) return false;
    for (const [i, place] of open.entries()) {
      const before = [...placed];
      placed[name] = place;
      const movers = inWay[i] ?? [];
      for (const it of movers) placed[it] = undefined;
      if (movers.every((it) => settle(it, [...kept, place.box], depth - 1))) return true;
      placed.splice(0, placed.length, ...before);
    }
    return false;
  };
  for (const name of names.keys()) settle(name, [], DEEPEST);
  return placed;
}

/** Every place that a name may have, the best first. */
function placesOf({ mark, x, y, width, height }: Named): Place[] {
  const beside = (shift: number): Place[] => [
    placeAt(mark.right + GAP, y + shift * height, 'start', width, height),
    placeAt(mark.left - GAP, y + shift * height, 'end', width, height),
  ];
  const over = mark.top - GAP / 2 - height / 2;
  const under = mark.bottom + GAP / 2 + height / 2;
  const level = (at: number): Place[] => [
    placeAt(mark.left, at, 'start', width, height),
    placeAt(mark.right, at, 'end', width, height),
    placeAt(x, at, 'middle', width, height),
  ];
  const [first = [], ...shifted] = SHIFTS.map(beside);
  return [...first, ...level(over), ...level(under), ...shifted.flat()];
}

function placeAt(x: number, y: number, anchor: Anchor, width: number, height: number): Place {
  const left = x - { start: 0, middle: width / 2, end: width }[anchor];
  return { x, y, anchor, box: { left, right: left + width, top: y - height / 2, bottom: y + height / 2 } };
}
