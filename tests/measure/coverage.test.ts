import { describe, expect, test } from 'vitest';
import type { Figure } from '../../src/measure/figure.ts';
import { gridFigures } from '../../src/measure/irradiance/grid.ts';
import {
  ledAreaFigure,
  opticalPowerFigure,
  peakToMeanFigure,
  sideFigure,
} from '../../src/measure/irradiance/optical-power.ts';
import { readingFigure } from '../../src/measure/reading.ts';
import { verbatim } from '../../src/measure/statement.ts';
import { figureOf, gridOf, instrument, slanted } from './make.ts';
import { type Numbers, randomNumbers } from './random-numbers.ts';

/**
 * How often the 95 % interval holds the truth, over simulated sessions whose errors are drawn afresh each time,
 * from the distributions that the meters’ files promise. The share of 1,000 sessions scatters by 0.7 %
 * by the binomial law, so that the limits lie three of those away.
 */
const SESSIONS = 1000;
const LEAST = 0.93;
const MOST = 0.97;

const FIELD = { width: 28, height: 61 };
const DISTANCE = { distance: 15.24, halfWidth: 0.3, area: FIELD.width * FIELD.height };
const TRUE_POINTS = [62, 71, 60, 74, 88, 73, 61, 70, 63];
const TRUE_MEAN = TRUE_POINTS.reduce((sum, it) => sum + it, 0) / TRUE_POINTS.length;
const TRUE_PEAK = 91;
const TRUE_POWER = (TRUE_MEAN * FIELD.width * FIELD.height) / 1000;
const SESSION = 'lantern-40/2026-03-02';

const OBLIQUE = 0.015;
const SENSOR = instrument({
  calibrationRelative: 0.025,
  calibrationAbsolute: 0.2,
  resolution: 0.1,
  angularResponse: slanted(OBLIQUE),
});
const TAPE = instrument({ id: 'tape', name: 'tape', calibrationRelative: 0.001, resolution: 0.1 });
const EDGE = 0.3;

const inSteps = (value: number, step: number) => Math.round(value / step) * step;

/** Irradiance of a uniform disc as large as the field, relative to that at the nominal distance. */
function falloff(distance: number): number {
  const radiusSquared = DISTANCE.area / Math.PI;
  return (radiusSquared + DISTANCE.distance ** 2) / (radiusSquared + distance ** 2);
}

interface Simulated {
  mean: Figure;
  power: Figure;
  peakToMean: Figure;
}

/** One session: errors that belong to it are drawn once, the scatter of a reading each time. */
function session(numbers: Numbers, repeats: number, scatter: number, sensor = SENSOR): Simulated {
  const gain = 1 + sensor.calibrationRelative * numbers.normal();
  const offset = sensor.calibrationAbsolute * numbers.normal();
  const oblique = 1 + OBLIQUE * numbers.normal();
  const at = falloff(DISTANCE.distance + DISTANCE.halfWidth * numbers.either());
  const read = (light: number) =>
    inSteps((light * at * oblique * gain + offset) * (1 + scatter * numbers.normal()), sensor.resolution);
  const points = [TRUE_POINTS.map((light) => Array.from({ length: repeats }, () => read(light)))];

  const stretch = 1 + TAPE.calibrationRelative * numbers.normal();
  const tape = (length: number) =>
    inSteps((length + EDGE * numbers.either() + EDGE * numbers.either()) * stretch, TAPE.resolution);
  const side = (of: 'width' | 'height') =>
    sideFigure({ panel: 'lantern-40', side: of, value: tape(FIELD[of]), edgeSetting: EDGE, instrument: TAPE });

  const mean = figureOf(
    gridFigures(gridOf([], { points, instrument: sensor, distance: DISTANCE, session: SESSION }), verbatim('no cells'))
      .mean,
  );
  const peak = readingFigure({
    metric: 'peak-irradiance-combined',
    value: read(TRUE_PEAK),
    session: SESSION,
    path: 'peak',
    instrument: sensor,
    distance: DISTANCE,
  });
  const area = ledAreaFigure('lantern-40', side('width'), side('height'));
  return { mean, power: opticalPowerFigure(SESSION, mean, area), peakToMean: peakToMeanFigure(SESSION, peak, mean) };
}

const holds = (it: Figure, truth: number) =>
  it.interval95 !== null && it.interval95[0] <= truth && truth <= it.interval95[1];

function expectCoverage(hits: number, of: number): void {
  expect(hits / of).toBeGreaterThanOrEqual(LEAST);
  expect(hits / of).toBeLessThanOrEqual(MOST);
}

const simulated = (seed: number, repeats: number, scatter: number, sensor = SENSOR) => {
  const numbers = randomNumbers(seed);
  return Array.from({ length: SESSIONS }, () => session(numbers, repeats, scatter, sensor));
};

describe('how often the 95 % interval holds the truth', () => {
  const repeated = simulated(1, 3, 0.008);
  const single = simulated(2, 1, 0.03, { ...SENSOR, repeatability: 0.03 });

  test('mean irradiance, with repeats at each point', () => {
    expectCoverage(repeated.filter((it) => holds(it.mean, TRUE_MEAN)).length, SESSIONS);
  });

  test('mean irradiance, with the repeatability of the instrument file', () => {
    expectCoverage(single.filter((it) => holds(it.mean, TRUE_MEAN)).length, SESSIONS);
  });

  test('optical power', () => {
    expectCoverage(repeated.filter((it) => holds(it.power, TRUE_POWER)).length, SESSIONS);
    expectCoverage(single.filter((it) => holds(it.power, TRUE_POWER)).length, SESSIONS);
  });

  test('peak over mean, whose calibration cancels', () => {
    expectCoverage(single.filter((it) => holds(it.peakToMean, TRUE_PEAK / TRUE_MEAN)).length, SESSIONS);
  });

  test.each([2, 3, 5])('a point read %d times by a meter with no other error: Student’s t', (repeats) => {
    const numbers = randomNumbers(100 + repeats);
    let hits = 0;
    for (let i = 0; i < SESSIONS; i++) {
      const readings = Array.from({ length: repeats }, () => 500 + 3 * numbers.normal());
      const it = figureOf(gridFigures(gridOf([], { points: [[readings]] }), verbatim('no cells')).mean);
      if (holds(it, 500)) hits += 1;
    }
    expectCoverage(hits, SESSIONS);
  });

  test('an interval that left out the calibration would fail here', () => {
    const blind = simulated(1, 3, 0.008).map(({ mean }) => {
      const lines = mean.budget.filter((it) => !it.source.key.endsWith('/calibration'));
      const u = Math.hypot(...lines.map((it) => it.contribution));
      return Math.abs(mean.value - TRUE_MEAN) <= (mean.coverageFactor ?? Number.NaN) * u;
    });
    expect(blind.filter(Boolean).length / SESSIONS).toBeLessThan(LEAST);
  });
});
