/** Sheets: what is laid on them, pixel for pixel as a plain picture would have it, whatever stands out of them. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coatOf, FULL } from '../../../src/build/cards/palette.ts';
import { Sheet, type Stencil } from '../../../src/build/cards/sheet.ts';
import { INK, LIGHT } from '../../../src/site/cards/drawing-ink.ts';

const coats = fc.constantFrom(coatOf(INK.ink), coatOf(INK.accent), coatOf(INK.accent, LIGHT), coatOf(INK.paper));

const bars = fc.record({
  kind: fc.constant('bar' as const),
  left: fc.integer({ min: -5, max: 25 }),
  top: fc.integer({ min: -5, max: 12 }),
  width: fc.nat(30),
  height: fc.nat(15),
  coat: coats,
});

const stencils = fc.record({
  kind: fc.constant('stencil' as const),
  left: fc.integer({ min: -3, max: 12 }),
  top: fc.integer({ min: -5, max: 12 }),
  across: fc.integer({ min: 1, max: 6 }),
  down: fc.integer({ min: 1, max: 6 }),
  right: fc.integer({ min: -3, max: 3 }),
  below: fc.integer({ min: -3, max: 3 }),
  levels: fc.uint8Array({ minLength: 36, maxLength: 36 }),
  coat: coats,
});

/** Numbers of a sheet, row by row. */
function numbersOf(sheet: Sheet): number[][] {
  return Array.from({ length: sheet.height }, (_, y) =>
    Array.from({ length: sheet.width }, (_, x) => {
      const both = sheet.bytes[sheet.start(y) + (x >> 1)] as number;
      return x % 2 === 0 ? both >> 4 : both & 15;
    }),
  );
}

test('bars and stencils, in any order and partly outside, leave each pixel what they make of it one after the other', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 21 }),
      fc.integer({ min: 1, max: 9 }),
      fc.array(fc.oneof(bars, stencils), { maxLength: 8 }),
      (width, height, marks) => {
        const sheet = new Sheet(width, height);
        const plain = Array.from({ length: height }, () => new Array<number>(width).fill(0));
        const cover = (x: number, y: number, level: number, coat: Uint8Array) => {
          const row = plain[y];
          if (row?.[x] !== undefined) row[x] = coat[level * 16 + row[x]] as number;
        };
        for (const it of marks) {
          if (it.kind === 'bar') {
            sheet.bar(it.left, it.top, it.left + it.width, it.top + it.height, it.coat);
            for (let y = it.top; y < it.top + it.height; y++)
              for (let x = it.left; x < it.left + it.width; x++) cover(x, y, FULL, it.coat);
          } else {
            const stencil: Stencil = { ...it, levels: it.levels.subarray(0, it.across * it.down) };
            sheet.lay(stencil, it.right, it.below, it.coat);
            for (const [i, both] of stencil.levels.entries()) {
              const x = 2 * (it.left + it.right + (i % it.across));
              const y = it.top + it.below + Math.floor(i / it.across);
              cover(x, y, both >> 4, it.coat);
              cover(x + 1, y, both & 15, it.coat);
            }
          }
        }
        expect(numbersOf(sheet)).toEqual(plain);
        sheet.wipe();
        expect(sheet.bytes.every((it) => it === 0)).toBe(true);
        expect(sheet.isBlank).toBe(true);
      },
    ),
    { numRuns: 500 },
  );
});

test('a bar covers pixels at its sides by the part of them that it reaches', () => {
  const sheet = new Sheet(8, 4);
  // Each level as a number of its own, and what is not covered as it was.
  const levels = Uint8Array.from({ length: 256 }, (_, i) => i >> 4 || i & 15);
  sheet.bar(1.2, 0.6, 3.4, 2, levels);
  const [whole, left, right] = [15, 12, 6];
  expect(numbersOf(sheet)).toEqual([
    [0, Math.round(left * 0.4), Math.round(whole * 0.4), Math.round(right * 0.4), 0, 0, 0, 0],
    [0, left, whole, right, 0, 0, 0, 0],
    [0, 0, 0, 0, 0, 0, 0, 0],
    [0, 0, 0, 0, 0, 0, 0, 0],
  ]);
  sheet.wipe();
  sheet.bar(5.2, 0, 5.6, 1, levels);
  expect(numbersOf(sheet)[0]).toEqual([0, 0, 0, 0, 0, 6, 0, 0]);
});
