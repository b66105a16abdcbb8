/** What a plan means for an eye, in words that the panels' pages share (words/limits/). No DOM. */
import { roundedTo } from '../../../measure/exposure/cautious-end.ts';
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
import type { EyeShare, Ranged } from './plan-calculation.ts';
import type { PlanPanel } from './plan-panel.ts';

/** A planned time that is longer than the one after which the infrared limit would be used up. */
export interface LongerThanLimit {
  /** The time itself is longer, not its upper end alone. */
  isItself: boolean;
  /** What it is longer than. */
  than: string;
}

/** Undefined where the time is no longer, or where nothing is known of the eye. */
export function longerThanLimit({ value, high = value }: Ranged, eye: EyeShare): LongerThanLimit | undefined {
  const seconds = 'unknown' in eye ? eye.secondsFartherAway : eye.cautiousSeconds;
  if (seconds === undefined || high <= seconds) return undefined;
  const than =
    'unknown' in eye
      ? 'the time after which the infrared limit for the eye would be used up where near-infrared was read, which is farther away'
      : `the ${limitTime(seconds)} after which the infrared limit for the eye ${eye.there.kind === 'range' ? 'may' : 'would'} be used up, looking towards the panel`;
  return { isItself: value > seconds, than };
}

/** The same in a sentence; `time` is what the time is called where it begins the sentence. */
export function longerWords({ isItself, than }: LongerThanLimit, time: string): string {
  return `${isItself ? `${time} is` : 'At the upper end of its interval this is'} longer than ${than}.`;
}

/** What reaches an eye at a distance, in a sentence. */
export function eyeWords(panel: PlanPanel, cm: number, eye: EyeShare): string {
  if ('unknown' in eye) return `What near-infrared reaches an eye at ${cm} cm: ${eye.unknown}.`;
  const time = timeSentence(eye.cautiousSeconds, 'that limit');
  const isKnown = 'isErrorKnown' in panel.infrared && panel.infrared.isErrorKnown;
  return [eyeShareWords(cm, eye), time, ...(isKnown ? [] : [SPECTRAL_UNKNOWN])].join(' ');
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
