import { type Figure, type FigureOrGap, gap, isFigure } from '../figure.ts';
import { number } from '../numbers.ts';
import { exposureTimeFigure, UNTIMED_NOTE } from './exposure-time.ts';
import type { EyeDistance } from './eye-distances.ts';
import { EYE_DISTANCES } from './eye-distances.ts';
import { INFRARED_LIMIT, LONG_EXPOSURE, LONGEST_TIMED, longestExposureTime } from './infrared.ts';
import { type AxisReading, type Infrared, type Share, shareAt, shareAtReading } from './infrared-shares.ts';
import { type LimitResult, limitSentence, worded } from './limit.ts';
import { cautiousEnd, outcome, roundedTo, SPECTRAL_UNKNOWN, timeWords } from './words.ts';

/** End of the key of the line that a meter's error for near-infrared has in a budget. */
const SPECTRAL_LINE = '/spectral-near-infrared';

/** True where the budget of a figure holds the meter's error for near-infrared. */
export function knowsSpectralError(figure: Figure): boolean {
  return figure.budget.some((it) => it.source.key.endsWith(SPECTRAL_LINE));
}

/** Takes the whole reading with near-infrared alone on for infrared of 780-3000 nm. */
export function nearInfraredFromMode(
  reading: FigureOrGap,
  distance: number,
  axis: readonly AxisReading[] = [],
): Infrared {
  const strict = isFigure(reading) && knowsSpectralError(reading);
  return {
    irradiance: reading,
    distance,
    axis,
    basisWords: `taken from the reading with near-infrared alone on, all of it counted as 780–3000 nm${strict ? ', which errs on the strict side; the meter’s own error for near-infrared is in the interval' : ''}`,
    unassessed: [
      {
        what: 'Infrared beyond the meter’s reach',
        reason: 'heat that the panel radiates and the meter misses is not in it',
      },
    ],
  };
}

/** Share of the long-exposure limit and time to the limit: at the reading's distance, then at `EYE_DISTANCES`. */
export function infraredResults(session: string, infrared: Infrared): LimitResult[] {
  const here: Share = { figure: shareAtReading(session, infrared) };
  return [
    ...pair(session, 'reading', infrared.distance, here, infrared),
    ...EYE_DISTANCES.flatMap((distance) =>
      pair(session, `${distance}-cm`, distance, shareAt(session, infrared, distance), infrared),
    ),
  ];
}

/** Why the edition is named. */
const EDITION_WORDS =
  'That edition sums the whole band from 780 nm without weights; ICNIRP 2013 may weight part of the band less (from memory, unconfirmed).';
const LIMIT_WORDS = `${limitSentence(INFRARED_LIMIT)} ${EDITION_WORDS}`;
const OF_LIMIT = `of the limit for long exposures, ${LONG_EXPOSURE} W/m²`;

/** What the bounds of a range rest on. */
const RANGE_WORDS =
  'Where near-infrared alone was not read, the highest irradiance is taken to lie no higher than nearer to the panel, and to fall no faster than from a point; that holds for LEDs that face straight ahead and are brightest there.';

function pair(
  session: string,
  place: 'reading' | `${EyeDistance}-cm`,
  distance: number,
  { figure: share, there }: Share,
  infrared: Infrared,
): LimitResult[] {
  const exposureTimeMetric = `infrared-stay-at-${place}` as const;
  const exposureTime = isFigure(share)
    ? exposureTimeFigure(session, exposureTimeMetric, share, share.basis)
    : gap(exposureTimeMetric, share.reason);
  const at = `${number(distance)} cm`;
  const common = { limit: INFRARED_LIMIT, caution: 'eyes', distance } as const;
  const basis = [`The figure is ${infrared.basisWords}.`, there?.kind === 'range' ? RANGE_WORDS : ''];
  return [
    {
      ...common,
      id: `infrared-share-at-${place}`,
      title: `Infrared at the eye, ${at}: share of the limit`,
      figure: share,
      ...(isFigure(share)
        ? worded([sharePart(share, there, at), timePart(share), spectralPart(infrared)], ...basis, LIMIT_WORDS)
        : worded([`No share of the infrared limit can be given for ${at}: ${share.reason}.`], LIMIT_WORDS)),
    },
    {
      ...common,
      id: exposureTimeMetric,
      title: `Infrared at the eye, ${at}: time to the limit`,
      figure: exposureTime,
      ...(isFigure(exposureTime)
        ? worded(
            [exposureTimePart(exposureTime, share, at), spectralPart(infrared)],
            ...basis,
            'No time here is advised to anyone.',
            LIMIT_WORDS,
          )
        : worded([`No time to the infrared limit can be given for ${at}: ${exposureTime.reason}.`], LIMIT_WORDS)),
    },
  ];
}

function sharePart(share: Figure, there: Share['there'], at: string): string {
  const start = `Looking towards the panel from ${at}, near-infrared alone gives`;
  if (there?.kind !== 'range') return `${start} ${outcome(share, 'high', OF_LIMIT)}.`;
  const low = number(roundedTo(there.low, 'low'));
  return `${start} somewhere from ${low} % to ${number(share.value)} % ${OF_LIMIT}: it was not read there.`;
}

function spectralPart({ irradiance }: Infrared): string {
  return isFigure(irradiance) && !knowsSpectralError(irradiance) ? SPECTRAL_UNKNOWN : '';
}

/** What the share means in time, by its cautious end. */
function timePart(share: Figure): string {
  const end = cautiousEnd(share, 'high');
  if (end === undefined) return 'A time to the limit can’t be told from a bound from below.';
  const seconds = longestExposureTime((end / 100) * LONG_EXPOSURE);
  return Number.isFinite(seconds)
    ? `At the cautious end, the limit would be used up after ${timeWords(roundedTo(seconds, 'low'))}.`
    : 'At the cautious end, it lies no higher than the long-exposure limit, up to which the standard limits no time.';
}

function exposureTimePart(exposureTime: Figure, share: FigureOrGap, at: string): string {
  const start = `Looking towards the panel from ${at}, with near-infrared alone on,`;
  if (!exposureTime.notes.includes(UNTIMED_NOTE)) {
    return `${start} the limit would be used up after a time of ${outcome(exposureTime, 'low', '', timeWords)}.`;
  }
  return `${start} this standard limits no time${isFigure(share) ? untimedWords(share) : ''}; ${UNTIMED_NOTE}.`;
}

/** What the cautious end makes of a share that is itself no higher than the limit. */
function untimedWords(share: Figure): string {
  const end = cautiousEnd(share, 'high');
  if (share.bound) return ', taken at the bound';
  if (!share.interval95 || end === undefined) {
    return ' (the value itself is used, for its uncertainty is not known)';
  }
  if (end <= 100) return ', at the cautious end of the interval too';
  const seconds = Math.min(LONGEST_TIMED, longestExposureTime((end / 100) * LONG_EXPOSURE));
  return `; at the cautious end of the interval the limit would be used up after ${timeWords(roundedTo(seconds, 'low'))}`;
}
