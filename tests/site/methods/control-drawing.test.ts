import { describe, expect, test } from 'vitest';
import type { StandardEntry } from '../../../src/ledger/standard-entry.ts';
import { controlDrawings } from '../../../src/site/methods/control-drawing.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

const lamp = demoLedger().ledger.standards[0] as StandardEntry;
const [wide, narrow] = controlDrawings(lamp);

describe.each([wide, narrow])('the chart at its size', (it) => {
  if (!it) throw new Error('there is no chart');
  const { frame, points, bands } = it;

  test('has every day within the frame, in the order of time', () => {
    expect(points).toHaveLength(35);
    for (const { x, y } of points) {
      expect(x >= frame.left && x <= frame.right && y >= frame.top && y <= frame.bottom).toBe(true);
    }
    expect(points.map((point) => point.x)).toEqual(points.map((point) => point.x).toSorted((a, b) => a - b));
  });

  test('marks days by what they are', () => {
    const kinds = Object.groupBy(points, (point) => point.kind);
    expect([kinds.first?.length, kinds.judged?.length, kinds.beyond?.length]).toEqual([16, 18, 1]);
    expect(kinds.beyond?.[0]?.title).toBe('21 Oct 2025: 43.00, above the limits');
    expect(it.beyond).toMatchObject([{ text: '21 Oct 2025', anchor: 'start' }]);
  });

  test('puts a day beyond the limits outside the band of its stage, and all others inside', () => {
    expect(bands).toHaveLength(2);
    for (const { x, y, kind } of points) {
      const band = bands.findLast((one) => x >= one.x - 0.05);
      const isInside = band !== undefined && y >= band.top - 0.1 && y <= band.top + band.height + 0.1;
      expect(isInside, `${x} ${y}`).toBe(kind !== 'beyond');
    }
  });

  test('has bands side by side over the whole frame, and names the newest limits', () => {
    const [first, second] = bands;
    expect(first?.x).toBe(frame.left);
    expect((first?.x ?? 0) + (first?.width ?? 0)).toBeCloseTo(second?.x ?? 0, 1);
    expect((second?.x ?? 0) + (second?.width ?? 0)).toBeCloseTo(frame.right, 1);
    expect(it.lines.map((line) => line.text)).toEqual(['limit 42.33', 'usual 41.64', 'limit 40.94']);
    expect(it.restarts).toEqual([second?.x]);
  });

  test('says at once what happened at once', () => {
    expect(it.events.map((words) => words.text)).toEqual(['meter calibrated, new limits']);
  });

  test('has ticks at even values and at the first of months', () => {
    expect(it.y.map((tick) => Number(tick.text))).toEqual(
      it.y.map((tick) => Number(tick.text)).toSorted((a, b) => a - b),
    );
    expect(it.y.length).toBeGreaterThan(2);
    expect(it.x.every((tick) => /^[A-Z][a-z]{2} 202[4-6]$/.test(tick.text))).toBe(true);
    expect(it.x.length).toBeGreaterThan(1);
  });
});

test('words of what happened apart are apart, in lines above one another where they would meet', () => {
  const entry = { ...lamp, calibrated: ['2025-03-01', '2025-09-15', '2026-11-20'] };
  const events = controlDrawings(entry)[1]?.events ?? [];
  expect(events.map((it) => it.text)).toEqual(['meter calibrated', 'meter calibrated, new limits', 'meter calibrated']);
  expect(events.map((it) => it.anchor)).toEqual(['start', 'start', 'end']);
  expect(new Set(events.map((it) => it.y)).size).toBeGreaterThan(1);
});

test('a chart without limits yet has points alone, and one without readings is none', () => {
  const [stage] = lamp.stages;
  if (!stage) throw new Error('no stage');
  const bare = { ...stage, limits: undefined, points: stage.points.slice(0, 1) };
  const [one] = controlDrawings({ ...lamp, stages: [bare], current: bare, calibrated: [] });
  expect(one).toMatchObject({ bands: [], lines: [], restarts: [], beyond: [] });
  expect(one?.points).toHaveLength(1);
  const none = { ...bare, points: [] };
  expect(controlDrawings({ ...lamp, stages: [none], current: none })).toEqual([]);
});
