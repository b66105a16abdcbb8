import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Box, grown, isWithin, overlap } from '../../../../src/site/guide/picture/boxes.ts';
import { type Named, type Place, placeNames } from '../../../../src/site/guide/picture/place-names.ts';

const FRAME: Box = { left: 40, top: 20, right: 700, bottom: 400 };

/** A mark with a name. */
function named(x: number, y: number, width = 60, height = 16): Named {
  return { x, y, width, height, mark: grown({ left: x, right: x, top: y, bottom: y }, 5) };
}

const within = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
const anyName = fc
  .tuple(
    within(FRAME.left, FRAME.right),
    within(FRAME.top, FRAME.bottom),
    within(10, 160),
    within(8, 24),
    within(0, 40),
  )
  .map(([x, y, width, height, reach]): Named => {
    const it = named(x, y, width, height);
    return { ...it, mark: { ...it.mark, top: it.mark.top - reach, bottom: it.mark.bottom + reach } };
  });
/** Marks in a heap, as panels of one class are. */
const heaped = (count: number) =>
  fc
    .array(fc.tuple(within(0, 1), within(0, 1), within(20, 90)), { minLength: count, maxLength: count })
    .map((them) => them.map(([a, b, width]) => named(200 + 300 * a, 300 - 200 * a + 60 * b, width)));

const boxes = (places: ReadonlyArray<Place | undefined>) => places.flatMap((it) => (it ? [it.box] : []));

function faults(
  names: readonly Named[],
  places: ReadonlyArray<Place | undefined>,
  taken: readonly Box[] = [],
): string[] {
  const all = boxes(places);
  return [
    ...all.flatMap((a, i) => all.slice(i + 1).flatMap((b) => (overlap(a, b) ? ['name on name'] : []))),
    ...all.flatMap((a) => names.flatMap(({ mark }) => (overlap(a, mark) ? ['name on mark'] : []))),
    ...all.flatMap((a) => taken.flatMap((b) => (overlap(a, b) ? ['name on what is taken'] : []))),
    ...all.flatMap((a) => (isWithin(a, FRAME) ? [] : ['name out of the frame'])),
  ];
}

describe('names beside marks', () => {
  test.each([12, 100])('%i: none touches another or a mark, none leaves the frame', (count) => {
    fc.assert(
      fc.property(fc.array(anyName, { minLength: count, maxLength: count }), (names) => {
        expect(faults(names, placeNames(names, FRAME))).toEqual([]);
      }),
      { numRuns: count > 50 ? 15 : 60 },
    );
  });

  test('a heap of 100: the same', () => {
    fc.assert(
      fc.property(heaped(100), (names) => {
        expect(faults(names, placeNames(names, FRAME))).toEqual([]);
      }),
      { numRuns: 10 },
    );
  });

  test('where 100 stand evenly, every name has a place; where they crowd, the first have', () => {
    const spread = Array.from({ length: 100 }, (_, i) => named(60 + 65 * (i % 10), 30 + 38 * Math.floor(i / 10), 40));
    expect(boxes(placeNames(spread, FRAME))).toHaveLength(100);
    const crowd = Array.from({ length: 100 }, (_, i) => named(200 + 30 * (i % 10), 150 + 15 * Math.floor(i / 10), 40));
    const places = placeNames(crowd.toReversed(), FRAME);
    expect(places[0]).toBeDefined();
    expect(boxes(places).length).toBeGreaterThan(20);
    expect(faults(crowd, places)).toEqual([]);
  });

  test('they keep off what is taken', () => {
    const taken = fc
      .array(fc.tuple(within(40, 650), within(20, 350)), { maxLength: 8 })
      .map((them) => them.map(([left, top]): Box => ({ left, top, right: left + 50, bottom: top + 50 })));
    fc.assert(
      fc.property(fc.array(anyName, { maxLength: 20 }), taken, (names, other) => {
        expect(faults(names, placeNames(names, FRAME, other), other)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test('the same names get the same places', () => {
    fc.assert(
      fc.property(heaped(60), (names) => {
        expect(placeNames(structuredClone(names), FRAME)).toEqual(placeNames(names, FRAME));
      }),
      { numRuns: 10 },
    );
  });

  test('a name that has a place keeps one, whatever names come after it', () => {
    fc.assert(
      fc.property(heaped(30), within(1, 29), (names, cut) => {
        // Marks that have no names of their own stay where they are.
        const first = names.map((it, i) => (i < cut ? it : { ...it, width: 10_000 }));
        const alone = placeNames(first, FRAME);
        const together = placeNames(names, FRAME);
        for (const [i, it] of alone.entries()) if (it) expect(together[i]).toBeDefined();
      }),
      { numRuns: 20 },
    );
  });
});

describe('one name', () => {
  test('stands to the right of its mark, or to the left where the frame ends', () => {
    expect(placeNames([named(100, 100)], FRAME)[0]).toMatchObject({ anchor: 'start', y: 100 });
    expect(placeNames([named(690, 100)], FRAME)[0]).toMatchObject({ anchor: 'end', y: 100 });
  });

  test('moves aside for a later one', () => {
    const first = named(100, 100, 60);
    const second = named(180, 100, 60);
    // The second may only stand to its left, where the first would stand.
    const taken: Box[] = [
      { left: 186, top: 20, right: 300, bottom: 200 },
      { left: 172, top: 60, right: 300, bottom: 94 },
      { left: 172, top: 106, right: 300, bottom: 140 },
      { left: 120, top: 60, right: 172, bottom: 91 },
      { left: 120, top: 109, right: 172, bottom: 140 },
    ];
    const [alone] = placeNames([first, { ...second, width: 10_000 }], FRAME, taken);
    const [moved, late] = placeNames([first, second], FRAME, taken);
    expect(alone?.anchor).toBe('start');
    expect(late).toMatchObject({ anchor: 'end', y: 100 });
    expect(moved).toBeDefined();
    expect(moved).not.toEqual(alone);
  });

  test('keeps off a line where it can, and stands on it where it can’t', () => {
    const level: Box = { left: 200, top: 100, right: 700, bottom: 100 };
    expect(placeNames([named(200, 100)], FRAME, [], [level])[0]).toMatchObject({ anchor: 'end', y: 100 });
    expect(placeNames([named(200, 100)], FRAME, [], [FRAME])[0]).toMatchObject({ anchor: 'start', y: 100 });
  });

  test('goes without a place where there is none', () => {
    expect(placeNames([named(100, 100, 900)], FRAME)).toEqual([undefined]);
    expect(placeNames([], FRAME)).toEqual([]);
  });
});
