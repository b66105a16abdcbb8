import { type Figure, type FigureOrGap, gap, isFigure, type Unassessed } from '../figure.ts';
import { methodReference } from '../method-versions.ts';
import { number } from '../numbers.ts';
import { productFigure } from '../uncertainty.ts';
import { EYE_DISTANCES } from './eye-distances.ts';
import { INFRARED_LIMIT, LONG_EXPOSURE, LONGEST_TIMED, longestStay } from './infrared.ts';
import { type LimitResult, limitSentence, worded } from './limit.ts';
import { stayFigure, UNTIMED_NOTE } from './stay.ts';
import { cautiousEnd, leavingOut, outcome, relation, roundedTo, timeWords } from './words.ts';

/** mW/cm² to % of the long-exposure limit: 1 mW/cm² is 10 W/m². */
const PERCENT_PER_UNIT = (100 * 10) / LONG_EXPOSURE;

/**
 * Infrared at the reading's own distance, and how it was come by. Here a measured spectrum may enter one day: its
 * sum over 780-3000 nm would be the irradiance, and the words would say so.
 */
export interface Infrared {
  /** mW/cm² */
  irradiance: FigureOrGap;
  /** A sentence part: "taken from ...". */
  basisWords: string;
  /** What the budget of the irradiance leaves out. */
  unassessed: Unassessed[];
}

/** Peak irradiance with both channels on as the beam model has it, mW/cm²; or why there is none. */
export type ModelledPeaks = { atReading: Figure; at: ReadonlyMap<number, Figure> } | { absent: string };

/** Takes the whole reading with near-infrared alone on for infrared of 780-3000 nm. */
export function nearInfraredFromMode(reading: FigureOrGap): Infrared {
  return {
    irradiance: reading,
    basisWords:
      'taken from the reading with near-infrared alone on, all of it counted as 780–3000 nm, which errs on the strict side',
    unassessed: [
      {
        source: 'Infrared beyond the meter’s reach',
        reason: 'heat that the panel radiates and the meter misses is not in it',
      },
    ],
  };
}

/** Share of the long-exposure limit and time to the limit: at the reading's distance, then at `EYE_DISTANCES`. */
export function infraredResults(
  session: string,
  infrared: Infrared,
  readingDistance: number,
  modelled: ModelledPeaks,
): LimitResult[] {
  const here = shareAtReading(session, infrared);
  return [
    ...pair(session, 'reading', readingDistance, here, infrared.basisWords),
    ...EYE_DISTANCES.flatMap((distance) => {
      const share = shareAt(session, infrared, distance, modelled);
      return pair(session, `${distance}-cm`, distance, share, `${infrared.basisWords}; scaled by the beam model`);
    }),
  ];
}

function shareAtReading(session: string, { irradiance, unassessed }: Infrared): FigureOrGap {
  const metric = 'infrared-share-at-reading';
  if (!isFigure(irradiance)) return gap(metric, irradiance.reason);
  const share = productFigure(
    {
      id: `${session}/${metric}`,
      metric,
      unit: '%',
      basis: 'derived',
      method: methodReference('infrared-eye'),
      working: `s ${relation(irradiance.bound)} 100 × ${number(irradiance.value)} mW/cm² × 10 ÷ ${LONG_EXPOSURE} W/m² = ${number(PERCENT_PER_UNIT * irradiance.value)} %`,
    },
    [{ figure: irradiance, power: 1 }],
    PERCENT_PER_UNIT,
  );
  return leavingOut(share, ...unassessed);
}

/** What the modelled shares leave out. */
const SAME_BEAM: Unassessed = {
  source: 'Beam of near-infrared alone',
  reason: 'it is taken to fall with distance as both channels together do',
};

function shareAt(session: string, infrared: Infrared, distance: number, modelled: ModelledPeaks): FigureOrGap {
  const metric = `infrared-share-at-${distance}-cm`;
  const { irradiance, unassessed } = infrared;
  if (!isFigure(irradiance)) return gap(metric, irradiance.reason);
  if ('absent' in modelled) return gap(metric, modelled.absent);
  const there = modelled.at.get(distance);
  const here = modelled.atReading;
  if (!there) return gap(metric, `the beam model gives no peak at ${distance} cm`);
  if (!(here.value > 0)) return gap(metric, 'the beam model gives no light at the reading’s distance');
  const value = (PERCENT_PER_UNIT * irradiance.value * there.value) / here.value;
  const share = productFigure(
    {
      id: `${session}/${metric}`,
      metric,
      unit: '%',
      basis: 'modelled',
      method: methodReference('infrared-eye'),
      working: `s ${relation(irradiance.bound)} 100 × ${number(irradiance.value)} mW/cm² × (${number(there.value)} ÷ ${number(here.value)}) × 10 ÷ ${LONG_EXPOSURE} W/m² = ${number(value)} %`,
    },
    [
      { figure: irradiance, power: 1 },
      { figure: there, power: 1 },
      { figure: here, power: -1 },
    ],
    PERCENT_PER_UNIT,
  );
  return { ...leavingOut(share, ...unassessed, SAME_BEAM), flags: there.flags };
}

/** Why the edition is named. */
const EDITION_WORDS =
  'That edition sums the whole band from 780 nm without weights; ICNIRP 2013 may weight part of the band less (from memory, unconfirmed).';
const LIMIT_WORDS = `${limitSentence(INFRARED_LIMIT)} ${EDITION_WORDS}`;

function pair(session: string, place: string, distance: number, share: FigureOrGap, basisWords: string): LimitResult[] {
  const stayMetric = `infrared-stay-at-${place}`;
  const stay = isFigure(share) ? stayFigure(session, stayMetric, share, share.basis) : gap(stayMetric, share.reason);
  const at = `${number(distance)} cm`;
  const common = { limit: INFRARED_LIMIT, caution: 'eyes' } as const;
  return [
    {
      ...common,
      id: `infrared-share-at-${place}`,
      title: `Infrared at the eye, ${at}: share of the limit`,
      figure: share,
      ...(isFigure(share)
        ? worded(
            [
              `Looking towards the panel from ${at}, near-infrared alone gives ${outcome(share, 'high', `of the limit for long exposures, ${LONG_EXPOSURE} W/m²`)}.`,
              timePart(share),
            ],
            `The figure is ${basisWords}.`,
            LIMIT_WORDS,
          )
        : worded([`No share of the infrared limit can be given for ${at}: ${share.reason}.`], LIMIT_WORDS)),
    },
    {
      ...common,
      id: stayMetric,
      title: `Infrared at the eye, ${at}: time to the limit`,
      figure: stay,
      ...(isFigure(stay)
        ? worded(
            [stayPart(stay, share, at)],
            `The figure is ${basisWords}.`,
            'No time here is advised to anyone.',
            LIMIT_WORDS,
          )
        : worded([`No time to the infrared limit can be given for ${at}: ${stay.reason}.`], LIMIT_WORDS)),
    },
  ];
}

/** What the share means in time, by its cautious end. */
function timePart(share: Figure): string {
  const end = cautiousEnd(share, 'high');
  if (end === undefined) return 'A time to the limit can’t be told from a bound from below.';
  const seconds = longestStay((end / 100) * LONG_EXPOSURE);
  return Number.isFinite(seconds)
    ? `Taken so, the limit would be used up after ${timeWords(roundedTo(seconds, 'low'))}.`
    : 'Taken so, it lies no higher than the long-exposure limit, up to which the standard limits no time.';
}

function stayPart(stay: Figure, share: FigureOrGap, at: string): string {
  const start = `Looking towards the panel from ${at}, with near-infrared alone on,`;
  if (!stay.notes.includes(UNTIMED_NOTE)) {
    return `${start} the limit would be used up after a time of ${outcome(stay, 'low', '', timeWords)}.`;
  }
  return `${start} this standard limits no time${isFigure(share) ? untimedWords(share) : ''}; ${UNTIMED_NOTE}.`;
}

/** What the cautious end makes of a share that is itself no higher than the limit. */
function untimedWords(share: Figure): string {
  const end = cautiousEnd(share, 'high');
  if (!share.interval95 || end === undefined) {
    return ' (the value itself is used, for its uncertainty is not known)';
  }
  if (end <= 100) return ', at the cautious end of the interval too';
  const seconds = Math.min(LONGEST_TIMED, longestStay((end / 100) * LONG_EXPOSURE));
  return `; at the cautious end of the interval the limit would be used up after ${timeWords(roundedTo(seconds, 'low'))}`;
}
