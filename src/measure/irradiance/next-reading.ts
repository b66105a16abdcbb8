import type { BudgetComponent, Figure } from '../figure.ts';
import { isCode, type Statement, type StatementCode } from '../statement.ts';
import { combinedUncertainty, coverageFactor, type DegreesPart, effectiveDegreesOfFreedom } from '../uncertainty.ts';
import { pooledRepeats } from './repeats.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** Half-width of the 95 % interval of the mean, % of it: now, and with one more reading at each point. */
    'repeats-gain-little': { now: number; after: number };
    'repeats-would-gain': { now: number; after: number };
    /** No repeats, and the meter's file does not say how its readings scatter. */
    'repeats-tell-scatter': object;
    /**
     * What at the bench would narrow a figure most: share of its variance, half-width of its interval now and, without
     * that error, at best, both in % of it.
     */
    'worth-most': { metric: string; remedy: BenchRemedy; share: number; now: number; atBest: number };
    /** No reading narrows it: its largest error, and that one's share of the variance, %. */
    'bench-can-do-no-more': { metric: string; what: Statement; share: number; now: number };
  }
}

/** What a tester can do at the bench about an error. */
export type BenchRemedy = 'repeat' | 'finer-range' | 'distance' | 'edges' | 'beyond';

/** Half-widths of an interval, in the figure's unit. */
export interface Gain {
  now: number;
  after: number;
}

/** A half-width that shrinks by less than this share of itself is not worth the readings. Our own choice. */
export const WORTH_A_REPEAT = 0.05;
/** Share of the variance from which on an error is worth its remedy. Our own choice. */
export const WORTH_A_REMEDY = 0.1;

/**
 * What one more reading at each point of the grid would do to the 95 % interval of its mean. The scatter of the readings is
 * taken as it is known now: from the repeats (JCGM 100:2008, 4.2), or else from the meter's file; another reading at each
 * point divides it by more, and makes it surer. What all readings share stays.
 *
 * @param mean the mean of the grid with equal weights
 * @param points accepted readings of each point
 * @returns undefined where the uncertainty is not known, or nothing is known of the scatter
 */
export function gainOfRepeats(mean: Figure, points: ReadonlyArray<readonly number[]>): Gain | undefined {
  const scatter = mean.budget.find(isScatter);
  const read = points.filter((it) => it.length > 0);
  if (mean.standardUncertainty === null || mean.coverageFactor === null || !scatter || read.length === 0) {
    return undefined;
  }
  const others = mean.budget.filter((it) => it !== scatter);
  const known = pooledRepeats(read);
  // Of equal weights; where each point scatters by a share of its own reading, the points' squares are the weights.
  const weightOf = (readings: readonly number[]) =>
    known ? 1 : (readings.reduce((sum, it) => sum + it, 0) / readings.length) ** 2;
  const perReading = (more: number) => read.reduce((sum, it) => sum + weightOf(it) / (it.length + more), 0);
  const later: DegreesPart = {
    contribution: scatter.contribution * Math.sqrt(perReading(1) / perReading(0)),
    source: {
      degreesOfFreedom: (known?.degreesOfFreedom ?? read.reduce((sum, it) => sum + it.length - 1, 0)) + read.length,
    },
  };
  return {
    now: mean.coverageFactor * mean.standardUncertainty,
    after: halfWidth([...others, later]),
  };
}

const isScatter = ({ source: { what } }: BudgetComponent) =>
  isCode(what, 'repeatability') || isCode(what, 'repeats-at-a-point');

function halfWidth(parts: readonly DegreesPart[]): number {
  return coverageFactor(effectiveDegreesOfFreedom(parts)) * combinedUncertainty(parts.map((it) => it.contribution));
}

/** Whether more repeats are worth their time, for the tester. */
export function repeatAdvice(mean: Figure, points: ReadonlyArray<readonly number[]>): Statement | undefined {
  if (mean.standardUncertainty === null || mean.value === 0) return undefined;
  const gain = gainOfRepeats(mean, points);
  if (!gain) {
    return mean.unassessed.some(({ what }) => isCode(what, 'repeatability'))
      ? { code: 'repeats-tell-scatter' }
      : undefined;
  }
  const percent = { now: (100 * gain.now) / mean.value, after: (100 * gain.after) / mean.value };
  const isWorth = gain.now - gain.after > WORTH_A_REPEAT * gain.now;
  return { code: isWorth ? 'repeats-would-gain' : 'repeats-gain-little', ...percent };
}

const REMEDIES: Partial<Record<StatementCode, BenchRemedy>> = {
  repeatability: 'repeat',
  'repeats-at-a-point': 'repeat',
  resolution: 'finer-range',
  'distance-setting': 'distance',
  'edge-setting': 'edges',
  'beam-shape': 'beyond',
  'beam-rest': 'beyond',
};

/**
 * Which reading would narrow a figure most: that against the largest part of its budget, among those that something at the
 * bench can be done about. Where all of these together are small it says what the figure rests on instead.
 *
 * @param hasBeyond light past the edges has been read, so that the model has had what it can get
 */
export function worthMost(figure: Figure, hasBeyond: boolean): Statement | undefined {
  const { metric, value, budget, standardUncertainty: u, coverageFactor: k } = figure;
  if (u === null || k === null || u === 0 || value === 0) return undefined;
  const shareOf = (parts: readonly BudgetComponent[]) =>
    parts.reduce((sum, it) => sum + it.contribution ** 2, 0) / u ** 2;
  const now = (100 * k * u) / Math.abs(value);
  const remedies = Map.groupBy(budget, ({ source: { what } }) => {
    const remedy = REMEDIES[what.code];
    return remedy === 'beyond' && hasBeyond ? undefined : remedy;
  });
  const [best] = [...remedies]
    .flatMap(([remedy, parts]) => (remedy === undefined ? [] : [{ remedy, parts, share: shareOf(parts) }]))
    .toSorted((a, b) => b.share - a.share);
  if (best && best.share >= WORTH_A_REMEDY) {
    const left = budget.filter((it) => !best.parts.includes(it));
    const atBest = (100 * halfWidth(left)) / Math.abs(value);
    return { code: 'worth-most', metric, remedy: best.remedy, share: 100 * best.share, now, atBest };
  }
  const [largest] = budget.toSorted((a, b) => Math.abs(b.contribution) - Math.abs(a.contribution));
  if (!largest) return undefined;
  return { code: 'bench-can-do-no-more', metric, what: largest.source.what, share: 100 * shareOf([largest]), now };
}
