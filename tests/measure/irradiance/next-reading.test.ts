import { describe, expect, test } from 'vitest';
import { isFigure } from '../../../src/measure/figure.ts';
import type { Instrument } from '../../../src/measure/instrument/instrument.ts';
import { gridFigures } from '../../../src/measure/irradiance/grid.ts';
import { gainOfRepeats, repeatAdvice, worthMost } from '../../../src/measure/irradiance/next-reading.ts';
import { say } from '../../../src/words/say.ts';
import { randomNumbers } from '../random-numbers.ts';

const METER: Instrument = {
  id: 'meter',
  name: 'meter',
  response: '',
  calibrationDate: '2026-01-01',
  calibrationRelative: 0,
  calibrationAbsolute: 0,
  calibrationStated: { relative: 0, absolute: 0, unit: 'mW/cm2', coverageFactor: 1 },
  resolution: 0,
  range: { from: 0.1, to: 300 },
};

function meanOf(points: number[][], instrument: Instrument, halfWidth = 0) {
  const distance = { distance: 15.24, halfWidth, area: 600 };
  const { mean } = gridFigures(
    { points: [points], session: 'panel/2026-01-02', instrument, distance },
    { code: 'uncertainty-not-known' },
  );
  if (!isFigure(mean)) throw new Error('no mean');
  return mean;
}

const TRUE = [30, 40, 30, 40, 52, 40, 31, 41, 30];
const SCATTER = 2;
const spread = (values: number[]) => {
  const middle = values.reduce((a, b) => a + b, 0) / values.length;
  return Math.sqrt(values.reduce((sum, it) => sum + (it - middle) ** 2, 0) / (values.length - 1));
};

describe('what one more reading at each point gains, against drawing many grids', () => {
  const random = randomNumbers(7);
  const draw = (repeats: number) =>
    TRUE.map((it) => Array.from({ length: repeats }, () => it + SCATTER * random.normal()));
  const means = (repeats: number) =>
    Array.from(
      { length: 20_000 },
      () => draw(repeats).reduce((sum, it) => sum + it.reduce((a, b) => a + b, 0) / it.length, 0) / TRUE.length,
    );

  test.each([
    [2, 2.262, 2.101],
    [3, 2.101, 2.052],
  ])('from %i readings a point, where the scatter is all there is', (repeats, t, later) => {
    const points = draw(repeats);
    const gain = gainOfRepeats(meanOf(points, METER), points);
    // Besides the scatter of the mean its surety: t(0.975) with 9 (r − 1) degrees of freedom, and with 9 more.
    const ofScatter = ((gain?.after ?? 0) / (gain?.now ?? 1) / later) * t;
    const drawn = spread(means(repeats + 1)) / spread(means(repeats));
    expect(Math.abs(ofScatter / drawn - 1)).toBeLessThan(0.02);
  });

  test('the interval that it foretells is the one that the reading brings, on average', () => {
    const [foretold, found] = [[] as number[], [] as number[]];
    for (let i = 0; i < 300; i++) {
      const points = draw(2);
      foretold.push(gainOfRepeats(meanOf(points, METER), points)?.after ?? 0);
      const more = points.map((it, place) => [...it, (TRUE[place] ?? 0) + SCATTER * random.normal()]);
      const { standardUncertainty: u, coverageFactor: k } = meanOf(more, METER);
      found.push((u ?? 0) * (k ?? 0));
    }
    const average = (values: number[]) => values.reduce((a, b) => a + b, 0) / values.length;
    expect(average(foretold) / average(found)).toBeGreaterThan(0.95);
    expect(average(foretold) / average(found)).toBeLessThan(1.05);
  });

  test('by the meter’s own scatter where nothing was repeated: then one more halves the variance', () => {
    const points = TRUE.map((it) => [it]);
    const gain = gainOfRepeats(meanOf(points, { ...METER, repeatability: 0.02 }), points);
    // 9 degrees of freedom then: t = 2.262 in the place of 1.960.
    expect((gain?.after ?? 0) / (gain?.now ?? 1)).toBeCloseTo((Math.SQRT1_2 * 2.262) / 1.96, 3);
  });
});

describe('what the tester is told', () => {
  test('that more repeats change nothing where the calibration is most of the doubt', () => {
    const points = TRUE.map((it) => [it, it + 0.1, it - 0.1]);
    const advice = repeatAdvice(meanOf(points, { ...METER, calibrationRelative: 0.026 }), points);
    expect(advice && say(advice)).toBe('Enough: one more reading at each point would leave it at ±5.1 %.');
  });

  test('that a reading more is worth it where readings scatter', () => {
    const points = TRUE.map((it) => [it - 3, it + 3]);
    const advice = repeatAdvice(meanOf(points, { ...METER, calibrationRelative: 0.005 }), points);
    expect(advice?.code).toBe('repeats-would-gain');
  });

  test('that nothing is known of the scatter without repeats or a word of the meter', () => {
    const points = TRUE.map((it) => [it]);
    expect(repeatAdvice(meanOf(points, METER), points)).toEqual({ code: 'repeats-tell-scatter' });
  });

  test('which reading is worth most, and what is left without that error', () => {
    const points = TRUE.map((it) => [it]);
    const mean = meanOf(points, { ...METER, calibrationRelative: 0.01, repeatability: 0.01 }, 0.6);
    const advice = worthMost(mean, false);
    expect(advice).toMatchObject({ code: 'worth-most', remedy: 'distance' });
    const { now, atBest } = advice as unknown as { now: number; atBest: number };
    expect(now).toBeGreaterThan(atBest);
    // Calibration and a ninth of the scatter's variance are left.
    expect(atBest).toBeCloseTo(
      1.96 * Math.hypot(1, ((1 / 9) * Math.hypot(...TRUE)) / (TRUE.reduce((a, b) => a + b, 0) / 9)),
      2,
    );
  });

  test('that no reading narrows what rests on the calibration', () => {
    const points = TRUE.map((it) => [it]);
    const advice = worthMost(meanOf(points, { ...METER, calibrationRelative: 0.03, repeatability: 0.001 }), false);
    expect(advice && say(advice)).toMatch(
      /no reading narrows it much: 100 % of the doubt is calibration of the meter\.$/,
    );
  });
});
