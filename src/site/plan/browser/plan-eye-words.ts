/** What a plan means for an eye, in words that the panels' pages share (words/limits/). No DOM. */
import { roundedTo } from '../../../measure/exposure/cautious-end.ts';
import { sameDistance } from '../../../measure/irradiance/same-distance.ts';
import { fixed } from '../../../words/format.ts';
import { AT_CAUTIOUS_END, VALUE_USED } from '../../../words/limits/amounts.ts';
import { citedShortly, INFRARED_EYE } from '../../../words/limits/citation.ts';
import {
  LONG_EXPOSURE_LIMIT,
  limitTime,
  rangeSentence,
  SPECTRAL_UNKNOWN,
  shareSentence,
  timeSentence,
} from '../../../words/limits/infrared-phrases.ts';
import { timeWords } from '../../../words/time-words.ts';
import type { StripMark } from '../../shared/browser/time-strip.ts';
import type { Plan } from './plan-address.ts';
import { type EyeShare, eyeShare, type Ranged } from './plan-calculation.ts';
import type { PlanPanel } from './plan-panel.ts';
import { lengthWords } from './plan-words.ts';

/** Whether a planned time is longer than the one after which the infrared limit would be used up: itself, or its upper end. */
export function longerThanLimit({ value, high = value }: Ranged, eye: EyeShare): 'itself' | 'upper end' | undefined {
  const seconds = 'unknown' in eye ? eye.secondsFartherAway : eye.cautiousSeconds;
  if (seconds === undefined || high <= seconds) return undefined;
  return value > seconds ? 'itself' : 'upper end';
}

const LONGER = { itself: 'Longer', 'upper end': 'At the upper end of its interval longer' };

/** What is said of the eye beside a planned time: first, where it is so, that the time is longer than the limit. */
export interface EyeLine {
  longer?: string;
  text: string;
}

/** The eye at the planned distance, `seconds` being the planned time. */
export function eyeLine(panel: PlanPanel, cm: number, unit: Plan['unit'], seconds?: Ranged): EyeLine {
  const eye = eyeShare(panel, cm);
  const at = lengthWords(cm, unit);
  const longer = seconds && longerThanLimit(seconds, eye);
  const isRange = 'there' in eye && eye.there.kind === 'range';
  const lead = longer && {
    longer: `${isRange ? 'May be longer' : LONGER[longer]} than the infrared limit for the eye, looking towards the panel.`,
  };
  if ('unknown' in eye) {
    const there = eye.secondsFartherAway;
    const fartherAway =
      there !== undefined && Number.isFinite(there)
        ? ` Where it was read, farther away, the limit would be used up after ${limitTime(there)}.`
        : '';
    return { ...lead, text: `What near-infrared reaches an eye at ${at}: ${eye.unknown}.${fartherAway}` };
  }
  const said = Number.isFinite(eye.cautiousSeconds)
    ? `${lead ? `At ${at} that limit` : `Looking towards the panel from ${at}, the infrared limit for the eye`} ${isRange ? 'may' : 'would'} be used up after ${limitTime(eye.cautiousSeconds)}, at the cautious end${isRange ? ': it was not read there' : ''}.`
    : `Looking towards the panel from ${at}, near-infrared lies, at the cautious end, no higher than the limit for long exposures, up to which the standard limits no time.`;
  return { ...lead, text: [said, ...unknownError(panel)].join(' ') };
}

/** What is said where nothing makes the share a strict one. */
function unknownError({ infrared }: PlanPanel): string[] {
  return 'isErrorKnown' in infrared && infrared.isErrorKnown ? [] : [SPECTRAL_UNKNOWN];
}

/** Farther away, for comparison, cm. */
const FARTHER = [30, 60];

/** Times on the eye's strip. */
export interface EyeTimes {
  marks: StripMark[];
  /** From where on a time is longer than the limit at the planned distance, s. */
  from?: number;
  description: string;
}

/** The planned time beside those after which the limit would be used up, here and farther away; undefined where it has none. */
export function eyeTimes(panel: PlanPanel, cm: number, unit: Plan['unit'], seconds?: Ranged): EyeTimes | undefined {
  if ('absent' in panel.infrared) return undefined;
  const limits: Array<{ seconds: number; at: string }> = [];
  const nearest = panel.infrared.shares[0]?.distance ?? cm;
  const others = [nearest, ...FARTHER].filter((it) => it > cm && !sameDistance(it, cm));
  for (const distance of [cm, ...others.toSorted((a, b) => a - b)]) {
    const eye = eyeShare(panel, distance);
    if ('unknown' in eye || !Number.isFinite(eye.cautiousSeconds)) continue;
    // What is no more than a bound from nearer by says nothing new.
    if (limits.some((it) => limitTime(it.seconds) === limitTime(eye.cautiousSeconds))) continue;
    limits.push({ seconds: eye.cautiousSeconds, at: lengthWords(distance, unit) });
  }
  const [first] = limits;
  if (!first) return undefined;
  const told = limits.map((it) => `${limitTime(it.seconds)} at ${it.at}`).join(', ');
  const planned = seconds ? `; planned: ${timeWords(seconds.value)}` : '';
  return {
    marks: [
      ...limits.map((it, i) => ({ seconds: it.seconds, label: i === 0 ? `limit at ${it.at}` : it.at })),
      ...(seconds ? [{ seconds: seconds.value, label: 'planned' }] : []),
    ],
    from: first.seconds,
    description: `The infrared limit for the eye, looking towards the panel, is used up after ${told}${planned}`,
  };
}

/** What reaches an eye at a distance as a share of the limit, in full. */
export function eyeWords(panel: PlanPanel, cm: number, eye: EyeShare): string {
  if ('unknown' in eye) return `What near-infrared reaches an eye at ${cm} cm: ${eye.unknown}.`;
  const time = timeSentence(eye.cautiousSeconds, 'that limit');
  return [eyeShareWords(cm, eye), time, ...unknownError(panel)].join(' ');
}

function eyeShareWords(cm: number, { there, cautious }: Exclude<EyeShare, { unknown: string }>): string {
  const limit = `${LONG_EXPOSURE_LIMIT} ${citedShortly(INFRARED_EYE)}`;
  const digits = (value: number) => fixed(value, value < 100 ? 1 : 0);
  const high = digits(roundedTo(cautious, 'high'));
  if (there.kind === 'range') return rangeSentence(cm, [digits(roundedTo(there.low, 'low')), high], limit);
  const { value, high: end } = there.reading;
  return shareSentence(
    cm,
    `${digits(value)} % ${limit}; ${end === value ? VALUE_USED : `${AT_CAUTIOUS_END} ${high} %`}`,
  );
}
