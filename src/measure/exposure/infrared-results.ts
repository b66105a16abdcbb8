import { type Figure, type FigureOrGap, gap, isFigure } from '../figure.ts';
import { exposureTimeFigure, secondsAtCautiousEnd } from './exposure-time.ts';
import type { EyeDistance } from './eye-distances.ts';
import { EYE_DISTANCES } from './eye-distances.ts';
import { type AxisReading, type Infrared, type Share, shareAt, shareAtReading } from './infrared-shares.ts';
import type { HeldFigure } from './limit.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** What a budget leaves out, and why. */
    'infrared-beyond-reach': object;
    'heat-missed': object;
  }
}

/** What both results at a distance rest on. */
interface InfraredAtEye extends HeldFigure {
  /** cm */
  distance: number;
  /** Share of the limit for long exposures, %. */
  share: FigureOrGap;
  /** How the share is known; undefined where nothing was read that tells of it. */
  there: Share['there'];
  /** Seconds until the limit is used up, at the cautious end: see `secondsAtCautiousEnd`. */
  cautiousSeconds: number | undefined;
  /** The budget holds the instrument's error for near-infrared; what is counted in then errs on the strict side. */
  isSpectralErrorKnown: boolean;
  /** The irradiance is the sum of a spectrum, and not all of a meter's reading. */
  isFromSpectrum: boolean;
}

/** The share at a distance. */
export interface InfraredShareResult extends InfraredAtEye {
  hazard: 'infrared-share';
}

/** The time at a distance until the limit is used up. */
export interface InfraredTimeResult extends InfraredAtEye {
  hazard: 'infrared-time';
}

/**
 * Ends of the keys that an instrument's error for near-infrared has in a budget: of the band, or of the responsivity that a
 * reading is corrected by; and of a spectrometer's calibration in power.
 */
const SPECTRAL_COMPONENTS = ['/spectral-near-infrared', '/responsivity-near-infrared', '/spectral-power'];

/** True where the budget of a figure holds the instrument's error for near-infrared. */
export function knowsSpectralError(figure: Figure): boolean {
  return figure.budget.some(({ source: { key } }) => SPECTRAL_COMPONENTS.some((end) => key.endsWith(end)));
}

/** Takes the whole reading with near-infrared alone on for infrared of 780-3000 nm. */
export function nearInfraredFromMode(
  reading: FigureOrGap,
  distance: number,
  axis: readonly AxisReading[] = [],
): Infrared {
  return {
    irradiance: reading,
    distance,
    axis,
    unassessed: [{ what: { code: 'infrared-beyond-reach' }, reason: { code: 'heat-missed' } }],
    isFromSpectrum: false,
  };
}

/** Infrared of 780-3000 nm as a spectrum sums it up; what lies beyond its instrument's range is in the sum's own budget. */
export function nearInfraredFromSpectrum(sum: Figure, distance: number, axis: readonly AxisReading[]): Infrared {
  return { irradiance: sum, distance, axis, unassessed: [], isFromSpectrum: true };
}

/** Share of the long-exposure limit and time to the limit: at the reading's distance, then at `EYE_DISTANCES`. */
export function infraredResults(session: string, infrared: Infrared): Array<InfraredShareResult | InfraredTimeResult> {
  const here: Share = { figure: shareAtReading(session, infrared) };
  return [
    ...pair(session, 'reading', infrared.distance, here, infrared),
    ...EYE_DISTANCES.flatMap((distance) =>
      pair(session, `${distance}-cm`, distance, shareAt(session, infrared, distance), infrared),
    ),
  ];
}

function pair(
  session: string,
  place: 'reading' | `${EyeDistance}-cm`,
  distance: number,
  { figure: share, there }: Share,
  { irradiance, isFromSpectrum }: Infrared,
): [InfraredShareResult, InfraredTimeResult] {
  const timeMetric = `infrared-stay-at-${place}` as const;
  const time = isFigure(share)
    ? exposureTimeFigure(session, timeMetric, share, share.basis)
    : gap(timeMetric, share.reason);
  const common = {
    distance,
    share,
    there,
    cautiousSeconds: isFigure(share) ? secondsAtCautiousEnd(share) : undefined,
    isSpectralErrorKnown: isFigure(irradiance) && knowsSpectralError(irradiance),
    isFromSpectrum,
    limit: 'infrared-eye',
  } as const;
  return [
    { ...common, hazard: 'infrared-share', id: `infrared-share-at-${place}`, figure: share },
    { ...common, hazard: 'infrared-time', id: timeMetric, figure: time },
  ];
}
