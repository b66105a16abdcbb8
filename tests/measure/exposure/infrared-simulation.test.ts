/**
 * The published ends of the infrared share against simulated panels whose channels have beams of their own: a plain sum
 * of LEDs (tests/support/light-source.ts) that shares no code with the bounds. Fixed seeds, so the counts are the same in
 * every run.
 */
import { randomNormal } from 'd3-random';
import { describe, expect, test } from 'vitest';
import type { Session } from '../../../src/content/schema/session.ts';
import { axisInfrared } from '../../../src/ledger/axis-infrared.ts';
import { cautiousEnd } from '../../../src/measure/exposure/cautious-end.ts';
import type { EyeDistance } from '../../../src/measure/exposure/eye-distances.ts';
import { nearInfraredFromMode } from '../../../src/measure/exposure/infrared-results.ts';
import { type Infrared, shareAt } from '../../../src/measure/exposure/infrared-shares.ts';
import { NEAR_INFRARED_ALONE } from '../../../src/measure/instrument/spectral-response.ts';
import { readingFigure } from '../../../src/measure/reading.ts';
import {
  channelIrradiance,
  type Led,
  type LightSource,
  lambertianExponent,
  placeLeds,
  uniformSource,
} from '../../support/light-source.ts';
import { figureOf, instrument } from '../make.ts';

const REFERENCE = 15.24;
const INSTRUMENT = instrument({ calibrationRelative: 0.02, repeatability: 0.008, resolution: 0.1 });
/** The same in the simulated bench. */
const BENCH = { calibration: 0.02, repeatability: 0.008, distance: 0.2, receiver: 1 };

interface Panel {
  source: LightSource;
  leds: Led[];
  /** Half-angles of the channels, degrees. */
  red: number;
  nearInfrared: number;
}

/** Panels of many sizes, layouts and spreads, whose near-infrared beam is `ratio` times as wide as the red one. */
function panels(count: number, seed: number, ratio: readonly [number, number]): Panel[] {
  const uniform = uniformSource(seed);
  const between = (from: number, to: number) => from + (to - from) * uniform();
  return Array.from({ length: count }, (_, i) => {
    const columns = Math.round(between(3, 9));
    const rows = Math.round(between(4, 14));
    const pitch = between(1.6, 3.2);
    const wide = between(20, 60);
    const narrow = wide * between(ratio[0], ratio[1]);
    const source: LightSource = {
      width: (columns - 1) * pitch + 0.9,
      height: (rows - 1) * pitch + 0.9,
      columns,
      rows,
      ledSize: 0.9,
      layout: uniform() < 0.5 ? 'alternate' : 'dual',
      halfAngle: wide,
      power: { red: 0.3 * columns * rows, nearInfrared: 0.3 * columns * rows },
      together: 0.96,
      spread: between(0.02, 0.08),
      ...(uniform() < 0.3 && { hotMiddle: between(0.1, 0.6) }),
      seed: seed + i,
    };
    return { source, leds: placeLeds(source), red: wide, nearInfrared: narrow };
  });
}

/** Irradiance of both channels at a place, mW/cm². */
function light({ leds, red, nearInfrared }: Panel, x: number, y: number, distance: number, receiver = 1) {
  const at = { x, y, distance };
  return {
    red: channelIrradiance(leds, lambertianExponent(red), at, receiver).red,
    nearInfrared: channelIrradiance(leds, lambertianExponent(nearInfrared), at, receiver).nearInfrared,
  };
}

/** The highest before the middle or before any LED. */
function highest(panel: Panel, distance: number, of: (it: ReturnType<typeof light>) => number, receiver = 1): number {
  return Math.max(...[{ x: 0, y: 0 }, ...panel.leds].map(({ x, y }) => of(light(panel, x, y, distance, receiver))));
}

const infraredOf = (it: { nearInfrared: number }) => it.nearInfrared;

/** Reads a panel with near-infrared alone on: the highest over the face, and before the middle where asked for. */
function read(panel: Panel, seed: number, distances: readonly number[]): Infrared {
  const uniform = uniformSource(seed);
  const normal = randomNormal.source(uniform)(0, 1);
  const calibration = 1 + BENCH.calibration * normal();
  const show = (it: number) => Math.round(it * calibration * (1 + BENCH.repeatability * normal()) * 10) / 10;
  const set = (it: number) => it + BENCH.distance * (2 * uniform() - 1);
  const setting = { distance: REFERENCE, halfWidth: BENCH.distance, area: panel.source.width * panel.source.height };
  const reading = readingFigure({
    metric: 'peak-irradiance-near-infrared',
    value: show(highest(panel, set(REFERENCE), infraredOf, BENCH.receiver)),
    session: 'p/d',
    path: 'p/d/peak.nearInfrared',
    instrument: INSTRUMENT,
    distance: setting,
  });
  const quantity = (value: number, unit: string) => ({ value, unit, written: `${value} ${unit}` });
  const sweep = distances.map((it) => ({
    distance: quantity(it, 'cm'),
    nearInfrared: quantity(show(light(panel, 0, 0, set(it), BENCH.receiver).nearInfrared), 'mW/cm²'),
  }));
  const axis = axisInfrared(
    'p/d',
    { distances: sweep } as unknown as Session,
    setting,
    INSTRUMENT,
    NEAR_INFRARED_ALONE,
  );
  return nearInfraredFromMode(reading, REFERENCE, axis);
}

/** Shares of panels whose truth lies at or under the cautious end, and at or over the mild one. */
function held(all: readonly Panel[], distance: EyeDistance, sweep: readonly number[]) {
  let [under, over] = [0, 0];
  all.forEach((panel, i) => {
    const truth = 10 * highest(panel, distance, infraredOf);
    const { figure, there } = shareAt('p/d', read(panel, 7000 + i, sweep), distance);
    const it = figureOf(figure);
    if (truth <= (cautiousEnd(it, 'high') ?? 0)) under++;
    if (truth >= (there?.kind === 'range' ? there.low : (it.interval95?.[0] ?? 0))) over++;
  });
  return { under: under / all.length, over: over / all.length };
}

const COUNT = 150;
const NARROW = panels(COUNT, 41, [0.35, 0.8]);
const WIDE = panels(COUNT, 42, [1, 1.4]);

describe.each([
  ['narrower than red', NARROW],
  ['as wide as red or wider', WIDE],
])('near-infrared %s', (_, all) => {
  test.each([30, 60] as const)('without a sweep: at %d cm the truth lies in the range', (distance) => {
    const { under, over } = held(all, distance, []);
    expect(under).toBeGreaterThanOrEqual(0.97);
    expect(over).toBeGreaterThanOrEqual(0.97);
  });

  test.each([
    [30, [REFERENCE, 30, 60]],
    [60, [REFERENCE, 30, 60]],
    // Between readings, and beyond the last.
    [30, [REFERENCE, 20, 45]],
    [60, [REFERENCE, 20, 45]],
  ] as const)('with a sweep: at %d cm, read at %j, the truth lies at or under the cautious end', (distance, sweep) => {
    const { under, over } = held(all, distance, sweep);
    expect(under).toBeGreaterThanOrEqual(0.97);
    expect(over).toBeGreaterThanOrEqual(0.9);
  });
});

test('the beam of both channels together does not hold it where near-infrared is narrower', () => {
  // What the range took the place of, with a beam that is known exactly.
  const both = (it: { red: number; nearInfrared: number }) => it.red + it.nearInfrared;
  const missed = NARROW.filter((panel, i) => {
    const infrared = read(panel, 7000 + i, []);
    const high = cautiousEnd(figureOf(infrared.irradiance), 'high') ?? 0;
    const ratio = highest(panel, 60, both) / highest(panel, REFERENCE, both);
    return highest(panel, 60, infraredOf) > high * ratio;
  });
  expect(missed.length / NARROW.length).toBeGreaterThan(0.5);
});

describe('the bounds themselves, without any error of reading', () => {
  test.each([
    ['narrow', NARROW],
    ['wide', WIDE],
  ])('%s: the highest never grows with distance, and never falls faster than 1/d²', (_, all) => {
    for (const panel of all.slice(0, 40)) {
      const at = [8, 12, 15.24, 30, 60].map((distance) => ({ distance, it: highest(panel, distance, infraredOf) }));
      at.slice(1).forEach(({ distance, it }, i) => {
        const before = at[i] as (typeof at)[number];
        expect(it).toBeLessThanOrEqual(before.it * (1 + 1e-9));
        expect(it).toBeGreaterThanOrEqual(before.it * (before.distance / distance) ** 2 * (1 - 1e-9));
      });
    }
  });

  /** A second lobe on the same axis, as intensity over that of the first: added, or taken away for a dip or a flat top. */
  test.each([
    ['two lobes', [0.5, 3], true],
    ['a flat top', [-0.25, -0.1], true],
    // Brightest off its axis: there the upper bound holds still, the lower one need not.
    ['a dip on the axis', [-0.7, -0.4], false],
  ] as const)('hold for beams that are no power of the cosine: %s', (_, [least, most], isBrightestAhead) => {
    const uniform = uniformSource(99);
    for (const { source, leds, nearInfrared: wide } of WIDE.slice(0, 15)) {
      const [order, second] = [lambertianExponent(wide), lambertianExponent(wide * (0.3 + 0.3 * uniform()))];
      const share = ((least + (most - least) * uniform()) * (order + 1)) / (second + 1);
      const at = (x: number, y: number, distance: number) =>
        channelIrradiance(leds, order, { x, y, distance }).nearInfrared +
        share * channelIrradiance(leds, second, { x, y, distance }).nearInfrared;
      // Such beams can be brightest between LEDs, so the whole face is looked over.
      const raster = (length: number) => Array.from({ length: 25 }, (_, i) => (length + 4) * (i / 24 - 0.5));
      const [near, far] = [REFERENCE, 45].map((distance) =>
        Math.max(...raster(source.width).flatMap((x) => raster(source.height).map((y) => at(x, y, distance)))),
      ) as [number, number];
      expect(far).toBeLessThanOrEqual(near);
      if (isBrightestAhead) expect(far).toBeGreaterThanOrEqual(near * (REFERENCE / 45) ** 2 * (1 - 1e-9));
    }
  });

  test('before the middle alone it can grow: between two narrow beams far apart', () => {
    const source: LightSource = {
      width: 10.9,
      height: 0.9,
      columns: 2,
      rows: 1,
      ledSize: 0.9,
      layout: 'dual',
      halfAngle: 10,
      power: { red: 0, nearInfrared: 1 },
      together: 1,
      spread: 0,
      seed: 1,
    };
    const panel: Panel = { source, leds: placeLeds(source), red: 10, nearInfrared: 10 };
    expect(light(panel, 0, 0, 20).nearInfrared).toBeGreaterThan(2 * light(panel, 0, 0, 10).nearInfrared);
    expect(highest(panel, 20, infraredOf)).toBeLessThan(highest(panel, 10, infraredOf));
  });
});
