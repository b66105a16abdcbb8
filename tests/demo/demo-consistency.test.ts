/**
 * The demo panels against the sources that they were simulated from (tests/support/demo-specs.ts): nobody has to
 * believe the demo numbers, and a slip of the hand in a file shows. Nothing of src/measure is used here.
 */
import { globSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';

import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { type Panel, panelSchema } from '../../src/content/schema/panel.ts';
import type { GridPoint, Session } from '../../src/content/schema/session.ts';
import { DEMO_SOURCE } from '../support/demo-folder.ts';
import { DEMO, type DemoPanel, type DemoSession } from '../support/demo-specs.ts';
import { CHANNELS, placeLeds } from '../support/light-source.ts';
import {
  type Bench,
  beyondPlace,
  gridPoints,
  lightAt,
  MODES,
  sessionTruth,
  trueDraw,
} from '../support/simulate-panel.ts';

const folder = join(DEMO_SOURCE, 'panels');
/** The day on which the demo was written; no date in it lies after it. */
const WRITTEN = '2026-11-25';
/** Standard deviations that a reading may be off before it counts as a slip: one in 16,000 is, of some 300. */
const SIGMAS = 4;

function readPanel(file: string): Panel {
  const front = /^---\n(?<yaml>[\s\S]*?\n)---\n/.exec(readFileSync(join(folder, file), 'utf8'))?.groups?.yaml;
  return panelSchema.parse(parse(front ?? ''));
}

const panels = new Map(
  globSync('*/index.{md,mdx}', { cwd: folder }).map((file) => [basename(dirname(file)), readPanel(file)]),
);

/** The readings of a point that were kept, mW/cm². */
function accepted(point: GridPoint): number[] {
  return (Array.isArray(point) ? point : [point]).flatMap((it) => ('struck' in it ? [] : [it.value]));
}

function struck(point: GridPoint): number[] {
  return (Array.isArray(point) ? point : [point]).flatMap((it) => ('struck' in it ? [it.value.value] : []));
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Bounds between which the meter must show a light that is `at(distance)`, with the distance set as well as it is. */
function readingBounds(bench: Bench, at: (distance: number) => number): [number, number] {
  const { calibration, repeatability, resolution } = bench.irradiance;
  const ends = [at(bench.distance - bench.distanceSetting), at(bench.distance + bench.distanceSetting)];
  const shown = (light: number, side: number) =>
    light * (1 + calibration) * (1 + side * SIGMAS * repeatability) + (side * resolution) / 2;
  return [shown(Math.min(...ends), -1), shown(Math.max(...ends), 1)];
}

interface Case {
  slug: string;
  panel: Panel;
  demo: DemoPanel;
  session: Session;
  spec: DemoSession;
}

const cases: Case[] = [...panels].flatMap(([slug, panel]) =>
  (DEMO[slug]?.sessions ?? []).flatMap((spec) => {
    const session = panel.sessions.find((one) => one.date === spec.date);
    return session ? [{ slug, panel, demo: DEMO[slug] as DemoPanel, session, spec }] : [];
  }),
);
const gridCases = cases.filter((it) => it.session.grid);
const named = (list: Case[]) => list.map((it) => [`${it.slug} on ${it.spec.date}`, it] as const);

describe('every demo panel has a source', () => {
  it('for each folder and each session, and no source is left over', () => {
    const sessions = (all: Iterable<[string, { sessions: { date: string }[] }]>) =>
      [...all].flatMap(([slug, it]) => it.sessions.map((session) => `${slug} ${session.date}`)).sort();
    expect(sessions(panels)).toEqual(sessions(Object.entries(DEMO)));
    expect(gridCases.length).toBeGreaterThanOrEqual(13);
  });

  it.each([...panels])('%s has the field and the LEDs of its source', (slug, panel) => {
    const source = DEMO[slug]?.truth.source;
    expect(panel.field?.width.value).toBeCloseTo(source?.width ?? Number.NaN, 6);
    expect(panel.field?.height.value).toBeCloseTo(source?.height ?? Number.NaN, 6);
    expect(panel.claims?.ledCount).toBe((source?.columns ?? 0) * (source?.rows ?? 0));
    if (!panel.leds) return;
    expect([panel.leds.columns, panel.leds.rows]).toEqual([source?.columns, source?.rows]);
    if (panel.leds.size) expect(panel.leds.size.value).toBeCloseTo(source?.ledSize ?? Number.NaN, 6);
  });
});

describe.each(named(cases))('%s', (_name, { demo, session, spec, panel }) => {
  const { truth } = demo;
  const { bench } = spec;
  const leds = placeLeds(truth.source);
  const lightOf = (mode: 'red' | 'nearInfrared' | 'combined', x: number, y: number) => (distance: number) =>
    lightAt(truth, leds, { x, y, distance }, bench.output, bench.irradiance.receiver)[mode];

  it('is a plausible panel of its size', () => {
    const { draw, lightShare } = sessionTruth(truth, bench);
    expect(lightShare).toBeGreaterThan(0.3);
    expect(lightShare).toBeLessThan(0.55);
    const area = truth.source.width * truth.source.height;
    const [least, most] = area <= 200 ? [10, 30] : area <= 700 ? [60, 200] : area <= 2000 ? [200, 600] : [600, 1500];
    expect(draw).toBeGreaterThan(least as number);
    expect(draw).toBeLessThan(most as number);
  });

  it('was read at the distance, inset and grid of its source', () => {
    expect(session.distance?.value ?? 15.24).toBeCloseTo(bench.distance, 6);
    if (!session.grid) return;
    expect(session.grid.inset.value).toBeCloseTo(bench.inset, 6);
    expect(session.grid.rows.map((row) => row.length)).toEqual(Array(bench.grid.rows).fill(bench.grid.columns));
  });

  it('has the mains draw of its source', () => {
    const draw = trueDraw(truth);
    const { calibration, repeatability, resolution } = bench.mains;
    for (const mode of [...MODES, 'standby'] as const) {
      const read = session.mains?.[mode];
      if (!read) continue;
      const expected = draw[mode] * (1 + calibration);
      expect(Math.abs(read.value - expected), mode).toBeLessThan(SIGMAS * repeatability * expected + resolution);
    }
  });

  it('has peaks near the brightest place of its source, and modes that add up', () => {
    const { width, height } = truth.source;
    const raster = (length: number) => Array.from({ length: 41 }, (_, i) => length * (i / 40 - 0.5));
    for (const mode of MODES) {
      const read = session.peak?.[mode];
      if (!read) continue;
      const brightest = (distance: number) =>
        Math.max(...raster(width).flatMap((x) => raster(height).map((y) => lightOf(mode, x, y)(distance))));
      const [low, high] = readingBounds(bench, brightest);
      expect(read.value, mode).toBeGreaterThan(low);
      expect(read.value, mode).toBeLessThan(high);
    }
    const { red, nearInfrared, combined } = session.peak ?? {};
    if (!red || !nearInfrared || !combined) return;
    expect(Math.abs((red.value + nearInfrared.value) / combined.value - 1)).toBeLessThan(0.15);
  });

  it('has the wavelengths and the flicker of its source', () => {
    for (const channel of CHANNELS) {
      const read = session.wavelengths?.[channel];
      if (!read) continue;
      // Read with a standard deviation of 0.3 nm, shown in half nanometres.
      expect(Math.abs(read.peak.value - truth.wavelengths[channel].peak), channel).toBeLessThan(SIGMAS * 0.3 + 0.25);
      expect(Math.abs((read.fwhm?.value ?? 0) - truth.wavelengths[channel].fwhm)).toBeLessThan(SIGMAS * 0.3 + 0.25);
    }
    for (const mode of MODES) {
      const read = session.flicker?.[mode];
      if (!read) continue;
      if (read.frequency) expect(read.frequency.value, mode).toBe(truth.flicker.frequency);
      const { value, bound } = read.percent;
      if (bound === 'below') expect(truth.flicker.percent, mode).toBeLessThan(value);
      // Read to 2 %, shown in tenths.
      else expect(Math.abs(value - truth.flicker.percent), mode).toBeLessThan(SIGMAS * 0.02 * value + 0.05);
    }
  });

  it.runIf(session.grid)('has grid readings of its source, within noise', () => {
    const places = gridPoints(truth.source, bench.grid, bench.inset);
    session.grid?.rows.forEach((row, r) => {
      row.forEach((point, c) => {
        const place = places[r]?.[c];
        if (!place) throw new Error('a point that the grid of the source does not have');
        const [low, high] = readingBounds(bench, lightOf('combined', place.x, place.y));
        expect(accepted(point)).toHaveLength(bench.grid.repeats);
        for (const value of accepted(point)) {
          expect(value, `row ${r + 1}, point ${c + 1}`).toBeGreaterThan(low);
          expect(value, `row ${r + 1}, point ${c + 1}`).toBeLessThan(high);
        }
        // A reading is struck out because it is not of this source.
        for (const value of struck(point)) expect(value < low || value > high).toBe(true);
      });
    });
  });

  it('was read on the axis at the distances of its source, within noise', () => {
    expect(session.distances?.map((it) => it.distance.value)).toEqual(bench.distances);
    for (const { distance, ...readings } of session.distances ?? []) {
      for (const [key, mode] of [
        ['centre', 'combined'],
        ['red', 'red'],
        ['nearInfrared', 'nearInfrared'],
      ] as const) {
        const [low, high] = readingBounds({ ...bench, distance: distance.value }, lightOf(mode, 0, 0));
        const point = readings[key];
        for (const value of point === undefined ? [] : accepted(point)) {
          expect(value, `${distance.written}, ${mode}`).toBeGreaterThan(low);
          expect(value, `${distance.written}, ${mode}`).toBeLessThan(high);
        }
      }
    }
  });

  it('was read past the edges where its source was, within noise, and follows the version that asks for it', () => {
    const places = session.beyond ?? [];
    expect(session.methodVersion).toBe(bench.beyond ? 2 : 1);
    expect(places.map((it) => [it.edge, it.past.value])).toEqual((bench.beyond ?? []).map((it) => [it.edge, it.past]));
    const { room = 0, placing = 0 } = bench;
    places.forEach(({ edge, past, on, off }, i) => {
      const { repeats = 1, off: isOffRead = false } = bench.beyond?.[i] ?? {};
      // Brightest and dimmest of where the place may lie; the room's light is there in both.
      const spot = (aside: number) => {
        const { x, y } = beyondPlace(truth.source, edge, past.value + aside);
        return (distance: number) => lightOf('combined', x, y)(distance) + room;
      };
      const [near, far] = [readingBounds(bench, spot(-placing)), readingBounds(bench, spot(placing))];
      const [low, high] = [Math.min(near[0], far[0]), Math.max(near[1], far[1])];
      const shown = (Array.isArray(on) ? on : [on]).flatMap((it) => ('struck' in it ? [] : [it]));
      expect(shown, past.written).toHaveLength(repeats);
      for (const { value, bound } of shown) {
        if (bound === undefined) {
          expect(value, `${past.written} past the ${edge} edge`).toBeGreaterThan(low);
          expect(value, `${past.written} past the ${edge} edge`).toBeLessThan(high);
        } else {
          expect(value).toBe(bench.irradiance.floor);
          expect(low, `${past.written} past the ${edge} edge`).toBeLessThan(value);
        }
      }
      for (const value of struck(on)) expect(value < low || value > high).toBe(true);
      expect(off !== undefined, past.written).toBe(isOffRead);
      if (off?.bound) expect(room).toBeLessThan(off.value);
      else if (off) expect(Math.abs(off.value - room * (1 + bench.irradiance.calibration))).toBeLessThan(0.06);
    });
  });

  it.runIf(session.grid)('is weaker at the edge than in the middle', () => {
    const rows = session.grid?.rows.map((row) => row.map((point) => mean(accepted(point)))) ?? [];
    const edge: number[] = [];
    const inner: number[] = [];
    rows.forEach((row, r) => {
      row.forEach((value, c) => {
        const outer = r === 0 || c === 0 || r === rows.length - 1 || c === row.length - 1;
        (outer ? edge : inner).push(value);
      });
    });
    expect(Math.max(...edge)).toBeLessThan(Math.max(...inner));
    expect(mean(edge)).toBeLessThan(mean(inner));
  });

  it.runIf(session.grid)('turns 8 to 45 % of its draw into light through the LED area', () => {
    const light = mean((session.grid?.rows.flat() ?? []).map((point) => mean(accepted(point))));
    const area = (panel.field?.width.value ?? 0) * (panel.field?.height.value ?? 0);
    // Where the draw was not read, that of the source stands in.
    const draw = session.mains?.combined?.value ?? trueDraw(truth).combined;
    const efficiency = (light * area) / 1000 / draw;
    expect(efficiency).toBeGreaterThan(0.08);
    expect(efficiency).toBeLessThan(0.45);
    // More can't pass through the rectangle than left the LEDs; the meter's own error aside.
    expect((light * area) / 1000).toBeLessThan(sessionTruth(truth, bench).emitted * 1.05);
  });
});

describe('dates', () => {
  it('none lies after the day on which the demo was written', () => {
    const dates = [...panels.values()].flatMap((panel) => [...panel.prices, ...panel.sessions].map((it) => it.date));
    expect(dates.filter((date) => date > WRITTEN)).toEqual([]);
  });
});

describe('what the demo has to show is there', () => {
  const all = [...panels.values()];
  const points = (panel: Panel) => panel.sessions.flatMap((session) => session.grid?.rows.flat() ?? []);
  const examples: Array<[string, (panel: Panel) => boolean]> = [
    ['a reading struck out', (panel) => points(panel).some((point) => struck(point).length > 0)],
    [
      'repeats at every point',
      (panel) => points(panel).length > 0 && points(panel).every((point) => accepted(point).length > 1),
    ],
    ['a grid that is not 3 x 3', (panel) => panel.sessions.some((it) => it.grid && it.grid.rows.length !== 3)],
    ['readings past the edges', (panel) => panel.sessions.some((it) => (it.beyond?.length ?? 0) >= 6)],
    [
      'a reading past the edges that stays under the first step',
      (panel) => panel.sessions.some((it) => it.beyond?.some(({ on }) => 'bound' in on && on.bound === 'below')),
    ],
    ['another distance', (panel) => panel.sessions.some((it) => it.distance && it.distance.value > 20)],
    ['two sessions', (panel) => panel.sessions.length === 2],
    ['readings carried over', (panel) => panel.sessions.some((it) => it.carried !== undefined)],
    ['a name of before', (panel) => panel.formerly !== undefined],
    ['three prices', (panel) => panel.prices.length === 3],
    ['a price in another currency', (panel) => panel.prices.some((it) => it.currency !== 'EUR')],
    ['a draft', (panel) => panel.status === 'draft'],
    ['a withdrawn panel', (panel) => panel.status === 'withdrawn'],
    ['one given by the maker', (panel) => panel.obtained?.how === 'given'],
    ['one lent by the maker', (panel) => panel.obtained?.how === 'lent'],
    ['flicker at 100 Hz', (panel) => panel.sessions.some((it) => it.flicker?.combined?.frequency?.value === 100)],
    [
      'a reading below what the meter shows',
      (panel) => panel.sessions.some((it) => it.magnetic?.on?.bound === 'below'),
    ],
    [
      'a wavelength more than 10 nm off its claim',
      (panel) =>
        panel.sessions.some(({ wavelengths }) =>
          [wavelengths?.red, wavelengths?.nearInfrared].some(
            (read) =>
              read && panel.claims?.wavelengths?.every(({ peak }) => Math.abs(peak.value - read.peak.value) > 10),
          ),
        ),
    ],
    [
      'an irradiance claim missed by half',
      (panel) =>
        panel.sessions.some(
          (it) => (it.peak?.combined?.value ?? Infinity) < 0.5 * (panel.claims?.irradiance?.value.value ?? 0),
        ),
    ],
    [
      'most readings missing',
      (panel) => panel.status === 'published' && panel.sessions.every((it) => !it.mains && !it.wavelengths),
    ],
    [
      'a hot middle',
      (panel) =>
        points(panel).some(
          (point) => mean(accepted(point)) > 1.8 * mean(points(panel).map((it) => mean(accepted(it)))),
        ),
    ],
  ];
  it.each(examples)('%s', (_what, holds) => {
    expect(all.filter(holds).length).toBeGreaterThan(0);
  });
});

describe('readings past the edges', () => {
  const current = [...panels].map(([slug, panel]) => ({
    slug,
    panel,
    newest: panel.sessions.toSorted((a, b) => b.date.localeCompare(a.date))[0],
  }));
  const withThem = current.filter((it) => it.newest?.beyond);

  it('were taken of more than half of the panels, of every maker and in every size', () => {
    expect([withThem.length, current.length]).toEqual([8, 14]);
    expect(withThem.every((it) => it.panel.status === 'published')).toBe(true);
    const makers = (list: typeof current) => new Set(list.map((it) => it.panel.maker));
    expect(makers(withThem)).toEqual(makers(current));
    // The guide's classes end at these areas, cm2.
    const classOf = ({ panel: { field } }: (typeof current)[number]) => {
      const area = (field?.width.value ?? 0) * (field?.height.value ?? 0);
      return [200, 700, 2000].filter((edge) => area > edge).length;
    };
    expect(new Set(withThem.map(classOf))).toEqual(new Set([0, 1, 2, 3]));
  });
});
