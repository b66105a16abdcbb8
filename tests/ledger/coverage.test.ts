/**
 * How often the 95 % intervals hold the truth when panels go through the whole pipeline: readings as texts, schema,
 * instrument files, ledger. The panels and their readings are from the independent simulator; every error is drawn
 * afresh for each panel from the distribution that the guide and the instrument files promise. LEDs differ by 4 %,
 * their size is not known, and the claimed beam angle is off by 10 % (standard deviation).
 *
 * By the binomial law the share of 90 panels scatters by 2.3 %, so that 82 of them (0.964) hold at least where 95 % do,
 * and 88 at most (0.943). A fall to 88 % is seen with a probability of 0.77, one to 86 % with 0.9. Intervals of corrected
 * figures carry beams of other shapes than these panels have and hold more often; 86 of 90 must, which is seen to fail with
 * a probability of 0.92 where 91 % hold, and to fail with 0.035 where 98 % do.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import type { Content } from '../../src/content/read/content.ts';
import { guideSchema } from '../../src/content/schema/guide.ts';
import { instrumentSchema } from '../../src/content/schema/instrument.ts';
import { makerSchema } from '../../src/content/schema/maker.ts';
import { panelSchema } from '../../src/content/schema/panel.ts';
import { panelContext } from '../../src/ledger/panel-context.ts';
import { panelEntry, type SinglePanel } from '../../src/ledger/panel-entry.ts';
import { workedLights } from '../../src/ledger/worked-lights.ts';
import { isFigure } from '../../src/measure/figure.ts';
import { metricNamed } from '../measure/make.ts';
import { CLASSES, type Dice, dice, drawPanel, type SizeClass } from '../support/draw-panel.ts';
import { placeLeds } from '../support/light-source.ts';
import {
  type Bench,
  gridPoints,
  lightAt,
  type PanelTruth,
  roundTo,
  STEADY_BENCH,
  simulateSession,
  trueDraw,
} from '../support/simulate-panel.ts';

const PANELS = 90;
const LEAST = 82 / PANELS;
const MOST = 88 / PANELS;
const LEAST_CORRECTED = 0.95;
const FEWEST_CORRECTED = 0.94 * PANELS;
const PRICE = 400;
const SWEEP = [10, 15.24, 20, 30, 45, 60, 90];

/** Standard uncertainties of the instrument files below, and half-widths of the guide's settings. */
const CALIBRATION = 0.02;
const F2 = 0.015;
const SPECTRAL = 0.01;
const REPEATABILITY = 0.008;
const WATTMETER = 0.005;
const EDGE_CM = 0.1;
const TAPE_STEP_CM = 0.1;

const calibration = (relative: number) => ({
  date: '2026-05-01',
  validMonths: 24,
  relative: 200 * relative,
  reference: 'None',
});
const instrument = (measures: string, unit: string, rest: object) =>
  instrumentSchema.parse({
    name: `Simulated ${measures}`,
    measures,
    unit,
    range: { from: 0, to: 4000 },
    response: 'The simulator’s.',
    ...rest,
  });

const CONTENT = {
  guide: {
    id: 'guide',
    data: guideSchema.parse({
      title: 'Coverage',
      tagline: 'Simulated panels',
      publisher: 'The tests',
      site: 'https://coverage.example',
      about: 'Simulated.',
      disclosure: 'None.',
      currency: 'EUR',
      tariff: { price: 0.3, date: '2026-05-01', source: 'Invented' },
      referenceDistance: '6 in',
      methodVersion: 1,
      distanceSetting: '2 mm',
      edgeSetting: `${EDGE_CM} cm`,
      sizeClasses: [{ id: 'all', name: 'All', description: 'Every panel.' }],
    }),
  },
  makers: new Map([['maker', { id: 'maker', data: makerSchema.parse({ name: 'Maker' }) }]]),
  panels: new Map(),
  standards: new Map(),
  instruments: new Map(
    [
      instrument('irradiance', 'mW/cm2', {
        resolution: 0.1,
        calibrations: [calibration(CALIBRATION)],
        spectralResponse: { red: 100 * SPECTRAL, nearInfrared: 100 * SPECTRAL },
        angularResponse: { f2: 100 * F2 },
        repeatability: 100 * REPEATABILITY,
      }),
      instrument('mains', 'W', {
        resolution: 0.1,
        calibrations: [calibration(WATTMETER)],
        repeatability: 0.2,
      }),
      instrument('length', 'cm', { resolution: TAPE_STEP_CM, calibrations: [calibration(0.0005)] }),
    ].map((data) => [data.quantities[0]?.measures, { id: data.quantities[0]?.measures, data }]),
  ),
  photos: new Map(),
  benchFiles: new Map(),
} as unknown as Content;

interface Simulated {
  panel: SinglePanel;
  plane: number;
  emitted: number;
  efficiency: number;
}

/**
 * A draw of the sensor's cosine: cos^(1 + d) with d from a normal distribution, so that f2, the integral of its error
 * times sin 2e to 85 degrees, is F2 at one standard uncertainty. It is 0.477667 d for a small d.
 */
const receiverOf = (draw: Dice) => 1 + (F2 / 0.477667) * draw.normal();

function simulated(index: number): Simulated {
  const draw = dice(4000 + index);
  const kind = CLASSES[index % CLASSES.length] as SizeClass;
  const drawn = drawPanel(draw, kind, index);
  const { hotMiddle: _, ...source } = drawn.source;
  const truth: PanelTruth = { ...drawn, source: { ...source, spread: 0.04 } };
  const leds = placeLeds(truth.source);
  const points = gridPoints(truth.source, STEADY_BENCH.grid, STEADY_BENCH.inset).flat();
  const { resolution, floor } = STEADY_BENCH.irradiance;
  const red = source.power.red / (source.power.red + source.power.nearInfrared);
  const bench: Bench = {
    ...STEADY_BENCH,
    distanceSetting: 0.2,
    irradiance: {
      floor,
      resolution,
      // The sensor errs in each band on its own, and so in both together by their shares of the light.
      calibration: CALIBRATION * draw.normal() + SPECTRAL * (red * draw.normal() + (1 - red) * draw.normal()),
      repeatability: REPEATABILITY,
      receiver: receiverOf(draw),
    },
    mains: { ...STEADY_BENCH.mains, calibration: WATTMETER * draw.normal(), repeatability: 0.002 },
    sweepStep: Math.max(truth.source.width, truth.source.height) / 4,
    ...(index % 3 === 0 && { distances: SWEEP }),
  };
  const { readings } = simulateSession(truth, bench, 9000 + index);
  const tape = (length: number) =>
    roundTo(length + EDGE_CM * (draw.between([-1, 1]) + draw.between([-1, 1])), TAPE_STEP_CM);
  const data = panelSchema.parse({
    maker: 'maker',
    model: `Model ${index}`,
    status: 'published',
    claims: {
      beamAngle: `${2 * truth.source.halfAngle * (1 + 0.1 * draw.normal())} deg`,
      ...(Math.floor(index / 4) % 2 === 0 && { ledCount: truth.source.columns * truth.source.rows }),
    },
    prices: [{ date: '2026-06-01', paid: PRICE, currency: 'EUR' }],
    field: { width: `${tape(truth.source.width)} cm`, height: `${tape(truth.source.height)} cm` },
    sessions: [
      {
        date: '2026-06-02',
        methodVersion: 1,
        instruments: { irradiance: 'irradiance', mains: 'mains', length: 'length' },
        peak: readings.peak,
        grid: { rows: readings.grid.map((row) => row.map(([value]) => `${value} mW/cm2`)) },
        ...(readings.distances && { distances: readings.distances }),
        mains: { combined: readings.mains.combined },
      },
    ],
  });
  const context = panelContext({ id: `panel-${index}`, data } as never, CONTENT, '2026-06-10');
  const panel = panelEntry(context, workedLights([context]));
  const mean =
    points.reduce((sum, it) => sum + lightAt(truth, leds, { ...it, distance: 15.24 }).combined, 0) / points.length;
  const { width, height, power, together } = truth.source;
  const emitted = together * (power.red + power.nearInfrared);
  return {
    panel,
    plane: (mean * width * height) / 1000,
    emitted,
    efficiency: (100 * emitted) / trueDraw(truth).combined,
  };
}

describe('how often the 95 % interval holds the truth, through the whole pipeline', () => {
  let all: Simulated[] = [];
  beforeAll(() => {
    all = Array.from({ length: PANELS }, (_, index) => simulated(index));
  }, 300_000);

  function coverage(metric: string, truth: (it: Simulated) => number): { share: number; known: number } {
    const known = all.flatMap((it) => {
      const figure = it.panel.figures.get(metricNamed(metric));
      if (!isFigure(figure) || !figure.interval95) return [];
      const [low, high] = figure.interval95;
      return [low <= truth(it) && truth(it) <= high];
    });
    return { share: known.filter(Boolean).length / known.length, known: known.length };
  }

  test.each<[string, (it: Simulated) => number, number]>([
    ['optical-power', (it) => it.plane, PANELS],
    ['price-per-watt', (it) => PRICE / it.plane, PANELS],
    ['emitted-power', (it) => it.emitted, FEWEST_CORRECTED],
    ['price-per-emitted-watt', (it) => PRICE / it.emitted, FEWEST_CORRECTED],
    ['efficiency-emitted', (it) => it.efficiency, FEWEST_CORRECTED],
  ])('%s', (metric, truth, least) => {
    const { share, known } = coverage(metric, truth);
    expect(known).toBeGreaterThanOrEqual(least);
    const isCorrected = /emitted/.test(metric);
    expect(share).toBeGreaterThanOrEqual(isCorrected ? LEAST_CORRECTED : LEAST);
    if (!isCorrected) expect(share).toBeLessThanOrEqual(MOST);
  });

  test('sweeps and grids alone are among them, and what is withheld has its reason', () => {
    const sources = all.map((it) => it.panel.current?.light.source);
    for (const source of ['sweep', 'grid'] as const) {
      expect(sources.filter((it) => it === source).length, source).toBeGreaterThan(PANELS / 8);
    }
    for (const { panel } of all) {
      const it = panel.figures.get('emitted-power');
      if (it && !isFigure(it)) expect(panel.flags.some((flag) => flag.check === 'beam-withheld')).toBe(true);
      expect(isFigure(panel.figures.get('optical-power'))).toBe(true);
    }
  });

  test('the common figure is no measure of what leaves the LEDs', () => {
    expect(coverage('optical-power', (it) => it.emitted).share).toBeLessThan(0.05);
  });
});
