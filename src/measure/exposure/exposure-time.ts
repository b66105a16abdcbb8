import { type Basis, type Bound, type Figure, type FigureOrGap, gap } from '../figure.ts';
import { methodReference } from '../method-versions.ts';
import type { MetricId } from '../metrics.ts';
import { number } from '../numbers.ts';
import { propagate } from '../uncertainty.ts';
import { JOIN, LONG_EXPOSURE, LONGEST_TIMED, longestExposureTime } from './infrared.ts';
import { relation } from './words.ts';

/** W/m² of a share of the long-exposure limit, %. */
const irradianceOf = (share: number) => (share / 100) * LONG_EXPOSURE;

/** The stay, cut where the standard's formula ends. */
const cappedExposureTime = (share: number) =>
  Math.min(LONGEST_TIMED, longestExposureTime(Math.max(0, irradianceOf(share))));

/** Said where a figure of 1000 s is no time at all. */
export const UNTIMED_NOTE = `${LONGEST_TIMED} s stands for “not limited by time in this standard”`;

/**
 * Time until the infrared limit is used up, s, from the share of the long-exposure limit, %. It falls as the share
 * rises, so its interval is that of the share, turned round; the standard uncertainty is of first order. At 1000 s
 * it is cut: there the slope just past the cut is taken, and no uncertainty is told where the whole interval is cut.
 */
export function exposureTimeFigure(session: string, metric: MetricId, share: Figure, basis: Basis): FigureOrGap {
  const irradiance = irradianceOf(share.value);
  const isUntimed = irradiance <= LONG_EXPOSURE;
  if (isUntimed && share.bound === 'above') {
    return gap(metric, 'the irradiance is only known to be above a bound, so that the time has no lower end');
  }
  const value = cappedExposureTime(share.value);
  const [low, high] = share.interval95 ?? [share.value, share.value];
  const isCut = cappedExposureTime(high) === LONGEST_TIMED;
  // t ~ share^(-4/3)
  const slope = isCut ? 0 : (-4 / 3) * (value / Math.max(share.value, (100 * JOIN) / LONG_EXPOSURE));
  const bound = boundOf(share, isUntimed);
  const figure = propagate(
    {
      id: `${session}/${metric}`,
      metric,
      unit: 's',
      basis,
      method: methodReference('infrared-eye'),
      ...(bound && { bound }),
      ...(isUntimed && { notes: [UNTIMED_NOTE] }),
      calculation: isUntimed
        ? `E ${relation(share.bound)} ${number(irradiance)} W/m² ≤ ${LONG_EXPOSURE} W/m²: not limited by time`
        : `t ${relation(bound)} min(${LONGEST_TIMED} s, (18000 ÷ ${number(irradiance)} W/m²)^(4/3)) = ${number(value)} s`,
    },
    value,
    [{ figure: share, sensitivity: slope }],
  );
  const u = figure.standardUncertainty;
  if (u === null) return { ...figure, flags: share.flags };
  if (cappedExposureTime(high) === LONGEST_TIMED) {
    return {
      ...figure,
      standardUncertainty: null,
      interval95: null,
      coverageFactor: null,
      degreesOfFreedom: null,
      budget: [],
      uncertaintyAbsent: `all of its interval lies at ${LONGEST_TIMED} s, where the formula ends`,
      flags: share.flags,
    };
  }
  const interval95 = [cappedExposureTime(high), cappedExposureTime(low)] as const;
  const coverageFactor = u > 0 ? (interval95[1] - interval95[0]) / (2 * u) : null;
  return { ...figure, interval95, coverageFactor, flags: share.flags };
}

/** A bound of the share turned round; a time that is cut is at least what it is cut to. */
function boundOf(share: Figure, isUntimed: boolean): Bound | undefined {
  if (isUntimed || share.bound === 'below') return 'above';
  return share.bound && 'below';
}
