/** Pictures of cards: what another drawer makes of the same drawing's file, in sixteen colours, the same bytes each time. */
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { nearestTo, PALETTE } from '../../../src/build/cards/palette.ts';
import { pictureOf } from '../../../src/build/cards/picture-of.ts';
import { METHODS } from '../../../src/measure/methods.ts';
import { CARD_FORMATS, PREVIEW, PREVIEW_LAYOUT } from '../../../src/site/cards/card-formats.ts';
import { scaleEnds } from '../../../src/site/cards/card-scales.ts';
import { Drawing } from '../../../src/site/cards/drawing.ts';
import { INK, LIGHT } from '../../../src/site/cards/drawing-ink.ts';
import { methodCard } from '../../../src/site/cards/method-card.ts';
import { methodCardView } from '../../../src/site/cards/method-card-view.ts';
import { panelCard } from '../../../src/site/cards/panel-card.ts';
import { panelCardView } from '../../../src/site/cards/panel-card-view.ts';
import { piece } from '../../../src/site/shared/browser/pieces.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

const VIEWS = METHODS.map((it) => methodCardView(it, { title: 'Guide', site: 'https://panels.example' }));

/** Red, green and blue, row by row. */
const colours = (picture: Buffer) => sharp(picture).removeAlpha().raw().toBuffer({ resolveWithObject: true });

/** Side of the squares in which two pictures are compared, px: within one, edges may lie half a pixel apart. */
const SQUARE = 16;

/** Lines of text stand on whole pixels, up to half a pixel from where the file has them. */
const WORST = 10;

/** Some of the letters of cards, thin ones and small ones. */
const LETTERS = 'AMWgijlx08.,:±×²·–’…%€†*/';

/** By how much the mean of a colour of two pictures differs in the worst square, of 255. */
async function worstSquare(one: Buffer, other: Buffer): Promise<number> {
  const [a, b] = [await colours(one), await colours(other)];
  expect([a.info.width, a.info.height]).toEqual([b.info.width, b.info.height]);
  const across = Math.ceil(a.info.width / SQUARE);
  const sums = new Float64Array(3 * across * Math.ceil(a.info.height / SQUARE));
  for (let y = 0, i = 0; y < a.info.height; y++) {
    for (let x = 0; x < 3 * a.info.width; x++, i++) {
      const square = Math.floor(y / SQUARE) * across + Math.floor(x / 3 / SQUARE);
      const at = 3 * square + (x % 3);
      sums[at] = (sums[at] ?? 0) + (a.data[i] ?? 0) - (b.data[i] ?? 0);
    }
  }
  return Math.max(...sums.map(Math.abs)) / SQUARE ** 2;
}

/** The same drawing's file as another library draws it. */
const drawnByOther = (drawing: Drawing, pixels: number) =>
  sharp(Buffer.from(drawing.svg('', '')))
    .resize({ width: pixels })
    .png()
    .toBuffer();

test.each([...CARD_FORMATS, { name: 'preview', layout: PREVIEW_LAYOUT, pixels: PREVIEW.width }])(
  'a panel’s card and a method’s are what their files show, $name',
  async ({ layout, pixels }) => {
    const { ledger, panel } = demoLedger();
    const drawings = [
      panelCard(panelCardView(panel('quennick-dab'), ledger, scaleEnds(ledger)), layout),
      methodCard(VIEWS[0] as (typeof VIEWS)[number], layout),
    ];
    for (const it of drawings) {
      expect(await worstSquare(await pictureOf(it, pixels), await drawnByOther(it, pixels))).toBeLessThan(WORST);
    }
  },
);

test('each letter covers what it covers in the file, wherever it stands in a pixel', async () => {
  const paper = 252;
  const inkOf = async (picture: Buffer) =>
    (await colours(picture)).data.reduce((sum, it, i) => (i % 3 === 0 ? sum + paper - it : sum), 0);
  for (const face of ['text', 'strong', 'title'] as const) {
    for (const [i, letter] of [...LETTERS].entries()) {
      const drawing = new Drawing(80, 80);
      drawing.write(letter, 20 + i / 7, 50 + i / 9, { size: 38, face });
      const [ink, other] = [await inkOf(await pictureOf(drawing, 80)), await inkOf(await drawnByOther(drawing, 80))];
      expect(Math.abs(ink / other - 1), `${letter}, ${face}`).toBeLessThan(0.06);
    }
  }
});

test('every sketch is what its file shows', async () => {
  const known = new Set<unknown>();
  for (const view of VIEWS) {
    if (known.has(view.sketch)) continue;
    known.add(view.sketch);
    // Without its words: a tint or a thin line that is missing is to be seen.
    const drawing = new Drawing(PREVIEW_LAYOUT.width, PREVIEW_LAYOUT.height);
    for (const it of methodCard(view, PREVIEW_LAYOUT).marks) if (it.kind === 'shapes') drawing.add(it);
    const [picture, other] = await Promise.all([pictureOf(drawing, 520), drawnByOther(drawing, 520)]);
    expect(await worstSquare(picture, other), view.name).toBeLessThan(8);
  }
  expect(known.size).toBeGreaterThan(10);
});

test('it is a PNG of at most sixteen colours, all of the palette, and the same bytes each time', async () => {
  const drawing = () => methodCard(VIEWS[0] as (typeof VIEWS)[number], PREVIEW_LAYOUT);
  const picture = await pictureOf(drawing(), 600, 300);
  expect(await sharp(picture).metadata()).toMatchObject({ format: 'png', width: 600, height: 315, density: 300 });
  // Bits a pixel, and that they are numbers of a palette (PNG, header).
  expect([...picture.subarray(24, 26)]).toEqual([4, 3]);
  const { data } = await colours(picture);
  const found = new Set<string>();
  for (let i = 0; i < data.length; i += 3) found.add([...data.subarray(i, i + 3)].join());
  const palette = PALETTE.map((it) => it.join());
  expect(new Set(palette).size).toBe(16);
  expect([...found].filter((it) => !palette.includes(it))).toEqual([]);
  expect((await pictureOf(drawing(), 600, 300)).equals(picture)).toBe(true);
});

test('each colour of the palette is most like itself, and the paper is the first', () => {
  expect(PALETTE.map(nearestTo)).toEqual(PALETTE.map((_, i) => i));
  expect(PALETTE[0]).toEqual([252, 251, 248]);
});

test('pictures that are made at one time do not get into each other, whatever their width', async () => {
  const drawings = VIEWS.slice(0, 4).map((it, i) => [methodCard(it, PREVIEW_LAYOUT), 301 - 50 * i] as const);
  const alone: Buffer[] = [];
  for (const [drawing, pixels] of drawings) alone.push(await pictureOf(drawing, pixels));
  const together = await Promise.all(drawings.map(([drawing, pixels]) => pictureOf(drawing, pixels)));
  expect(together.map((it, i) => it.equals(alone[i] as Buffer))).toEqual([true, true, true, true]);
  expect((await sharp(together[0]).metadata()).width).toBe(301);
});

describe('shapes', () => {
  /** What ink covers of a drawing of 100 × 100, in squares of its unit. */
  async function area(attributes: Record<string, string | number>, tag: 'path' | 'line' | 'circle' | 'rect' = 'path') {
    const drawing = new Drawing(100, 100);
    drawing.add({ kind: 'shapes', pieces: [piece(tag, attributes)], x: 0, y: 0, scale: 1 });
    const { data } = await colours(await pictureOf(drawing, 400));
    const [paper, ink] = [252, 27];
    let sum = 0;
    for (let i = 0; i < data.length; i += 3) sum += (paper - (data[i] ?? 0)) / (paper - ink);
    return sum / 16;
  }

  const stroke = { fill: 'none', stroke: INK.ink, 'stroke-width': 4 };
  test.each<[string, Record<string, string | number>, 'path' | 'line' | 'circle' | 'rect', number]>([
    ['a triangle', { d: 'M10 10L90 10L10 90Z', fill: INK.ink }, 'path', 3200],
    ['a ring', { d: 'M10 10h80v80h-80zM30 30v40h40v-40z', fill: INK.ink }, 'path', 4800],
    ['a circle', { cx: 50, cy: 50, r: 30, fill: INK.ink }, 'circle', 900 * Math.PI],
    ['a slanting line', { x1: 20, y1: 20, x2: 80, y2: 60, ...stroke }, 'line', 4 * Math.hypot(60, 40)],
    ['its dashes', { x1: 0, y1: 50, x2: 80, y2: 50, ...stroke, 'stroke-dasharray': '6 2' }, 'line', 60 * 4],
    ['an edge with sharp corners', { x: 20, y: 20, width: 50, height: 40, ...stroke }, 'rect', 54 * 44 - 46 * 36],
    ['an arc', { d: 'M90 50A40 40 0 0 0 50 10', ...stroke }, 'path', 4 * 20 * Math.PI],
    ['what lies half outside', { d: 'M-40 20h80v20h-80z', fill: INK.ink }, 'path', 800],
  ])('%s covers its area', async (_name, attributes, tag, expected) => {
    expect(Math.abs((await area(attributes, tag)) / expected - 1)).toBeLessThan(0.02);
  });

  test('up to four tints on one another are darker, and what is drawn on them keeps its colour', async () => {
    const drawing = new Drawing(100, 100);
    const tint = (y: number) =>
      piece('rect', { x: 0, y, width: 100, height: 100 - y, fill: INK.accent, 'fill-opacity': LIGHT });
    drawing.add({ kind: 'shapes', pieces: [tint(20), tint(40), tint(60), tint(80)], x: 0, y: 0, scale: 1 });
    drawing.bar({ x: 50, y: 0, width: 50, height: 100 }, INK.ink);
    const { data } = await colours(await pictureOf(drawing, 100));
    const red = (x: number, y: number) => data[3 * (y * 100 + x)] ?? 0;
    // The accent's red is 11, the paper's 252: each tint leaves 88 % of what was between them.
    const expected = [0, 1, 2, 3, 4].map((count) => 11 + (252 - 11) * 0.88 ** count);
    for (const [i, it] of expected.entries()) expect(Math.abs(red(20, 10 + 20 * i) - it)).toBeLessThan(2);
    expect([10, 30, 50, 70, 90].map((y) => red(70, y))).toEqual([27, 27, 27, 27, 27]);
  });

  test('one of a kind that is not drawn here is refused', async () => {
    const drawing = new Drawing(10, 10);
    drawing.add({ kind: 'shapes', pieces: [piece('text', { fill: INK.ink }, 'word')], x: 0, y: 0, scale: 1 });
    await expect(pictureOf(drawing, 10)).rejects.toThrow(/have no text/);
  });
});
