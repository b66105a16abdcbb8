/**
 * One panel worked out by hand from its readings to its price per watt, by the formulas of the GUM (JCGM 100:2008:
 * rectangular 4.3.7, sum of squares 5.1.2, relative rule 5.1.6, shared errors 5.2.2, effective degrees of freedom
 * G.4.1; clause numbers from memory). Nothing of src/measure is used for what is expected.
 */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { buildLedger } from '../../src/ledger/build-ledger.ts';
import { type Figure, isFigure } from '../../src/measure/figure.ts';
import { methodReference } from '../../src/measure/method-versions.ts';
import type { MetricId } from '../../src/measure/metrics.ts';
import { type ContentFolder, TODAY, tinyContent } from '../support/content-folder.ts';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const FILE = 'panels/plover/index.md';

function figures(): (metric: MetricId) => Figure {
  const panel = buildLedger(content.content(), { today: TODAY }).panels.get('plover');
  return (metric) => {
    const it = panel?.figures.get(metric);
    if (!isFigure(it)) throw new Error(`${metric}: ${it?.reason}`);
    return it;
  };
}

/** Root of the sum of squares. */
const rss = (...parts: number[]) => Math.sqrt(parts.reduce((sum, part) => sum + part * part, 0));
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

/** The 0.975 quantile of the normal distribution: the coverage factor where no degrees of freedom are limited. */
const NORMAL = 1.959963985;

function expectFigure(it: Figure, value: number, u: number, k = NORMAL): void {
  expect(it.value / value).toBeCloseTo(1, 10);
  expect((it.standardUncertainty ?? Number.NaN) / u).toBeCloseTo(1, 8);
  expect((it.coverageFactor ?? Number.NaN) / k).toBeCloseTo(1, 6);
  expect(it.interval95?.[0]).toBeCloseTo(value - k * u, 6);
  expect(it.interval95?.[1]).toBeCloseTo(value + k * u, 6);
}

/** A number over something with a relative standard uncertainty: the smaller that is, the more the quotient. */
function expectQuotient(it: Figure, value: number, relative: number): void {
  expect(it.value / value).toBeCloseTo(1, 10);
  expect((it.standardUncertainty ?? Number.NaN) / (value * relative)).toBeCloseTo(1, 8);
  expect(it.interval95?.[0]).toBeCloseTo(value / (1 + NORMAL * relative), 6);
  expect(it.interval95?.[1]).toBeCloseTo(value / (1 - NORMAL * relative), 6);
}

describe('a panel with one reading a point', () => {
  // Read at 6 in, with a thermopile (4 % at k = 2, steps of 0.1, 1.5 % for oblique light from any angle, 0.5 % in
  // either band, repeats to 0.8 %), a
  // wattmeter (1 % and 0.2 W at k = 2, steps of 0.1 W, repeats to 0.2 %) and a rule (0.1 % at k = 2, steps of 1 mm).
  const GRID = [31.0, 38.2, 30.8, 40.1, 50.0, 39.9, 30.6, 37.8, 31.2];
  const PEAK = { red: 28.4, combined: 52.5 };
  const DRAW = { red: 50.2, combined: 100.0, standby: 0.6 };
  const PRICE = 240;
  const [WIDTH, HEIGHT, DISTANCE] = [20, 30, 15.24];

  beforeEach(() => {
    // As much from every angle, so that nothing here rests on the shape of the light.
    const flat = 'angles: [{ angle: 0.001 deg, error: 1.5 }, { angle: 89 deg, error: 1.5 }]';
    content.edit('instruments/thermopile.yaml', 'f2: 1.5', flat);
    content.write(
      FILE,
      `---
maker: wrackline
model: Plover
status: published
prices:
  - { date: 2026-11-01, list: 300, paid: ${PRICE}, currency: EUR }
field: { width: ${WIDTH} cm, height: ${HEIGHT} cm }
sessions:
  - date: 2026-10-01
    methodVersion: 1
    instruments: { irradiance: thermopile, mains: wattmeter, length: rule }
    distance: 6 in
    peak: { red: ${PEAK.red}, combined: ${PEAK.combined} }
    grid:
      inset: 1 in
      rows:
        - [${GRID.slice(0, 3).join(', ')}]
        - [${GRID.slice(3, 6).join(', ')}]
        - [${GRID.slice(6).join(', ')}]
    mains: { red: ${DRAW.red}, combined: ${DRAW.combined}, standby: ${DRAW.standby} }
---
`,
    );
  });

  /** Half a step either way, rectangular. */
  const step = (size: number) => size / 2 / Math.sqrt(3);

  const area = WIDTH * HEIGHT;
  // E falls as z to the power p = 2 z² / (R² + z²) in front of a Lambertian disc of the same area (differentiated
  // from E = M R² / (R² + z²), handbook formula, from memory). The distance is set to ±2 mm.
  const exponent = (2 * DISTANCE ** 2) / (area / Math.PI + DISTANCE ** 2);
  const relativeDistance = (exponent * (0.2 / Math.sqrt(3))) / DISTANCE;

  // Mean of nine, mW/cm².
  const mean = sum(GRID) / 9;
  const meanOwn = rss(
    // Each point rounds on its own: one step's share over the root of nine.
    step(0.1) / 3,
    // Each point repeats on its own: 0.8 % of each reading, a ninth of it in the mean.
    0.008 * (rss(...GRID) / 9),
  );
  // The near-infrared peak was not read, so either band may be all of the light.
  const meanU = rss(0.02 * mean, 0.015 * mean, 0.005 * mean, 0.005 * mean, relativeDistance * mean, meanOwn);

  // LED area, cm²: each side is set on two edges to ±1 mm and rounded; the rule's own error moves both sides.
  const sideOwn = rss(Math.SQRT2 * (0.1 / Math.sqrt(3)), step(0.1));
  const areaU = rss(HEIGHT * sideOwn, WIDTH * sideOwn, 2 * 0.0005 * area);

  const power = (mean * area) / 1000;
  const powerRelative = rss(meanU / mean, areaU / area);

  const drawU = (draw: number) => rss(0.005 * draw, 0.1, step(0.1), 0.002 * draw);

  test('mean irradiance', () => {
    expect(mean).toBeCloseTo(36.62222, 5);
    expect(meanU).toBeCloseTo(1.00396, 5);
    expectFigure(figures()('mean-irradiance'), mean, meanU);
  });

  test('sides and LED area', () => {
    const figure = figures();
    expectFigure(figure('field-width'), WIDTH, rss(sideOwn, 0.0005 * WIDTH));
    expectFigure(figure('field-height'), HEIGHT, rss(sideOwn, 0.0005 * HEIGHT));
    expect(areaU).toBeCloseTo(3.17962, 5);
    expectFigure(figure('led-area'), area, areaU);
  });

  test('optical power', () => {
    expect(power).toBeCloseTo(21.97333, 5);
    expect(power * powerRelative).toBeCloseTo(0.61353, 5);
    expectFigure(figures()('optical-power'), power, power * powerRelative);
  });

  test('price per watt: the price is exact', () => {
    const figure = figures();
    expect(figure('real-price').value).toBe(PRICE);
    expect(figure('real-price').standardUncertainty).toBe(0);
    const perWatt = PRICE / power;
    expect(perWatt).toBeCloseTo(10.92233, 5);
    expect(perWatt * powerRelative).toBeCloseTo(0.30497, 5);
    expectQuotient(figure('price-per-watt'), perWatt, powerRelative);
  });

  test('mains draw, running cost', () => {
    const figure = figures();
    expectFigure(figure('mains-draw-combined'), DRAW.combined, drawU(DRAW.combined));
    // 0.30 EUR/kWh: 100 W for an hour are 0.1 kWh.
    expectFigure(figure('running-cost'), 0.03, (0.3 / 1000) * drawU(DRAW.combined));
  });

  test('efficiency', () => {
    const efficiency = (100 * power) / DRAW.combined;
    expect(efficiency).toBeCloseTo(21.97333, 5);
    const relative = rss(powerRelative, drawU(DRAW.combined) / DRAW.combined);
    expect(efficiency * relative).toBeCloseTo(0.62525, 5);
    expectFigure(figures()('efficiency-combined'), efficiency, efficiency * relative);
  });

  test('efficiency less standby: the wattmeter’s offset cancels in the difference', () => {
    const net = DRAW.combined - DRAW.standby;
    const netU = rss(0.005 * net, step(0.1), step(0.1), 0.002 * DRAW.combined, 0.002 * DRAW.standby);
    const efficiency = (100 * power) / net;
    expect(efficiency).toBeCloseTo(22.10597, 5);
    expect(efficiency * rss(powerRelative, netU / net)).toBeCloseTo(0.62869, 5);
    expectFigure(figures()('efficiency-combined-net'), efficiency, efficiency * rss(powerRelative, netU / net));
  });

  /** What is left in the ratio of two readings of one session: all that they share cancels. */
  const peakOwn = (reading: number) => rss(step(0.1) / reading, 0.008);

  test('efficiency of red alone: scaled by the peaks, which share the meter, the distance and the angle', () => {
    const efficiency = ((100 * power) / DRAW.red) * (PEAK.red / PEAK.combined);
    // Of the two bands red alone is left: near-infrared is in the power and in the peak of both, and cancels.
    const inRed = Math.sqrt(powerRelative ** 2 - 0.005 ** 2);
    const relative = rss(inRed, drawU(DRAW.red) / DRAW.red, peakOwn(PEAK.red), peakOwn(PEAK.combined));
    expectFigure(figures()('efficiency-red'), efficiency, efficiency * relative);
  });

  test('peak to mean', () => {
    const ratio = PEAK.combined / mean;
    expectFigure(figures()('peak-to-mean'), ratio, ratio * rss(peakOwn(PEAK.combined), meanOwn / mean));
  });

  test('peak irradiance', () => {
    const u = rss(0.02 * 52.5, 0.015 * 52.5, 0.005 * 52.5, 0.005 * 52.5, relativeDistance * 52.5, 52.5 * peakOwn(52.5));
    expectFigure(figures()('peak-irradiance-combined'), PEAK.combined, u);
  });

  test('radiant exposure and its time', () => {
    const figure = figures();
    // 36.6 mW/cm² for 60 s are 2.2 J/cm².
    expectFigure(figure('radiant-exposure-minute'), (mean * 60) / 1000, (meanU * 60) / 1000);
    expectQuotient(figure('time-per-joule'), 1000 / mean, meanU / mean);
  });

  test('evenness: lowest, highest and spread over the mean', () => {
    const figure = figures();
    expect(figure('uniformity-lowest').value).toBeCloseTo((100 * 30.6) / mean, 9);
    expect(figure('uniformity-highest').value).toBeCloseTo((100 * 50.0) / mean, 9);
    const s = Math.sqrt(sum(GRID.map((it) => (it - mean) ** 2)) / 8);
    expect(figure('uniformity-variation').value).toBeCloseTo((100 * s) / mean, 9);
  });

  test('mean by cells: each point stands for the part of the field nearest to it', () => {
    // Points at 2.54, 10 and 17.46 cm across; cells meet at 6.27 and 13.73 cm. Down: 2.54, 15, 27.46; 8.77, 21.23 cm.
    const across = [6.27 / 20, (13.73 - 6.27) / 20, 6.27 / 20];
    const down = [8.77 / 30, (21.23 - 8.77) / 30, 8.77 / 30];
    const weights = down.flatMap((dy) => across.map((dx) => dx * dy));
    expect(sum(weights)).toBeCloseTo(1, 12);
    const value = sum(GRID.map((it, i) => it * (weights[i] as number)));
    expect(figures()('mean-irradiance-by-cells').value).toBeCloseTo(value, 9);
  });

  test('every figure says which session, which method and which readings it is from', () => {
    const it = figures()('optical-power');
    expect(it.id).toBe('plover/2026-10-01/optical-power');
    expect(it.method).toBe(methodReference('optical-power'));
    expect(it.inputs).toEqual(['plover/2026-10-01/mean-irradiance', 'plover/led-area']);
    expect(it.calculation).toBe('P = Ē × A ÷ 1000 = 36.62 mW/cm² × 600 cm² ÷ 1000 = 21.97 W');
  });
});

describe('a panel with repeats at each point', () => {
  // Point means 40, 30, 50 and 20; standard deviations 0.1, 0.2, 0.1 and 0.2 from three readings each.
  const rows = (instrument: string) => {
    content.edit('guide.yaml', 'distanceSetting: 2 mm', 'distanceSetting: 0');
    content.write('instruments/thermopile.yaml', instrument);
    content.write(
      FILE,
      `---
maker: wrackline
model: Plover
status: published
sessions:
  - date: 2026-10-01
    methodVersion: 1
    instruments: { irradiance: thermopile }
    grid:
      rows:
        - [[39.9, 40.0, 40.1], [29.8, 30.0, 30.2]]
        - [[49.9, 50.0, 50.1], [19.8, 20.0, 20.2]]
---
`,
    );
  };
  const instrument = (relative: number) => `name: Thermopile
measures: irradiance
unit: mW/cm2
range: { from: 0.1, to: 300 }
response: Flat.
resolution: 0
calibrations:
  - { date: 2026-01-15, validMonths: 24, relative: ${relative}, reference: Invented }
spectralResponse: { red: 0, nearInfrared: 0 }
angularResponse: { f2: 0 }
`;
  const pooled = Math.sqrt((0.01 + 0.04 + 0.01 + 0.04) / 4);
  // Four point means of three readings each, with equal weights.
  const typeA = pooled / Math.sqrt(12);

  test('type A only: the pooled scatter within points, with eight degrees of freedom', () => {
    // Content refuses an exact calibration; this one is too small to show.
    rows(instrument(1e-12));
    // t(0.975, 8) = 2.306004, any table of Student's t (from memory; printed 2.31 in JCGM 100:2008, table G.2).
    const it = figures()('mean-irradiance');
    expectFigure(it, 35, typeA, 2.306004);
    expect(it.degreesOfFreedom).toBe(8);
    expect(it.standardUncertainty).toBeCloseTo(0.0456435, 7);
  });

  test('with half as much of type B: 12.5 effective degrees of freedom, cut to 12', () => {
    // u_B = 0.5 u_A: ν = 8 (1 + 0.25)² = 12.5. Stated at k = 2, in per cent of 35.
    rows(instrument((200 * 0.5 * typeA) / 35));
    const it = figures()('mean-irradiance');
    // t(0.975, 12) = 2.178813 (from memory).
    expectFigure(it, 35, typeA * Math.sqrt(1.25), 2.178813);
    expect(it.degreesOfFreedom).toBe(12);
  });

  test('the spread between the points, hundreds of times larger, is no part of it', () => {
    // Content refuses an exact calibration; this one is too small to show.
    rows(instrument(1e-12));
    const it = figures()('uniformity-variation');
    // s of 40, 30, 50, 20 about 35: the root of 500/3.
    expect(it.value).toBeCloseTo((100 * Math.sqrt(500 / 3)) / 35, 9);
  });
});
