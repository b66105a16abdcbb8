/** Pictures of cards: what another drawer makes of the same drawing's file, in sixteen colours, the same bytes each time. */
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { indexedPng } from '../../../../src/build/cards/picture/indexed-png.ts';
import { PALETTE } from '../../../../src/build/cards/picture/palette.ts';
import { pictureOf } from '../../../../src/build/cards/picture/picture-of.ts';
import { METHODS } from '../../../../src/measure/methods.ts';
import { CARD_FORMATS, PREVIEW, PREVIEW_LAYOUT } from '../../../../src/site/cards/card-formats.ts';
import { Drawing } from '../../../../src/site/cards/drawing.ts';
import { INK } from '../../../../src/site/cards/drawing-ink.ts';
import type { Ink } from '../../../../src/site/cards/marks.ts';
import { methodCard, methodCardView } from '../../../../src/site/cards/method-card.ts';
import { panelCard } from '../../../../src/site/cards/panel-card.ts';
import { panelCardView } from '../../../../src/site/cards/panel-card-view.ts';
import { piece } from '../../../../src/site/shared/browser/pieces.ts';
import { demoLedger } from '../../../support/demo-ledger.ts';

const GUIDE = { title: 'Guide', site: 'https://panels.example' };

/** Side of the squares in which two pictures are compared, px: within one, edges may lie half a pixel apart. */
const SQUARE = 16;

/** By how much the mean grey of two pictures differs in the worst square, of 255. */
async function worstSquare(one: Buffer, other: Buffer): Promise<number> {
  const [a, b] = await Promise.all(
    [one, other].map((it) => sharp(it).flatten().greyscale().raw().toBuffer({ resolveWithObject: true })),
  );
  if (!a || !b) throw new Error('no picture');
  expect([a.info.width, a.info.height]).toEqual([b.info.width, b.info.height]);
  const across = Math.ceil(a.info.width / SQUARE);
  const sums = new Float64Array(across * Math.ceil(a.info.height / SQUARE));
  for (let y = 0, i = 0; y < a.info.height; y++) {
    for (let x = 0; x < a.info.width; x++, i++) {
      const square = Math.floor(y / SQUARE) * across + Math.floor(x / SQUARE);
      sums[square] = (sums[square] ?? 0) + (a.data[i] ?? 0) - (b.data[i] ?? 0);
    }
  }
  return Math.max(...sums.map(Math.abs)) / SQUARE ** 2;
}

/** The same drawing's file as the picture library draws it. */
const drawnByOther = (drawing: Drawing, pixels: number) =>
  sharp(Buffer.from(drawing.svg('', '')))
    .resize({ width: pixels })
    .png()
    .toBuffer();

/** Lines a few pixels wide may lie half a pixel aside: a 16th of a square's ink. */
const ALIKE = 20;
/** Shapes stand where they are; edges have five greys. */
const ALIKE_SHAPES = 8;

test('a panel’s card is what its file shows', async () => {
  const { ledger, panel } = demoLedger();
  const view = panelCardView(panel('quennick-dab'), ledger);
  for (const [layout, pixels] of [
    [PREVIEW_LAYOUT, PREVIEW.width],
    // Odd, so that rows end within a byte.
    [CARD_FORMATS[1]?.layout ?? PREVIEW_LAYOUT, 1081],
  ] as const) {
    const drawing = panelCard(view, layout);
    const picture = await pictureOf(drawing, pixels);
    expect(await worstSquare(picture, await drawnByOther(drawing, pixels))).toBeLessThan(ALIKE);
  }
});

test('every sketch is what its file shows', async () => {
  const [wide] = CARD_FORMATS;
  if (!wide) throw new Error('no format');
  const known = new Set<unknown>();
  for (const view of METHODS.flatMap((it) => methodCardView(it, GUIDE) ?? [])) {
    if (known.has(view.sketch)) continue;
    known.add(view.sketch);
    // Without its words, which stand on whole pixels: a tint or a thin line that is missing is to be seen.
    const { layout } = wide;
    const drawing = new Drawing(layout.width, layout.height);
    for (const it of methodCard(view, layout).marks) if (it.kind === 'shapes') drawing.add(it);
    const [picture, other] = await Promise.all([pictureOf(drawing, 960), drawnByOther(drawing, 960)]);
    expect(await worstSquare(picture, other), view.name).toBeLessThan(ALIKE_SHAPES);
  }
  expect(known.size).toBeGreaterThan(10);
});

test('it is a PNG of at most sixteen colours, all of the palette, and the same bytes each time', async () => {
  const view = METHODS.flatMap((it) => methodCardView(it, GUIDE) ?? [])[0];
  if (!view) throw new Error('no card');
  const drawing = () => methodCard(view, PREVIEW_LAYOUT);
  const picture = await pictureOf(drawing(), 600);
  expect(await sharp(picture).metadata()).toMatchObject({ format: 'png', width: 600, height: 315 });
  // Bits a pixel, and that they are numbers of a palette (PNG, header).
  expect([...picture.subarray(24, 26)]).toEqual([4, 3]);
  const { data, info } = await sharp(picture).removeAlpha().raw().toBuffer({ resolveWithObject: true });
  const colours = new Set<string>();
  for (let i = 0; i < data.length; i += info.channels) colours.add([...data.subarray(i, i + 3)].join());
  const palette = PALETTE.map((it) => it.join());
  expect(palette).toHaveLength(16);
  expect([...colours].filter((it) => !palette.includes(it))).toEqual([]);
  expect(palette[0]).toBe('252,251,248');
  expect((await pictureOf(drawing(), 600)).equals(picture)).toBe(true);
});

test.each([16, 29])('every pixel of a picture %d px wide is in its file', async (width) => {
  // Paper in runs, and all colours between.
  const pixels = Uint8Array.from({ length: 7 * width }, (_, i) => (i % 23 < 12 ? 0 : (7 * i) % 16));
  pixels[pixels.length - 1] = 9;
  const { data } = await sharp(await indexedPng({ width, height: 7, pixels }))
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  expect([...data]).toEqual([...pixels].flatMap((it) => PALETTE[it]));
});

test('pictures that are made at one time do not get into each other', async () => {
  const drawings = METHODS.flatMap((it) => methodCardView(it, GUIDE) ?? [])
    .slice(0, 4)
    .map((it, i) => [methodCard(it, PREVIEW_LAYOUT), 301 + 50 * i] as const);
  const alone: Buffer[] = [];
  for (const [drawing, pixels] of drawings) alone.push(await pictureOf(drawing, pixels));
  const together = await Promise.all(drawings.map(([drawing, pixels]) => pictureOf(drawing, pixels)));
  expect(together.map((it, i) => it.equals(alone[i] as Buffer))).toEqual([true, true, true, true]);
});

describe('shapes', () => {
  /** What ink covers of a drawing of 100 × 100, in squares of its unit. */
  async function area(attributes: Record<string, string | number>, tag: 'path' | 'line' | 'circle' | 'rect' = 'path') {
    const drawing = new Drawing(100, 100);
    drawing.add({ kind: 'shapes', pieces: [piece(tag, attributes)], x: 0, y: 0, scale: 1 });
    const { data } = await sharp(await pictureOf(drawing, 400))
      .greyscale()
      .raw()
      .toBuffer({ resolveWithObject: true });
    const [paper, ink] = [data[0] ?? 0, data.reduce((least, it) => Math.min(least, it))];
    return data.reduce((sum, it) => sum + (paper - it) / (paper - ink), 0) / 16;
  }

  const stroke = { fill: 'none', stroke: INK.ink, 'stroke-width': 4 };
  test.each<[string, Record<string, string | number>, 'path' | 'line' | 'circle' | 'rect', number]>([
    ['a triangle', { d: 'M10 10L90 10L10 90Z', fill: INK.ink }, 'path', 3200],
    ['one that is turned the other way', { d: 'M10 10L10 90L90 10Z', fill: INK.ink }, 'path', 3200],
    ['a ring', { d: 'M10 10h80v80h-80zM30 30v40h40v-40z', fill: INK.ink }, 'path', 4800],
    ['a circle', { cx: 50, cy: 50, r: 30, fill: INK.ink }, 'circle', 900 * Math.PI],
    ['a slanting line', { x1: 20, y1: 20, x2: 80, y2: 60, ...stroke }, 'line', 4 * Math.hypot(60, 40)],
    ['its dashes', { x1: 0, y1: 50, x2: 80, y2: 50, ...stroke, 'stroke-dasharray': '6 2' }, 'line', 60 * 4],
    ['an edge with sharp corners', { x: 20, y: 20, width: 50, height: 40, ...stroke }, 'rect', 54 * 44 - 46 * 36],
    ['a bend with a sharp corner', { d: 'M20 60L20 20L60 20', ...stroke }, 'path', 42 * 4 + 38 * 4],
    ['a circle’s line', { cx: 50, cy: 50, r: 30, ...stroke }, 'circle', Math.PI * (32 ** 2 - 28 ** 2)],
    ['an arc', { d: 'M90 50A40 40 0 0 0 50 10', ...stroke }, 'path', 4 * 20 * Math.PI],
    ['what lies half outside', { d: 'M-40 20h80v20h-80z', fill: INK.ink }, 'path', 800],
  ])('%s covers its area', async (_name, attributes, tag, expected) => {
    expect(Math.abs((await area(attributes, tag)) / expected - 1)).toBeLessThan(0.02);
  });

  test('tints on one another are darker, and letters on them keep their colour', async () => {
    const drawing = new Drawing(100, 100);
    const tint = (y: number) =>
      piece('rect', { x: 0, y, width: 100, height: 100 - y, fill: INK.accent, 'fill-opacity': 0.12 });
    drawing.add({ kind: 'shapes', pieces: [tint(20), tint(40), tint(60), tint(80)], x: 0, y: 0, scale: 1 });
    drawing.bar({ x: 50, y: 0, width: 50, height: 100 }, INK.ink);
    const { data, info } = await sharp(await pictureOf(drawing, 100))
      .removeAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true });
    const red = (x: number, y: number) => data[(y * 100 + x) * info.channels] ?? 0;
    // The accent's red is 11, the paper's 252: each tint leaves 88 % of what was between them.
    const expected = [0, 1, 2, 3, 4].map((count) => 11 + (252 - 11) * 0.88 ** count);
    for (const [i, it] of expected.entries()) expect(Math.abs(red(20, 10 + 20 * i) - it)).toBeLessThan(2);
    expect([10, 30, 50, 70, 90].map((y) => red(70, y))).toEqual([27, 27, 27, 27, 27]);
  });

  test('what is not drawn here, or in no ink of the guide, is refused', () => {
    const drawing = (shape: ReturnType<typeof piece>) => {
      const it = new Drawing(10, 10);
      it.add({ kind: 'shapes', pieces: [shape], x: 0, y: 0, scale: 1 });
      return () => pictureOf(it, 10);
    };
    expect(drawing(piece('text', { x: 1, y: 5 }, 'word'))).toThrow(/have no text/);
    expect(drawing(piece('path', { d: 'M0 0L5 5L0 5Z', fill: '#ff0000' as Ink }))).toThrow(/not in #ff0000/);
  });
});
