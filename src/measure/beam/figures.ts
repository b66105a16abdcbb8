import { type Figure, type FigureOrGap, gap, type Unassessed } from '../figure.ts';
import { correctionNotes } from '../instrument/corrected-reading.ts';
import { type Instrument, missingRepeatability } from '../instrument/instrument.ts';
import { type ModeLight, SHARES_UNKNOWN } from '../instrument/spectral-response.ts';
import { missingOfLight } from '../irradiance/light-errors.ts';
import { identityOf, type MetricIdentity } from '../metrics.ts';
import { pricePerWatt } from '../money/cost.ts';
import { number } from '../numbers.ts';
import type { Statement } from '../statement.ts';
import { exactOver, makeFigure, productFigure, withInterval } from '../uncertainty.ts';
import type { BeamSource } from './optics-input.ts';
import type { Estimate, OpticsResult } from './optics-result.ts';
import type { Spread } from './spread.ts';
import { type DistanceQuantity, distanceMetric, TABLE_DISTANCES } from './table-distances.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** Left out of every budget: LEDs that differ in more than their power. */
    'beam-unlike-leds': object;
    'beam-leds-alike': object;
    /** What the light that misses the frame rests on. */
    'beam-past-frame': { source: BeamSource };
  }
}

/** What the figures are told besides the result. */
export interface OpticsContext {
  /** `<panel>/<date>` */
  session: string;
  instrument: Instrument;
  /** How its light is shared out, and what its readings were corrected by. */
  bands?: ModeLight;
  /** Ids of the figures and paths of the readings that went in. */
  inputs: readonly string[];
  /** What was assumed of the panel. */
  notes: readonly Statement[];
  /** The common figure that the emitted power corrects, where there is one. */
  power?: Figure;
}

/** All figures of a session's light. */
export interface OpticsFigures {
  halfAngle: FigureOrGap;
  samplingBias: FigureOrGap;
  capture: FigureOrGap;
  emitted: FigureOrGap;
  /** Peak and evenness are gaps where single LEDs may show and nobody knows where they are. */
  distances: Array<{ distance: number; mean: Figure; peak: FigureOrGap; evenness: FigureOrGap }>;
}

const METRICS = {
  halfAngle: 'beam-half-angle',
  samplingBias: 'sampling-bias',
  capture: 'capture',
  emitted: 'emitted-power',
} as const;

/** The same gap for every figure. */
export function opticsGaps(reason: Statement): OpticsFigures {
  return {
    halfAngle: gap(METRICS.halfAngle, reason),
    samplingBias: gap(METRICS.samplingBias, reason),
    capture: gap(METRICS.capture, reason),
    emitted: gap(METRICS.emitted, reason),
    distances: [],
  };
}

/** What no budget of these figures holds. */
const ALIKE: Unassessed = {
  what: { code: 'beam-unlike-leds' },
  reason: { code: 'beam-leds-alike' },
};

/** The result of `estimatePanel` as figures; gaps with the reason where nothing came of it. */
export function opticsFigures(result: OpticsResult, context: OpticsContext): OpticsFigures {
  if (!result.estimates) return opticsGaps(result.withheld);
  const { session, instrument, inputs, power, bands = SHARES_UNKNOWN } = context;
  const { source, halfAngle, samplingBias, strayShare = 0, capture, emitted, targets } = result.estimates;
  const notes: Statement[] = [...context.notes, { code: 'beam-past-frame', source }, ...correctionNotes(bands)];
  const unassessed = [
    ALIKE,
    ...missingOfLight(instrument, bands.mismatch ? bands : SHARES_UNKNOWN),
    ...missingRepeatability(instrument),
  ];
  const make = (
    identity: MetricIdentity,
    estimate: Estimate,
    rest: { calculation?: string; lowest?: number; factor?: number; shift?: number } = {},
  ): Figure => {
    const { calculation, lowest = 0, factor = 1, shift = 0 } = rest;
    return modelled(
      {
        ...identity,
        basis: 'modelled',
        inputs: [...inputs],
        notes,
        lowest,
        ...(calculation && { calculation }),
      },
      estimate,
      { unassessed, factor, shift },
    );
  };

  const percent = 100;
  return {
    halfAngle: make(identityOf(METRICS.halfAngle, session), halfAngle),
    samplingBias: samplingBias
      ? make(identityOf(METRICS.samplingBias, session), samplingBias, {
          factor: percent,
          shift: -percent,
          lowest: -percent,
        })
      : gap(METRICS.samplingBias, { code: 'grid-not-measured' }),
    capture: make(identityOf(METRICS.capture, session), capture, { factor: percent }),
    emitted: make(identityOf(METRICS.emitted, session), emitted, {
      ...(power &&
        samplingBias && {
          calculation: `Φ = P (1 − s) ÷ (b κ) = ${number(power.value)} W × (1 − ${number(strayShare, 2)}) ÷ (${number(samplingBias.value)} × ${number(capture.value)}) = ${number(emitted.value)} W`,
        }),
    }),
    distances: targets.map((target) => {
      const { distance } = target;
      const at = (quantity: DistanceQuantity) => distanceMetric(quantity, distance);
      const mean = make(identityAt('mean-irradiance', distance, session), target.mean);
      if (target.peakAbsent) {
        const peak = gap(at('peak-irradiance'), target.peakAbsent);
        return { distance, mean, peak, evenness: gap(at('uniformity-lowest'), target.peakAbsent) };
      }
      return {
        distance,
        mean,
        peak: make(identityAt('peak-irradiance', distance, session), target.peak),
        evenness: make(identityAt('uniformity-lowest', distance, session), target.evenness, { factor: percent }),
      };
    }),
  };
}

/**
 * What a figure of the distance table is. The distance of the readings is not one of the table's and has no row in the
 * catalogue; unit and method are the same at every distance.
 */
function identityAt(quantity: DistanceQuantity, distance: number, session: string): MetricIdentity {
  const metric = distanceMetric(quantity, distance);
  const row = distanceMetric(quantity, TABLE_DISTANCES[0]);
  return { ...identityOf(row, session), id: `${session}/${metric}`, metric };
}

/**
 * A figure from an estimate: uncertainty and interval are those of the simulation. The coverage factor is half of the
 * interval over the standard uncertainty.
 */
function modelled(
  identity: Parameters<typeof makeFigure>[0],
  estimate: Estimate,
  rest: { unassessed: Unassessed[]; factor: number; shift: number },
): Figure {
  const { factor, shift, unassessed } = rest;
  const budget = estimate.budget.map(({ source, contribution }) => ({ source, contribution: factor * contribution }));
  const u = factor * estimate.standardUncertainty;
  const [low, high] = estimate.interval95;
  return {
    ...makeFigure(identity, factor * estimate.value + shift, { budget, unassessed }),
    standardUncertainty: u,
    interval95: [factor * low + shift, factor * high + shift],
    coverageFactor: u > 0 ? (factor * (high - low)) / (2 * u) : null,
  };
}

/**
 * Efficiency on the emitted power, %: both channels on.
 *
 * @param spread of emitted power over mains draw, by the simulation; where there is none (the uncertainty of the draw
 *   is not known) the figure's follows from its inputs
 */
export function emittedEfficiencyFigure(session: string, emitted: Figure, draw: Figure, spread?: Spread): Figure {
  const figure = productFigure(
    {
      ...identityOf('efficiency-emitted', session),
      basis: 'modelled',
      calculation: `η = Φ ÷ W = ${number(emitted.value)} W ÷ ${number(draw.value)} W = ${number((100 * emitted.value) / draw.value)} %`,
    },
    [
      { figure: emitted, power: 1 },
      { figure: draw, power: -1 },
    ],
    100,
  );
  if (!spread || figure.standardUncertainty === null) return figure;
  const [low, high] = spread.interval95;
  return withInterval(figure, 100 * spread.standardUncertainty, [100 * low, 100 * high]);
}

/**
 * Price per emitted watt, base currency a W. A price is exact, so the ends of its interval are those of the emitted
 * power's simulation.
 */
export function pricePerEmittedWattFigure(
  session: string,
  price: Figure,
  emitted: Figure,
  baseCurrency: string,
): Figure {
  const value = pricePerWatt(price.value, emitted.value);
  return exactOver(
    {
      ...identityOf('price-per-emitted-watt', session),
      basis: 'modelled',
      calculation: `c = C ÷ Φ = ${number(price.value, 7)} ${baseCurrency} ÷ ${number(emitted.value)} W = ${number(value)} ${baseCurrency}/W`,
    },
    price,
    emitted,
  );
}
