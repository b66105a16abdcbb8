import { roundedTo } from '../../measure/exposure/cautious-end.ts';
import { isUntimed } from '../../measure/exposure/exposure-time.ts';
import type { InfraredShareResult, InfraredTimeResult } from '../../measure/exposure/infrared-results.ts';
import { type Figure, isFigure } from '../../measure/figure.ts';
import { number } from '../../measure/numbers.ts';
import { say } from '../say.ts';
import { timeWords } from '../time-words.ts';
import { AT_CAUTIOUS_END, capital, VALUE_USED } from './amounts.ts';
import { INFRARED_EYE, limitSentence } from './citation.ts';
import {
  LONG_EXPOSURE_LIMIT,
  limitTime,
  lookingFrom,
  rangeSentence,
  SPECTRAL_UNKNOWN,
  shareSentence,
  timeSentence,
} from './infrared-phrases.ts';
import { cautiousPart, outcome } from './outcome.ts';
import { type LimitWords, worded } from './wording.ts';

/** The limit, and why its edition is named. */
const LIMIT_WORDS = `${limitSentence(INFRARED_EYE)} That edition sums the whole band from 780 nm without weights; ICNIRP 2013 may weight part of the band less (from memory, unconfirmed).`;

/** What the bounds of a range rest on. */
const RANGE_WORDS =
  'Where near-infrared alone was not read, the highest irradiance is taken to lie no higher than nearer to the panel, and to fall no faster than from a point; that holds for LEDs that face straight ahead and are brightest there.';

type AtEye = InfraredShareResult | InfraredTimeResult;

const subjectOf = ({ distance }: AtEye) => `Infrared at the eye, ${number(distance)} cm`;

/** What the figure was taken from. */
function basis({ isSpectralErrorKnown, isFromSpectrum }: AtEye): string {
  if (isFromSpectrum) {
    return 'The figure is summed up from the spectrum, 780–3000 nm as far as the instrument sees; the most that may lie beyond is in the interval.';
  }
  const strict = isSpectralErrorKnown
    ? ', which errs on the strict side; the meter’s own error for near-infrared is in the interval'
    : '';
  return `The figure is taken from the reading with near-infrared alone on, all of it counted as 780–3000 nm${strict}.`;
}

const rangePart = ({ there }: AtEye) => (there?.kind === 'range' ? RANGE_WORDS : '');

const spectralPart = ({ isSpectralErrorKnown }: AtEye) => (isSpectralErrorKnown ? '' : SPECTRAL_UNKNOWN);

/** The share of the limit at a distance. */
export function infraredShareWords(result: InfraredShareResult): LimitWords {
  const { figure, distance, cautiousSeconds } = result;
  const head = { subject: subjectOf(result), aspect: 'share of the limit' };
  if (!isFigure(figure)) {
    return worded(head, {
      withheld: `No share of the infrared limit can be given for ${number(distance)} cm: ${say(figure.reason)}.`,
      background: [LIMIT_WORDS],
    });
  }
  const time =
    cautiousSeconds === undefined
      ? 'A time to the limit can’t be told from a bound from below.'
      : timeSentence(cautiousSeconds, 'the long-exposure limit');
  const end = cautiousPart(figure, 'high');
  return worded(head, {
    outcome: [sharePart(result, figure), time, spectralPart(result)],
    ...(end !== undefined && { beside: [`${capital(AT_CAUTIOUS_END)} ${end}.`, time, spectralPart(result)] }),
    own: [basis(result)],
    background: [rangePart(result), LIMIT_WORDS],
  });
}

function sharePart({ there, distance }: InfraredShareResult, share: Figure): string {
  const at = number(distance);
  if (there?.kind !== 'range') return shareSentence(at, outcome(share, 'high', LONG_EXPOSURE_LIMIT));
  return rangeSentence(at, [number(roundedTo(there.low, 'low')), number(share.value)], LONG_EXPOSURE_LIMIT);
}

/** The time until the limit is used up at a distance. */
export function infraredTimeWords(result: InfraredTimeResult): LimitWords {
  const { figure, distance } = result;
  const head = { subject: subjectOf(result), aspect: 'time to the limit' };
  if (!isFigure(figure)) {
    return worded(head, {
      withheld: `No time to the infrared limit can be given for ${number(distance)} cm: ${say(figure.reason)}.`,
      background: [LIMIT_WORDS],
    });
  }
  return worded(head, {
    outcome: [timePart(result, figure), spectralPart(result)],
    own: [basis(result)],
    background: [rangePart(result), 'No time here is advised to anyone.', LIMIT_WORDS],
  });
}

function timePart(result: InfraredTimeResult, time: Figure): string {
  const start = `${lookingFrom(number(result.distance))}, with near-infrared alone on,`;
  if (!isUntimed(time)) {
    return `${start} the limit would be used up after a time of ${outcome(time, 'low', '', timeWords)}.`;
  }
  return `${start} this standard limits no time${untimedPart(result)}; ${say({ code: 'exposure-time-untimed' })}.`;
}

/** What the cautious end makes of a share that is itself no higher than the limit. */
function untimedPart({ share, cautiousSeconds }: InfraredTimeResult): string {
  if (!isFigure(share)) return '';
  if (share.bound) return ', taken at the bound';
  if (!share.interval95 || cautiousSeconds === undefined) {
    return ` (${VALUE_USED})`;
  }
  if (!Number.isFinite(cautiousSeconds)) return `, ${AT_CAUTIOUS_END} too`;
  return `; ${AT_CAUTIOUS_END} the limit would be used up after ${limitTime(cautiousSeconds)}`;
}
