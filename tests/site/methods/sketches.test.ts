/** Every method has a picture, light to load, legible, and drawn as its numbers are. */
import { describe, expect, it, test } from 'vitest';
import { METHODS } from '../../../src/measure/methods.ts';
import { METHOD_SENTENCES } from '../../../src/site/cards/method-sentences.ts';
import { SKETCH_OF, SKETCHES, type SketchId } from '../../../src/site/methods/sketches/index.ts';
import { captionOf, line, type Sketch, sketchDrawing, text } from '../../../src/site/methods/sketches/sketch.ts';
import { piecesHtml } from '../../../src/site/shared/html.ts';
import { crossedWords } from '../../support/crossed-words.ts';

const MOST_BYTES = 3072;
/** Letters on a page, and the largest beside a wide card’s code, in units of the drawing. */
const LETTERS = [13, 18];

const all = Object.entries(SKETCHES);

test('every method has a sketch and a sentence for its card', () => {
  const ids = METHODS.map((it) => it.id).toSorted();
  expect(Object.keys(SKETCH_OF).toSorted()).toEqual(ids);
  expect(Object.keys(METHOD_SENTENCES).toSorted()).toEqual(ids);
});

describe.each(all)('%s', (_, sketch: Sketch) => {
  it('is light', () => {
    expect(Buffer.byteLength(piecesHtml([sketchDrawing(sketch)]).text)).toBeLessThanOrEqual(MOST_BYTES);
  });

  it('has words that nothing crosses, on a page and on a card', () => {
    expect(LETTERS.flatMap((it) => crossedWords(sketch, it))).toEqual([]);
  });
});

test('words that are crossed are found', () => {
  const sketch = { width: 100, height: 40, words: '', pieces: [text(10, 30, 'words'), line('accent', 0, 27, 100, 27)] };
  expect(crossedWords(sketch, 13)).toEqual(['"words" is crossed by a line']);
  expect(crossedWords({ ...sketch, pieces: [...sketch.pieces.slice(0, 1), text(20, 34, 'more')] }, 13)).toHaveLength(1);
});

test('captions keep a number and its unit on one line, and nothing else', () => {
  expect(captionOf({ words: 'from 15 min to 0.5 % of 44 dB(A), 12 in all, 9 mice' })).toBe(
    'from 15\u00a0min to 0.5\u00a0% of 44\u00a0dB(A), 12\u00a0in all, 9 mice',
  );
});

/** The shapes of a sketch in one style, as their attributes. */
const shapes = (id: SketchId, tag: string, style: string) =>
  SKETCHES[id].pieces.filter((it) => it.tag === tag && it.attributes.class === style).map((it) => it.attributes);
const number = (of: Readonly<Record<string, unknown>> | undefined, name: string) => Number(of?.[name]);
const points = (of: Readonly<Record<string, unknown>> | undefined) =>
  String(of?.d)
    .slice(1)
    .split('L')
    .map((it) => it.split(' ').map(Number))
    .map(([x = 0, y = 0]) => ({ x, y }));
/** By the shoelace formula. */
const areaOf = (corners: ReadonlyArray<{ x: number; y: number }>) =>
  Math.abs(
    corners.reduce((sum, { x, y }, i) => {
      const next = corners[(i + 1) % corners.length] ?? { x: 0, y: 0 };
      return sum + x * next.y - next.x * y;
    }, 0),
  ) / 2;
const words = (id: SketchId) => SKETCHES[id].pieces.flatMap((it) => (it.tag === 'text' ? it.pieces : [])).join(' | ');

/* What is drawn, measured on the drawing, against its numbers by their definitions and not by the code that drew it. */
describe('drawings are true', () => {
  it('light out of draw is as wide as 41.6 of 118', () => {
    const [light] = shapes('flow', 'rect', 'accent-fill');
    expect(number(light, 'height') / (112 - 16)).toBeCloseTo(41.6 / 118, 2);
    expect(words('flow')).toContain('35 %');
  });

  it('an hour is its share of what a kilowatt-hour lasts', () => {
    const [hour, whole] = [shapes('hour', 'rect', 'accent-fill')[0], shapes('hour', 'rect', 'ink')[0]];
    expect(number(hour, 'width') / number(whole, 'width')).toBeCloseTo(118 / 1000, 3);
    expect(words('hour')).toContain('1 h: €0.038');
  });

  it('bars of the draw are as long as their watts', () => {
    const bars = shapes('draw', 'rect', 'accent-fill').map((it) => number(it, 'width') / 148);
    for (const [i, watts] of [118, 64, 60, 1.2].entries()) expect(bars[i]).toBeCloseTo(watts / 118, 2);
  });

  it('a price read on 13 April is 91 days old', () => {
    expect((Date.UTC(2026, 3, 13) - Date.UTC(2026, 0, 12)) / 86_400_000).toBe(91);
    expect(words('price')).toContain('91 days');
  });

  it('strips of a spectrum add up to 46.0 mW/cm²', () => {
    const [area] = shapes('spectrum-sum', 'path', 'light');
    // 300 units are 64 nm, 110 are 2400 µW/cm²/nm.
    expect((((areaOf(points(area)) * 64) / 300) * 2400) / 110 / 1000).toBeCloseTo(46, 0);
    // A Gaussian’s area over height and width at half of it: √(π / (4 ln 2)).
    expect((Math.sqrt(Math.PI / (4 * Math.LN2)) * 18 * 2400) / 1000).toBeCloseTo(46, 1);
  });

  it('a meter sees 0.8 and all of the two lamps', () => {
    const [full] = shapes('mismatch', 'rect', 'ink');
    const seen = shapes('mismatch', 'rect', 'accent-fill').map((it) => number(it, 'height') / number(full, 'height'));
    expect(seen[0]).toBeCloseTo(0.8, 2);
    expect(seen[1]).toBeCloseTo(1, 2);
    expect(words('mismatch')).toContain('× 1.111');
  });

  it('areas of bands are as 43.0 to 40.5', () => {
    const [red, infrared] = shapes('bands', 'path', 'light').map((it) => areaOf(points(it)));
    expect((red ?? 0) / (infrared ?? 1)).toBeCloseTo(43 / 40.5, 1);
    expect(words('bands')).toContain('51 % | 48 %');
  });

  it('infrared is counted from 780 nm on', () => {
    // 300 units from 600 nm to 1000 nm.
    const from = Math.min(...points(shapes('infrared', 'path', 'light')[0]).map((it) => it.x));
    expect(600 + ((from - 20) * 400) / 300).toBeCloseTo(780, 0);
  });

  it('a peak balances at its centroid', () => {
    const corners = points(shapes('centroid', 'path', 'light')[0]);
    // The balance point of the trapezia that the method adds up: each reading stands for its place.
    const heights = corners.map(({ x, y }) => [x, 112 - y] as const);
    const middle = heights.reduce((sum, [x, h]) => sum + x * h, 0) / heights.reduce((sum, [, h]) => sum + h, 0);
    expect(636 + ((middle - 40) * 48) / 260).toBeCloseTo(661.7, 1);
    expect(words('centroid')).toContain('661.7 nm');
  });

  it('light has settled where 15 minutes move it by half a percent', () => {
    const [box] = shapes('settling', 'rect', 'ink');
    // 256 units are 55 minutes, 110 are 5.5 mW/cm².
    expect((number(box, 'width') * 55) / 256).toBeCloseTo(15, 1);
    expect(((number(box, 'height') * 5.5) / 110 / 80) * 100).toBeCloseTo(0.5, 1);
    expect(((number(box, 'x') - 34) * 55) / 256).toBeCloseTo(19.2, 1);
  });

  it('a sample that leads nowhere is a spike, and the peak the highest besides', () => {
    const kept = shapes('sweep', 'circle', 'accent-fill').map((it) => 55 + ((126 - number(it, 'cy')) * 20) / 108);
    expect(Math.max(...kept)).toBeCloseTo(62.3, 1);
    expect((4 * (62 + 62.3) - 61.8 - 62.1) / 6).toBeCloseTo(62.2, 1);
    expect(words('sweep')).toContain('peak: 62.3');
  });

  it('light on a wall swings by 12 % about its mean', () => {
    const ys = points(shapes('dot-pattern', 'path', 'accent')[0]).map((it) => 146 - it.y);
    const [high, low] = [Math.max(...ys), Math.min(...ys)];
    expect((high - low) / (high + low)).toBeCloseTo(0.12, 2);
  });

  it('twelve squares have a mean of 4.33', () => {
    const numbers = words('wall-photo')
      .split(' | ')
      .filter((it) => /^\d$/.test(it))
      .map(Number);
    expect(numbers).toHaveLength(12);
    expect(numbers.reduce((sum, it) => sum + it, 0) / 12).toBeCloseTo(4.33, 2);
    expect(SKETCHES['wall-photo'].words).toContain('46 %');
  });

  it('the room and the panel alone are 50 dB(A) together', () => {
    const [, alone] = shapes('sound-of-panel', 'rect', 'ink');
    expect(number(alone, 'width') / 292).toBeCloseTo(1 - 10 ** -0.6, 2);
    expect(10 * Math.log10(10 ** 4.4 + 10 ** 4.874)).toBeCloseTo(50, 1);
    expect(words('sound-of-panel')).toContain('48.7');
  });

  it('a clip is as far below the calibrator as its recording', () => {
    const [tone = 0, , clip = 0] = shapes('sound-clip', 'circle', 'accent-fill').map((it) => number(it, 'cx'));
    expect(((tone - clip) * 40) / 280).toBeCloseTo(14, 1);
    expect(words('sound-clip')).toContain('94 | 80');
  });

  it('fields of a room and a panel come to what is read, one way and the other', () => {
    // The first two places of an arrow are its ends; 300 units are 1 µT.
    const lengths = (style: string) =>
      shapes('magnetic-field', 'path', style)
        .map(points)
        .map(([from, to]) => ((to?.x ?? 0) - (from?.x ?? 0)) / 300);
    const [room, panel] = [lengths('ink'), lengths('accent')];
    expect((room[0] ?? 0) + (panel[0] ?? 0)).toBeCloseTo(0.5, 3);
    expect((room[1] ?? 0) + (panel[1] ?? 0)).toBeCloseTo(0.5, 3);
  });

  it('bursts average to the line that says so', () => {
    const bursts = shapes('radio-field', 'rect', 'accent-fill');
    const [first, second] = bursts.map((it) => number(it, 'x'));
    const share = number(bursts[0], 'width') / ((second ?? 0) - (first ?? 0));
    const average = 126 - number(shapes('radio-field', 'line', 'ink')[0], 'y1');
    expect(average / number(bursts[0], 'height')).toBeCloseTo(share, 3);
  });

  it('0.30 µT is 15 times 0.02 µT', () => {
    const lowest = number(shapes('bed-lines', 'line', 'ink')[0], 'x1');
    const reading = number(shapes('bed-lines', 'circle', 'accent-fill')[0], 'cx');
    // 150 units for each factor of ten.
    expect(10 ** ((reading - lowest) / 150)).toBeCloseTo(15, 0);
    expect(words('bed-lines')).toContain('15 times');
  });

  it('12 % lies 1.5 times over the low-risk line at 100 Hz', () => {
    // 90 units for each factor of ten of the frequency, 37.3 of the depth; the line is 0.08 % for each Hz.
    const dot = shapes('flicker-lines', 'circle', 'accent-fill')[0];
    const [, , , to] = points(shapes('flicker-lines', 'path', 'ink')[0]);
    const decade = 112 / 3;
    const lineAt100 = (to?.y ?? 0) + Math.log10(1250 / 100) * decade;
    expect(10 ** ((lineAt100 - number(dot, 'cy')) / decade)).toBeCloseTo(1.5, 1);
  });

  it('limits of a lamp are three standard deviations from its mean, by the table’s d2', () => {
    const spread = (3 * (0.4 + 0.5 + 0.3 + 0.3)) / 4 / 1.128;
    const [upper, lower] = shapes('lamp', 'line', 'dash').map((it) => 40 + ((128 - number(it, 'y1')) * 2.8) / 110);
    expect(upper).toBeCloseTo(41.2 + spread, 1);
    expect(lower).toBeCloseTo(41.2 - spread, 1);
  });

  it('bounds for the retina stand at 0.20 %, 27 % and eleven times the limit', () => {
    const limit = number(shapes('retina', 'line', 'ink')[0], 'x1');
    const decade = 300 / Math.log10(3000 / 0.1);
    const shares = shapes('retina', 'circle', 'accent-fill')
      .filter((it) => number(it, 'cy') === 88)
      .map((it) => 10 ** ((number(it, 'cx') - limit) / decade));
    for (const [i, share] of [0.002, 0.27, 11].entries()) expect((shares[i] ?? 0) / share).toBeCloseTo(1, 1);
  });

  it('a claim of 110 lies 16 % over what was measured, off its line', () => {
    const [held, missed] = shapes('claim', 'circle', 'ink').map((it) => 80 + ((number(it, 'cx') - 20) * 40) / 300);
    expect(Math.abs((held ?? 0) - 92)).toBeLessThan(6);
    expect(Math.round((100 * (92 - (missed ?? 0))) / (missed ?? 1))).toBe(-16);
  });

  it('a watt is its part of a price', () => {
    for (const [id, watts] of [
      ['watt', [41.6]],
      ['emitted-watt', [40, 76.1]],
    ] as const) {
      const widths = shapes(id, 'rect', 'accent-fill').map((it) => 296 / number(it, 'width'));
      for (const [i, it] of watts.entries()) expect((widths[i] ?? 0) / it).toBeCloseTo(1, 1);
    }
    expect(words('watt')).toContain('1 W: €10.00');
    expect(words('emitted-watt')).toMatch(/1 W: €12\.00.*1 W: €6\.31/);
  });

  it('all the light out of draw is as wide as 76.1 of 160', () => {
    expect(number(shapes('emitted-flow', 'rect', 'accent-fill')[0], 'height') / 96).toBeCloseTo(76.1 / 160, 2);
    expect(words('emitted-flow')).toContain('48 %');
  });

  it('a frame holds 45.3 of 76.1 W', () => {
    expect(words('capture')).toContain(`${Math.round((100 * 45.3) / 76.1)} % in the frame`);
  });

  it('fields of two classes are drawn to one scale', () => {
    const areas = shapes('size-classes', 'rect', 'ink').map((it) => number(it, 'width') * number(it, 'height'));
    for (const [i, area] of [600, 1200, 2008].entries()) {
      expect(((areas[i] ?? 0) / (areas[0] ?? 1)) * 600).toBeCloseTo(area, -2);
    }
  });

  it('three points miss the mean of a field by as much as is said', () => {
    const outline = points(shapes('bias', 'path', 'accent')[0]).map((it) => 128 - it.y);
    // By trapezia over even steps.
    const inner = outline.slice(1, -1).reduce((sum, it) => sum + it, 0);
    const mean = (inner + ((outline[0] ?? 0) + (outline.at(-1) ?? 0)) / 2) / (outline.length - 1);
    const seen = shapes('bias', 'circle', 'accent-fill').map((it) => 128 - number(it, 'cy'));
    const bias = seen.reduce((sum, it) => sum + it, 0) / seen.length / mean - 1;
    expect(SKETCHES.bias.words).toContain(`${Math.round(-100 * bias)} % under`);
  });

  it('the eye’s limit is used up after (18 000 / E)^(4/3) s, and falls to 10 mW/cm²', () => {
    const seconds = (18_000 / 500) ** (4 / 3);
    const [reading] = shapes('eye-time', 'circle', 'accent-fill');
    // 286 units for three factors of ten from 10 s on.
    expect(10 ** (1 + ((number(reading, 'cx') - 30) * 3) / 286) / seconds).toBeCloseTo(1, 1);
    expect(words('eye-time')).toContain(`${Math.round(seconds)} s`);
    const floor = number(shapes('eye-time', 'line', 'accent')[0], 'y1');
    const decade = 112 / Math.log10(4000 / 60);
    expect(10 ** ((floor - number(reading, 'cy')) / decade)).toBeCloseTo(500 / 100, 0);
  });

  it('a peak of 100 mW/cm² is 28 % of the skin’s limit just under 10 s', () => {
    const [, end] = points(shapes('skin-heat', 'path', 'accent')[0]);
    const peak = number(shapes('skin-heat', 'line', 'ink')[0], 'y1');
    const decade = 110 / Math.log10(20_000 / 600);
    expect(10 ** (((end?.y ?? 0) - peak) / decade)).toBeCloseTo(1000 / (20_000 * 10 ** -0.75), 2);
    expect(words('skin-heat')).toContain('28 %');
  });

  it('a tone is prominent 8 dB over the noise', () => {
    const [tone, noise] = shapes('tones', 'line', 'accent').map((it) => number(it, 'y2'));
    expect(((noise ?? 0) - (tone ?? 0)) / 6).toBeCloseTo(8, 5);
  });

  it('an odd point is half as much again as its row and column make it', () => {
    const grid = words('odd-point').split(' | ').slice(0, 9).map(Number);
    // In the other two columns the last row is as the first, so the last point should be as the one above it in row one.
    expect(grid.slice(6, 8)).toEqual(grid.slice(0, 2));
    expect((grid[8] ?? 0) / (grid[2] ?? 1)).toBeCloseTo(1.55, 2);
  });
});
