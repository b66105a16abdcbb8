import { describe, expect, test } from 'vitest';
import { controlChart, nearestReading } from '../../../src/measure/control/control-chart.ts';
import { driftOf } from '../../../src/measure/control/drift.ts';
import { randomNumbers } from '../random-numbers.ts';

/** A reading every ten days from 1 January 2026 on. */
const every10 = (values: ReadonlyArray<number | number[]>) =>
  values.map((value, i) => ({
    date: new Date(Date.UTC(2026, 0, 1 + 10 * i)).toISOString().slice(0, 10),
    values: typeof value === 'number' ? [value] : value,
  }));

/** The worked example of the method’s page. */
const EXAMPLE = [41.0, 41.4, 40.9, 41.2, 41.5, 42.6];
const [stage] = controlChart(every10(EXAMPLE), { limitsFrom: 5 });

describe('a chart', () => {
  test('has the limits of the method page’s example', () => {
    const { centre, lower, upper, meanRange, sigma } = stage?.limits ?? {};
    expect([centre, lower, upper, meanRange, sigma].map((it) => it?.toFixed(3))).toEqual([
      '41.200',
      '40.203',
      '42.197',
      '0.375',
      '0.332',
    ]);
  });

  test('marks what lies beyond them, what set them, and how far it is from the day before', () => {
    expect(stage?.points.map((it) => it.beyond)).toEqual([...Array(5).fill(undefined), 'above']);
    expect(stage?.points.map((it) => it.isFirst)).toEqual([true, true, true, true, true, false]);
    expect(stage?.points.map((it) => it.range?.toFixed(1))).toEqual([undefined, '0.4', '0.5', '0.3', '0.3', '1.1']);
  });

  test('judges no day before enough are there', () => {
    const [short] = controlChart(every10([41, 90, 41]), { limitsFrom: 5 });
    expect(short).toMatchObject({ limits: undefined, missing: 2, drift: undefined });
    expect(short?.points.every((it) => it.beyond === undefined && !it.isInRun)).toBe(true);
  });

  test('takes a day’s repeats as their mean, and passes over a day without any', () => {
    const [it] = controlChart(every10([[41, 42], [], 41]), { limitsFrom: 5 });
    expect(it?.points).toMatchObject([
      { value: 41.5, repeats: 2 },
      { value: 41, date: '2026-01-21' },
    ]);
  });

  test('sorts days', () => {
    const [it] = controlChart(every10(EXAMPLE).toReversed(), { limitsFrom: 5 });
    expect(it).toEqual(stage);
  });

  test('calls the ninth day on one side a run', () => {
    const values = [40, 42, 40, 42, 41, ...Array(10).fill(41.5)];
    const [it] = controlChart(every10(values), { limitsFrom: 5 });
    expect(it?.points.map((point) => point.isInRun).lastIndexOf(false)).toBe(12);
  });
});

describe('restarts', () => {
  const values = [41, 41.4, 40.9, 41.2, 41.5, 44, 44.3, 43.9, 44.1, 44.2];
  const restarts = [{ date: '2026-02-20', reason: 'adjusted' }];
  const stages = controlChart(every10(values), { limitsFrom: 5, restarts });

  test('set limits anew from their day on', () => {
    expect(stages.map((it) => [it.from, it.reason, it.points.length])).toEqual([
      ['2026-01-01', undefined, 5],
      ['2026-02-20', 'adjusted', 5],
    ]);
    expect(stages.flatMap((it) => it.points.filter((point) => point.beyond))).toEqual([]);
    expect(stages[1]?.points[0]?.range).toBeUndefined();
  });

  test('without one the step lies beyond', () => {
    const [it] = controlChart(every10(values), { limitsFrom: 5 });
    expect(it?.points.filter((point) => point.beyond)).toHaveLength(5);
  });
});

describe('drift of a chart', () => {
  const flat = [41, 41.4, 40.9, 41.2, 41.5, 41.1, 41.3, 40.9, 41.2, 41.3, 41, 41.2];

  test('leaves out an upset that passed, and keeps what stays beyond', () => {
    const drift = (values: number[]) => controlChart(every10(values), { limitsFrom: 5 })[0]?.drift;
    const without = flat.flatMap((value, i) => (i === 7 ? [] : [[10 * i, value] as const]));
    expect(drift(flat.with(7, 48))).toEqual(driftOf(without));
    expect(drift(flat)).not.toEqual(driftOf(without));
    expect(drift([...flat.slice(0, 8), 48, 48, 48, 48])?.isTold).toBe(true);
  });

  test('holds the truth about as often as the method’s page says', () => {
    const draw = randomNumbers(4);
    const charts = 800;
    const held = [0, 3].map((slope) => {
      let count = 0;
      for (let i = 0; i < charts; i++) {
        const values = Array.from({ length: 30 }, (_, k) => 100 + (slope * 10 * k) / 365.25 + draw.normal());
        const drift = controlChart(every10(values), { limitsFrom: 8 })[0]?.drift;
        if (drift && Math.abs(drift.perYear - slope) <= drift.half) count += 1;
      }
      return count / charts;
    });
    expect(held[0]).toBeGreaterThan(0.92);
    expect(held[1]).toBeGreaterThan(0.87);
  });
});

describe('the nearest reading', () => {
  const stages = stage ? [stage] : [];

  test('is that of the day', () => {
    expect(nearestReading(stages, '2026-02-20', 7)).toMatchObject({ days: 0, point: { beyond: 'above' } });
  });

  test('is within some days, before or after', () => {
    expect(nearestReading(stages, '2026-02-27', 7)?.point.date).toBe('2026-02-20');
    expect(nearestReading(stages, '2026-02-28', 7)).toBeUndefined();
    expect(nearestReading(stages, '2025-12-31', 7)?.point.date).toBe('2026-01-01');
    expect(nearestReading(stages, '2026-02-19', 0)).toBeUndefined();
  });

  test('of two as near is the one beyond, or else the earlier', () => {
    expect(nearestReading(stages, '2026-02-15', 7)?.point).toMatchObject({ date: '2026-02-20', beyond: 'above' });
    expect(nearestReading(stages, '2026-02-05', 7)?.point.date).toBe('2026-01-31');
  });
});
