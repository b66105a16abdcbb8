import { describe, expect, test } from 'vitest';
import { estimatePanel } from '../../../src/measure/beam/estimate.ts';
import {
  emittedEfficiencyFigure,
  opticsFigures,
  pricePerEmittedWattFigure,
} from '../../../src/measure/beam/figures.ts';
import { type SessionLight, sessionOptics } from '../../../src/measure/beam/session-light.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import { NO_INSTRUMENT } from '../../../src/measure/instrument/instrument.ts';
import { sideFigure } from '../../../src/measure/irradiance/optical-power.ts';
import { statementKey } from '../../../src/measure/statement.ts';
import { componentOf, figure, figureOf, line } from '../make.ts';
import { lightOf, lightSource, points, SENSOR, SESSION, SIX_INCHES, TAPE } from './make.ts';

const source = lightSource({ halfAngle: 25 });
const light = lightOf(source);
const rows = [0, 1, 2].map((row) =>
  points(source, 3, 3)
    .slice(3 * row, 3 * row + 3)
    .map(({ x, y }) => [light(x, y, SIX_INCHES)]),
);
const side = (of: 'width' | 'height') =>
  sideFigure({ panel: 'lantern-40', side: of, value: source[of], edgeSetting: 0.2, instrument: TAPE });

const session = (part: Partial<SessionLight> = {}): SessionLight => ({
  panel: 'lantern-40',
  session: SESSION,
  instrument: SENSOR,
  width: side('width'),
  height: side('height'),
  distance: { distance: SIX_INCHES, halfWidth: 0.3, area: source.width * source.height },
  grid: { points: rows, inset: 2.54 },
  ledCount: 200,
  beamAngle: 50,
  targets: [15.24, 30],
  ...part,
});

function figures(part: Partial<SessionLight> = {}, power = figure(50)) {
  const it = sessionOptics(session(part));
  if (!('input' in it)) throw new Error(statementKey(it.withheld));
  const result = estimatePanel(it.input);
  return opticsFigures(result, { session: SESSION, instrument: SENSOR, inputs: ['grid'], notes: it.notes, power });
}

describe('figures of a session’s light', () => {
  const all = figures();

  test('each has its id, unit, basis and method', () => {
    const [halfAngle, bias, capture, emitted] = [all.halfAngle, all.samplingBias, all.capture, all.emitted].map(
      figureOf,
    );
    expect([halfAngle?.unit, bias?.unit, capture?.unit, emitted?.unit]).toEqual(['°', '%', '%', 'W']);
    expect(emitted).toMatchObject({
      id: `${SESSION}/emitted-power`,
      metric: 'emitted-power',
      basis: 'modelled',
      method: { id: 'emitted-power', version: 2 },
      inputs: ['grid'],
    });
    expect(all.distances.map((it) => it.mean.id)).toEqual([
      `${SESSION}/mean-irradiance-at-15.24-cm`,
      `${SESSION}/mean-irradiance-at-30-cm`,
    ]);
  });

  test('values: 60 W of light, of which a part passes the field', () => {
    const emitted = figureOf(all.emitted);
    // Nine points leave much open.
    expect(Math.abs(emitted.value / 60 - 1)).toBeLessThan(0.15);
    expect(emitted.interval95?.[0]).toBeLessThan(60);
    expect(emitted.interval95?.[1]).toBeGreaterThan(60);
    expect(figureOf(all.halfAngle).interval95?.[0]).toBeLessThan(25);
    expect(figureOf(all.halfAngle).interval95?.[1]).toBeGreaterThan(25);
    expect(figureOf(all.capture).value).toBeGreaterThan(60);
    expect(figureOf(all.capture).interval95?.[1]).toBeLessThan(100);
    // Below the true mean: corners and edges weigh more in the nine points than in the field.
    expect(figureOf(all.samplingBias).value).toBeLessThan(-10);
    expect(figureOf(all.samplingBias).interval95?.[0]).toBeLessThan(figureOf(all.samplingBias).value);
  });

  test('interval and coverage factor belong together, and hold the value', () => {
    for (const it of [all.halfAngle, all.samplingBias, all.capture, all.emitted].map(figureOf)) {
      const [low, high] = it.interval95 ?? [0, 0];
      expect(low).toBeLessThan(it.value);
      expect(high).toBeGreaterThan(it.value);
      expect(2 * (it.coverageFactor ?? 0) * (it.standardUncertainty ?? 0)).toBeCloseTo(high - low, 10);
      expect(it.coverageFactor).toBeGreaterThan(1.6);
      expect(it.coverageFactor).toBeLessThan(2.3);
    }
  });

  test('the budget makes up the uncertainty', () => {
    for (const it of [all.halfAngle, all.samplingBias, all.capture, all.emitted].map(figureOf)) {
      const u = Math.hypot(...it.budget.map((entry) => entry.contribution));
      expect(Math.abs(u / (it.standardUncertainty ?? 0) - 1)).toBeLessThan(0.02);
      expect(new Set(it.budget.map((entry) => entry.source.key)).size).toBe(it.budget.length);
    }
    expect(componentOf(figureOf(all.emitted), '/beam-shape-1').contribution).not.toBe(0);
    expect(figureOf(all.emitted).unassessed.map((it) => it.what)).toContainEqual({ code: 'beam-unlike-leds' });
  });

  test('the working has the numbers in it', () => {
    expect(figureOf(all.emitted).calculation).toMatch(
      /^Φ = P \(1 − s\) ÷ \(b κ\) = 50 W × \(1 − -?[\d.e-]+\) ÷ \(0\.\d+ × 0\.\d+\) = [\d.]+ W$/,
    );
  });

  test('notes say what was assumed and what the light past the frame rests on', () => {
    expect(figureOf(all.emitted).notes).toEqual([
      { code: 'beam-taken-for-grid', columns: 10, rows: 20 },
      { code: 'beam-past-frame', source: 'grid' },
    ]);
    const past = [8, 20, 40].map((it) => ({ edge: 'right' as const, past: it, on: [light(14 + it, 0, SIX_INCHES)] }));
    expect(figureOf(figures({ beyond: past }).emitted).notes).toContainEqual({
      code: 'beam-past-frame',
      source: 'beyond',
    });
  });

  test('LEDs that nobody counted: no peak near by, and one further away', () => {
    const { ledCount: _, ...uncounted } = session({ targets: [5, 60] });
    const it = sessionOptics(uncounted);
    if (!('input' in it)) throw new Error(statementKey(it.withheld));
    const found = opticsFigures(estimatePanel(it.input), {
      session: SESSION,
      instrument: SENSOR,
      inputs: [],
      notes: [],
    });
    const [near, far] = found.distances;
    expect(near?.peak).toMatchObject({
      gap: true,
      metric: 'peak-irradiance-at-5-cm',
      reason: { code: 'beam-leds-uncounted' },
    });
    expect(near?.evenness).toMatchObject({ gap: true, metric: 'uniformity-lowest-at-5-cm' });
    expect(isFigure(near?.mean)).toBe(true);
    expect(isFigure(far?.peak) && isFigure(far?.evenness)).toBe(true);
  });
});

describe('gaps', () => {
  test('a withheld beam: every figure says why', () => {
    const hot = rows.map((row, i) => row.map(([value = 0], j) => [i === 0 && j === 0 ? 2 * value : value]));
    const { beamAngle: _, ...rest } = session({ grid: { points: hot, inset: 2.54 } });
    const it = sessionOptics(rest);
    if (!('input' in it)) throw new Error(statementKey(it.withheld));
    const all = opticsFigures(estimatePanel(it.input), { session: SESSION, instrument: SENSOR, inputs: [], notes: [] });
    for (const one of [all.halfAngle, all.samplingBias, all.capture, all.emitted]) {
      expect(isFigure(one)).toBe(false);
      expect(one).toMatchObject({
        gap: true,
        reason: { code: 'beam-unexplained' },
      });
    }
    expect(all.distances).toEqual([]);
  });

  test('no readings: nothing, and why', () => {
    const all = figures({ grid: { points: [[[]], [[]]], inset: 2.54 } });
    expect(all.capture).toMatchObject({ gap: true, reason: { code: 'beam-too-few-readings', fewest: 4 } });
    expect(all.emitted).toEqual({ ...all.capture, metric: 'emitted-power' });
  });
});

describe('putting a session together', () => {
  test('no meter, or a distance that no plane can have: withheld', () => {
    expect(sessionOptics(session({ instrument: undefined }))).toEqual({
      withheld: NO_INSTRUMENT,
    });
    expect(sessionOptics(session({ targets: [0] }))).toEqual({
      withheld: { code: 'beam-distance-out-of-reach', nearest: 0.1, farthest: 10_000 },
    });
  });

  test('struck-out points are left out, repeats are pooled', () => {
    const repeated = rows.map((row, i) =>
      row.map(([value = 0], j) => (i === 1 && j === 1 ? [] : [value, 1.01 * value, 0.99 * value])),
    );
    const it = sessionOptics(session({ grid: { points: repeated, inset: 2.54 } }));
    if (!('input' in it)) throw new Error(statementKey(it.withheld));
    expect(it.input.layout.grid?.accepted).toEqual([0, 1, 2, 3, 5, 6, 7, 8]);
    // Three repeats at each of eight points, 1 % apart at most: pooled over them, widened by Student's t with 16 degrees
    // of freedom (2.120 / 1.960), over the root of three.
    const pooled = Math.sqrt(repeated.flat().reduce((sum, [value = 0]) => sum + (0.01 * value) ** 2, 0) / 8);
    for (const u of it.input.grid?.scatter ?? []) expect(u).toBeCloseTo((pooled * 2.12) / 1.96 / Math.sqrt(3), 3);
    const emitted = figureOf(figures({ grid: { points: repeated, inset: 2.54 } }).emitted);
    expect(Math.abs(emitted.value / 60 - 1)).toBeLessThan(0.2);
  });

  test('a grid that does not fit its field is left out with a note', () => {
    const it = sessionOptics(session({ grid: { points: rows, inset: 15 } }));
    expect(it).toMatchObject({ notes: [{ code: 'beam-taken-for-grid' }, { code: 'beam-grid-left-out' }] });
    expect('input' in it && 'grid' in it.input).toBe(false);
  });

  test('a sweep of its own: repeats pooled relative to their place', () => {
    const sweep = [10, 20, 40, 80].map((distance) => {
      const value = light(0, 0, distance);
      return { distance, readings: [value, 1.01 * value] };
    });
    const it = sessionOptics(session({ sweep }));
    if (!('input' in it)) throw new Error(statementKey(it.withheld));
    // Two readings 1 % apart scatter by 0.7 %, their mean by 0.5 %; four places give 4 degrees of freedom (2.776 / 1.960).
    it.input.sweep?.scatter.forEach((u, i) => {
      expect(u / (it.input.sweep?.values[i] ?? 1)).toBeCloseTo((0.005 * 2.776) / 1.96, 3);
    });
    expect(estimatePanel(it.input).estimates?.source).toBe('sweep');
  });

  test('readings past the edges: what the panel off gives is taken away, a bound lies anywhere below', () => {
    const it = sessionOptics(
      session({
        beyond: [
          { edge: 'left', past: 8, on: [12.2, 12.4], off: 0.1 },
          { edge: 'top', past: 40, on: [0.1], isBound: true },
          { edge: 'top', past: 60, on: [] },
        ],
      }),
    );
    if (!('input' in it)) throw new Error(statementKey(it.withheld));
    expect(it.input.layout.beyond).toEqual([
      { edge: 'left', past: 8 },
      { edge: 'top', past: 40 },
    ]);
    const { values, rounding, isOffTaken } = it.input.beyond ?? {};
    expect(values?.[0]).toBeCloseTo(12.2, 10);
    expect(values?.[1]).toBeCloseTo(0.05, 10);
    // Steps of 0.1: a rectangle of half a step either way, with and without the lamp; below the first step half of it.
    expect(rounding?.[0]).toBeCloseTo(Math.hypot(0.05, 0.05) / Math.sqrt(3), 10);
    expect(rounding?.[1]).toBeCloseTo(0.05 / Math.sqrt(3), 10);
    expect(isOffTaken).toEqual([true, false]);
  });

  test('LEDs that somebody looked at are taken as they were found', () => {
    const leds = { columns: 10, rows: 20, ledSize: 0.8 };
    const it = sessionOptics(session({ leds }));
    if (!('input' in it)) throw new Error(statementKey(it.withheld));
    expect(it.input.layout.emitter).toEqual({ kind: 'leds', ...leds });
    expect(it.notes).toEqual([
      { code: 'beam-leds-counted', columns: 10, rows: 20, staggered: false, isSizeAssumed: false },
    ]);
  });
});

describe('figures made of it', () => {
  const emitted = figure(60, [line('meter/calibration', 2.4), line('a/beam-order', 3)], 'emitted-power');

  test('efficiency on the emitted power', () => {
    const it = emittedEfficiencyFigure(
      SESSION,
      emitted,
      figure(150, [line('wattmeter/calibration', 1.5)], 'mains-draw'),
    );
    expect(it.value).toBeCloseTo(40, 10);
    expect(it.standardUncertainty).toBeCloseTo(40 * Math.hypot(2.4 / 60, 3 / 60, 0.01), 10);
    expect(it).toMatchObject({ id: `${SESSION}/efficiency-emitted`, unit: '%', basis: 'modelled' });
  });

  test('price per emitted watt', () => {
    const it = pricePerEmittedWattFigure(SESSION, figure(599, [], 'real-price', 'currency'), emitted, 'EUR');
    expect(it.value).toBeCloseTo(599 / 60, 10);
    expect(componentOf(it, 'meter/calibration').contribution).toBeCloseTo((-599 / 60) * 0.04, 10);
    expect(it.calculation).toBe('c = C ÷ Φ = 599 EUR ÷ 60 W = 9.983 EUR/W');
  });
});
