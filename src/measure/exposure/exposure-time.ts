import { type Basis, type Bound, type Figure, type FigureOrGap, gap } from '../figure.ts';
import { identityOf, type ListedMetricId } from '../metrics.ts';
import { number } from '../numbers.ts';
import { isCode } from '../statement.ts';
import { propagate, withInterval, withoutInterval } from '../uncertainty.ts';
import { cautiousEnd } from './cautious-end.ts';
import { JOIN, LONG_EXPOSURE, LONGEST_TIMED, longestExposureTime } from './infrared.ts';
import { relation } from './made-of.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** A time of `LONGEST_TIMED` is no time at all: the standard limits none. */
    'exposure-time-untimed': object;
    'exposure-time-no-lower-end': object;
    /** The whole interval is cut where the formula ends. */
    'exposure-time-all-at-end': object;
    /** The equation for an irradiance, W/m², that the standard limits no time at. */
    'exposure-time-untimed-equation': { irradiance: number; bound?: Bound };
  }
}

/** W/m² of a share of the long-exposure limit, %. */
const irradianceOf = (share: number) => (share / 100) * LONG_EXPOSURE;

/** The time, cut where the standard's formula ends. */
const cappedExposureTime = (share: number) =>
  Math.min(LONGEST_TIMED, longestExposureTime(Math.max(0, irradianceOf(share))));

/** True where a figure of 1000 s is no time at all: the standard limits none. */
export function isUntimed({ notes }: Pick<Figure, 'notes'>): boolean {
  return notes.some((it) => isCode(it, 'exposure-time-untimed'));
}

/**
 * Time until the infrared limit is used up at the cautious end of a share of it, %, s: Infinity where that is no higher
 * than the limit for long exposures; undefined where the share is only known to be above a bound.
 */
export function secondsAtCautiousEnd(share: Figure): number | undefined {
  const end = cautiousEnd(share, 'high');
  return end === undefined ? undefined : longestExposureTime(irradianceOf(end));
}

/**
 * Time until the infrared limit is used up, s, from the share of the long-exposure limit, %. It falls as the share
 * rises, so its interval is that of the share, turned round; the standard uncertainty is of first order. At 1000 s
 * it is cut: there the slope just past the cut is taken, and no uncertainty is told where the whole interval is cut.
 */
export function exposureTimeFigure(session: string, metric: ListedMetricId, share: Figure, basis: Basis): FigureOrGap {
  const irradiance = irradianceOf(share.value);
  const isLimitless = irradiance <= LONG_EXPOSURE;
  if (isLimitless && share.bound === 'above') return gap(metric, { code: 'exposure-time-no-lower-end' });
  const value = cappedExposureTime(share.value);
  const [low, high] = share.interval95 ?? [share.value, share.value];
  const isCut = cappedExposureTime(high) === LONGEST_TIMED;
  // t ~ share^(-4/3)
  const slope = isCut ? 0 : (-4 / 3) * (value / Math.max(share.value, (100 * JOIN) / LONG_EXPOSURE));
  const bound = boundOf(share, isLimitless);
  const figure = propagate(
    {
      ...identityOf(metric, session),
      basis,
      ...(bound && { bound }),
      ...(isLimitless && { notes: [{ code: 'exposure-time-untimed' }] }),
      calculation: isLimitless
        ? { code: 'exposure-time-untimed-equation', irradiance, ...(share.bound && { bound: share.bound }) }
        : `t ${relation(bound)} min(${LONGEST_TIMED} s, (18000 ÷ ${number(irradiance)} W/m²)^(4/3)) = ${number(value)} s`,
    },
    value,
    [{ figure: share, sensitivity: slope }],
  );
  const u = figure.standardUncertainty;
  if (u === null) return { ...figure, flags: share.flags };
  const told = isCut
    ? withoutInterval(figure, { code: 'exposure-time-all-at-end' })
    : withInterval(figure, u, [cappedExposureTime(high), cappedExposureTime(low)]);
  return { ...told, flags: share.flags };
}

/** A bound of the share turned round; a time that is cut is at least what it is cut to. */
function boundOf(share: Figure, isLimitless: boolean): Bound | undefined {
  if (isLimitless || share.bound === 'below') return 'above';
  return share.bound && 'below';
}
