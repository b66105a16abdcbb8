import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isWithin, overlap, stripBoxes } from '../../../../src/site/guide/picture/boxes.ts';
import { frontierFactors } from '../../../../src/site/guide/picture/drawn-panels.ts';
import { equalPriceLines } from '../../../../src/site/guide/picture/equal-price-lines.ts';
import { logAxis, roundsAround } from '../../../../src/site/guide/picture/log-axis.ts';
import { markShape } from '../../../../src/site/guide/picture/mark-shapes.ts';
import { textWidth } from '../../../../src/site/guide/picture/text-width.ts';

const plain = (value: number) => String(value);
const axis = (values: number[], ends: [number, number] = [0, 600], room = (text: string) => 8 * text.length) =>
  logAxis(values, ends, plain, room);

describe('an axis of equal ratios', () => {
  test('reaches from the round number below to the one above', () => {
    const { low, high, ticks } = axis([30, 1200]);
    expect([low, high]).toEqual([20, 2000]);
    expect(ticks.map((it) => it.text)).toEqual(['20', '50', '100', '200', '500', '1000', '2000']);
  });

  test('equal ratios are equal lengths', () => {
    const { place, perDecade } = axis([30, 1200]);
    expect(perDecade).toBe(300);
    expect(place(200) - place(20)).toBe(300);
    expect(place(400) - place(200)).toBeCloseTo(place(40) - place(20), 0);
  });

  test('may run up a page', () => {
    const { place } = axis([1, 100], [400, 0]);
    expect(place(1)).toBeGreaterThan(place(100));
  });

  test('what lies past an end is put on it', () => {
    const { place } = axis([30, 1200]);
    expect([place(0), place(-3), place(1e9)]).toEqual([0, 0, 600]);
  });

  test('a single value has an axis too', () => {
    const { low, high } = axis([849]);
    expect([low, high]).toEqual([500, 1000]);
  });

  const positive = fc.double({ min: 1e-3, max: 1e6, noNaN: true });
  test('every value is within, and no words of ticks meet', () => {
    fc.assert(
      fc.property(fc.array(positive, { minLength: 1, maxLength: 20 }), (values) => {
        const { low, high, place, ticks } = axis(values);
        for (const it of values) {
          expect(low < it && it < high).toBe(true);
          expect(place(it) >= 0 && place(it) <= 600).toBe(true);
        }
        const told = ticks.flatMap(({ at, text }) =>
          text ? [{ from: at - 4 * text.length, to: at + 4 * text.length }] : [],
        );
        expect(told.length).toBeGreaterThan(0);
        for (const [i, it] of told.slice(1).entries()) expect(it.from).toBeGreaterThanOrEqual((told[i]?.to ?? 0) - 0.2);
      }),
    );
  });

  test('powers of ten have their words first', () => {
    const told = axis([30, 1200], [0, 120]).ticks.flatMap((it) => it.text ?? []);
    expect(told).toEqual(expect.arrayContaining(['100', '1000']));
    expect(told).not.toContain('200');
  });
});

test('round numbers around some, no more than wanted', () => {
  expect(roundsAround([4.1, 18.3], 5)).toEqual([2, 5, 10, 20]);
  expect(roundsAround([4.1, 4.6], 5)).toEqual([3, 5]);
  expect(roundsAround([0.004, 0.012], 5)).toEqual([0.003, 0.005, 0.007, 0.01, 0.015]);
  expect(roundsAround([0.01, 1000], 5).length).toBe(6);
});

describe('lines of equal price for a watt', () => {
  const ground = {
    x: axis([30, 1200]),
    y: axis([2, 250], [400, 0]),
    frame: { left: 0, top: 0, right: 600, bottom: 400 },
  };
  const sizeOf = (text: string) => ({ width: 7 * text.length, height: 14 });
  const draw = (marks: Parameters<typeof equalPriceLines>[4] = []) =>
    equalPriceLines([4.1, 18.3], ground, (it) => `${it} a watt`, sizeOf, marks);

  test('a panel at the price of a line lies on it', () => {
    const line = draw().lines.find((it) => it.text === '10 a watt');
    const [x1, y1, x2, y2] = (line?.path.match(/[\d.]+/g) ?? []).map(Number) as [number, number, number, number];
    const [x, y] = [ground.x.place(300), ground.y.place(30)];
    expect(y1 + ((y2 - y1) * (x - x1)) / (x2 - x1)).toBeCloseTo(y, 0);
  });

  test('words lie in the frame, off marks and off one another', () => {
    const spot = fc.tuple(fc.double({ min: 0, max: 590, noNaN: true }), fc.double({ min: 0, max: 390, noNaN: true }));
    fc.assert(
      fc.property(fc.array(spot, { maxLength: 40 }), (spots) => {
        const marks = spots.map(([left, top]) => ({ left, top, right: left + 10, bottom: top + 10 }));
        const { lines, covered } = draw(marks);
        expect(covered.length).toBeGreaterThanOrEqual(lines.length);
        for (const it of covered) {
          expect(isWithin(it, ground.frame)).toBe(true);
          expect(marks.filter((mark) => overlap(mark, it))).toEqual([]);
        }
      }),
      { numRuns: 30 },
    );
  });

  test('a line without a place for its words is left out', () => {
    expect(draw().lines).toHaveLength(4);
    expect(draw([ground.frame]).lines).toEqual([]);
  });
});

test('a slanted strip is covered from end to end', () => {
  const boxes = stripBoxes({ x: 100, y: 100 }, { width: 80, height: 10 }, Math.PI / 6);
  const [dx, dy] = [40 * Math.cos(Math.PI / 6), 40 * Math.sin(Math.PI / 6)];
  expect(Math.min(...boxes.map((it) => it.left))).toBeLessThanOrEqual(100 - dx);
  expect(Math.min(...boxes.map((it) => it.top))).toBeLessThanOrEqual(100 - dy);
  expect(Math.max(...boxes.map((it) => it.right))).toBeGreaterThanOrEqual(100 + dx);
  // Up to the right, as a reader sees it.
  expect((boxes[0]?.top ?? 0) > (boxes.at(-1)?.top ?? 0)).toBe(true);
});

test('how far offers are from the frontier', () => {
  const offers = [
    { price: 100, power: 10 },
    { price: 110, power: 5 },
    { price: 200, power: 30 },
    { price: 300, power: 28 },
  ];
  expect(frontierFactors(offers)).toEqual([1, 1.1, 1, 30 / 28]);
  expect(frontierFactors([])).toEqual([]);
});

test('twelve size classes have a shape each, and there is one for every class', () => {
  const shapes = Array.from({ length: 30 }, (_, i) => markShape(i));
  expect(new Set(shapes.slice(0, 12)).size).toBe(12);
  expect(shapes.every((it) => /^M[-\dMmhvalz .]+/i.test(it))).toBe(true);
});

test('accents take no room, signs that are not known have plenty', () => {
  expect(textWidth('Möwe', 10)).toBe(textWidth('Mowe', 10));
  expect(textWidth('漢', 10)).toBeGreaterThan(10);
  expect(textWidth('Gannet', 26)).toBeCloseTo(2 * textWidth('Gannet', 13));
});
