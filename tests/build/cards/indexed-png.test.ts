/** Pictures of few colours, read back by another library, pixel for pixel. */
import fc from 'fast-check';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { indexedPng, rowsOf } from '../../../src/build/cards/indexed-png.ts';
import { PALETTE } from '../../../src/build/cards/palette.ts';
import { Sheet } from '../../../src/build/cards/sheet.ts';

/** Gives each pixel the number that its level is. */
const NUMBER = Uint8Array.from({ length: 256 }, (_, i) => i >> 4);

/** A sheet with these numbers, row by row. */
function sheetOf(width: number, rows: readonly number[][]): Sheet {
  const sheet = new Sheet(width, rows.length);
  for (const [y, row] of rows.entries()) {
    const levels = Uint8Array.from(
      { length: Math.ceil(width / 2) },
      (_, i) => ((row[2 * i] ?? 0) << 4) | (row[2 * i + 1] ?? 0),
    );
    sheet.lay({ left: 0, top: y, across: levels.length, down: 1, levels }, 0, 0, NUMBER);
  }
  return sheet;
}

/** Rows of any width of few runs, some as the one above: what drawings are like, and what they are not. */
const pictures = fc.integer({ min: 1, max: 70 }).chain((width) =>
  fc
    .array(
      fc.oneof(
        fc.constant('as above' as const),
        fc.array(fc.tuple(fc.nat(width), fc.nat(PALETTE.length - 1)), { maxLength: 6 }),
        fc
          .array(fc.nat(PALETTE.length - 1), { minLength: width, maxLength: width })
          .map((it) => it.map((n, x) => [x, n])),
      ),
      { minLength: 1, maxLength: 12 },
    )
    .map((rows) => {
      const numbers: number[][] = [];
      for (const row of rows) {
        const own =
          row === 'as above'
            ? [...(numbers.at(-1) ?? new Array<number>(width).fill(0))]
            : new Array<number>(width).fill(0);
        if (row !== 'as above') for (const [from = 0, number = 0] of row) own.fill(number, from);
        numbers.push(own);
      }
      return { width, numbers };
    }),
);

test('every pixel is read back as it was', async () => {
  await fc.assert(
    fc.asyncProperty(pictures, async ({ width, numbers }) => {
      const picture = indexedPng(rowsOf(sheetOf(width, numbers)));
      const { data, info } = await sharp(picture).removeAlpha().raw().toBuffer({ resolveWithObject: true });
      expect(info).toMatchObject({ width, height: numbers.length, channels: 3 });
      expect([...data]).toEqual(numbers.flat().flatMap((it) => [...(PALETTE[it] ?? [])]));
    }),
    { numRuns: 300 },
  );
});
