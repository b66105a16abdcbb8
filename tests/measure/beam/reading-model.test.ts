import { describe, expect, test } from 'vitest';
import { lambertianExponent } from '../../../src/measure/beam/beam.ts';
import { PATTERNS } from '../../../src/measure/beam/drive.ts';
import type { SharedError } from '../../../src/measure/beam/error-sources.ts';
import { panelSums } from '../../../src/measure/beam/panel-sums.ts';
import { PAST_FLOOR, readingModel, USUAL_STRAY } from '../../../src/measure/beam/reading-model.ts';
import { seededRandom } from '../../../src/measure/random.ts';
import { verbatim } from '../../../src/measure/statement.ts';
import { cosineWeights } from '../../support/cosine-weights.ts';
import { lightOf, lightSource, points, SIX_INCHES } from './make.ts';

const source = lightSource({ halfAngle: 30 });
const light = lightOf(source);
const field = { width: source.width, height: source.height };
const sums = panelSums({
  field,
  emitter: { kind: 'leds', columns: 10, rows: 20, ledSize: 0.8 },
  distance: SIX_INCHES,
  grid: { shape: { columns: 3, rows: 3, inset: 2.54 }, accepted: [0, 1, 2, 3, 4, 5, 6, 7, 8] },
  targets: [],
});
const read = points(source, 3, 3).map(({ x, y }) => light(x, y, SIX_INCHES));
const mean = read.reduce((sum, it) => sum + it, 0) / 9;
// As a bench would have it: with the usual light that the room gives back.
const values = read.map((it) => it + (USUAL_STRAY / (1 - USUAL_STRAY)) * mean);
const offset: SharedError = {
  source: {
    key: 'meter/offset',
    what: verbatim('Offset'),
    type: 'B',
    distribution: 'normal',
    degreesOfFreedom: Number.POSITIVE_INFINITY,
    evaluation: verbatim(''),
  },
  effect: { offset: -0.5 },
};
const make = (errors: readonly SharedError[], own = 0.3) =>
  readingModel(
    sums,
    {
      values: Float64Array.from(values),
      own: new Float64Array(9).fill(own),
      isOffset: values.map(() => true),
      ownDistance: new Float64Array(9),
    },
    errors,
  );
const supposed = (halfAngle: number, drive = 0.01) => ({
  weights: cosineWeights(lambertianExponent(halfAngle)),
  difference: 0.01,
  drive: new Float64Array(PATTERNS.length).fill(drive),
});

describe('the probability of readings', () => {
  test('is highest for the beam that they were read from', () => {
    const model = make([]);
    const logs = [20, 25, 30, 35, 40].map((it) => model.likelihood(supposed(it)).log);
    expect(logs.indexOf(Math.max(...logs))).toBe(2);
    expect(model.likelihood(supposed(30)).chiSquare).toBeLessThan(0.05);
    expect(model.likelihood(supposed(20)).chiSquare).toBeGreaterThan(20);
  });

  test('does not depend on the unit of the light', () => {
    const one = make([]).likelihood(supposed(27));
    const many = readingModel(
      sums,
      {
        values: Float64Array.from(values, (it) => 10 * it),
        own: new Float64Array(9).fill(3),
        isOffset: values.map(() => true),
        ownDistance: new Float64Array(9),
      },
      [],
    );
    expect(many.likelihood(supposed(27)).chiSquare).toBeCloseTo(one.chiSquare, 8);
    const apart = (of: ReturnType<typeof make>) => of.likelihood(supposed(27)).log - of.likelihood(supposed(35)).log;
    expect(apart(many)).toBeCloseTo(apart(make([])), 8);
  });
});

describe('a reading past an edge', () => {
  // Six readings, so that five of them tell what the room gives back.
  const places = [20, 30, 40].flatMap((past) => [
    { edge: 'right' as const, past },
    { edge: 'top' as const, past },
  ]);
  const around = panelSums({
    field,
    emitter: { kind: 'leds', columns: 10, rows: 20, ledSize: 0.8 },
    distance: SIX_INCHES,
    grid: { shape: { columns: 3, rows: 3, inset: 2.54 }, accepted: [0, 1, 2, 3, 4, 5, 6, 7, 8] },
    beyond: places,
    targets: [],
  });
  const stray = (USUAL_STRAY / (1 - USUAL_STRAY)) * mean;
  const past = places.map(({ edge, past }) =>
    edge === 'right'
      ? light(field.width / 2 + past, 0, SIX_INCHES) + stray
      : light(0, field.height / 2 + past, SIX_INCHES) + stray,
  );
  /** With the last one off by so many times the floor. */
  const chiSquare = (off: number) => {
    const list = [...values, ...past];
    list[list.length - 1] = (list.at(-1) as number) + off * PAST_FLOOR * mean;
    const model = readingModel(
      around,
      {
        values: Float64Array.from(list),
        own: new Float64Array(list.length).fill(0.01),
        isOffset: list.map(() => true),
        ownDistance: new Float64Array(list.length),
      },
      [],
    );
    return model.likelihood(supposed(30)).chiSquare;
  };

  test('may be off by a small share of the light in the frame, where next to none is expected', () => {
    // Its error is known from six alike, one of them it itself: (off / floor)^2 (1 - 1/6), and a little less as other
    // beams' readings tell the room less well nearer in.
    expect(chiSquare(0)).toBeLessThan(0.05);
    expect(chiSquare(1)).toBeGreaterThan(0.5);
    expect(chiSquare(1)).toBeLessThan(1);
    expect(chiSquare(4) / chiSquare(1)).toBeGreaterThan(13);
  });
});

describe('what is drawn', () => {
  /** Power and scores over many draws: mean, and standard deviation. */
  function drawn(model: ReturnType<typeof make>, halfAngle = 30) {
    const random = seededRandom(3);
    model.likelihood(supposed(halfAngle, 0.003));
    const powers: number[] = [];
    const first: number[] = [];
    for (let d = 0; d < 4000; d++) {
      const scores = Float64Array.from({ length: model.directions }, () => random.normal());
      powers.push(
        model.draw(
          scores,
          Float64Array.from({ length: 9 }, () => random.normal()),
        ),
      );
      first.push(scores[0] as number);
    }
    const of = (list: number[]) => {
      const middle = list.reduce((sum, it) => sum + it, 0) / list.length;
      return { mean: middle, sd: Math.sqrt(list.reduce((sum, it) => sum + (it - middle) ** 2, 0) / list.length) };
    };
    return { power: of(powers), first: of(first) };
  }

  test('the power is the true one, give or take what the readings leave', () => {
    const { power } = drawn(make([]));
    expect(Math.abs(power.mean / 60 - 1)).toBeLessThan(0.006);
    expect(power.sd / 60).toBeGreaterThan(0.005);
    expect(power.sd / 60).toBeLessThan(0.03);
  });

  test('an error that the readings tell nothing of stays as it was drawn', () => {
    const small: SharedError = { ...offset, effect: { offset: -0.001 } };
    const { first } = drawn(make([small]));
    expect(first.mean).toBeCloseTo(0, 1);
    expect(first.sd).toBeCloseTo(1, 1);
  });

  test('one that they tell of is moved by it: an offset beside readings of their own', () => {
    // Scale and offset of nine readings, by the normal equations of weighted least squares with the offset known
    // beforehand to be 0 give or take 1 (any textbook); other errors are made small.
    const big: SharedError = { ...offset, effect: { offset: -20 } };
    const model = make([big], 2);
    const { first } = drawn(model);
    const a = read.map((it) => it / 60);
    const stray = 0.012 * (values.reduce((sum, it) => sum + it, 0) / 9);
    const variance = 4;
    // Per score of the offset a reading is 20 higher; stray light is a second constant, here taken with it.
    const [aa, ab, bb] = [
      a.reduce((s, it) => s + it * it, 0) / variance,
      a.reduce((s, it) => s + it * 20, 0) / variance,
      (9 * 400) / variance + 1,
    ];
    const sd = Math.sqrt(aa / (aa * bb - ab * ab));
    expect(stray).toBeLessThan(2);
    expect(first.sd).toBeGreaterThan(0.7 * sd);
    expect(first.sd).toBeLessThan(1.6 * sd);
  });

  test('there is a score for each error, each pattern of drive and the room', () => {
    expect(make([offset]).directions).toBe(1 + PATTERNS.length + 1);
  });
});
