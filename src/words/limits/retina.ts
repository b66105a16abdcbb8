import { cautiousEnd, roundedTo } from '../../measure/exposure/cautious-end.ts';
import type { RetinaResult } from '../../measure/exposure/retina.ts';
import { isFigure } from '../../measure/figure.ts';
import { number } from '../../measure/numbers.ts';
import { AT_CAUTIOUS_END } from './amounts.ts';
import { cited } from './citation.ts';
import { CITATIONS } from './citations.ts';
import { lookingFrom } from './infrared-phrases.ts';
import { type LimitWords, worded } from './wording.ts';

/** Beside the table, where bounds stand in it. */
export const RETINA_BOUNDS =
  'For the retina these are bounds, since radiance was not measured: a small share is no all-clear.';

const LIMIT_WORDS = `The limits are the ${cited(CITATIONS.retina)}.`;

const MODES = {
  'near-infrared': { name: 'near-infrared alone', of: 'of the limit for a weak visual stimulus' },
  combined: { name: 'both channels', of: 'of the limit at 10 s for light that is seen' },
} as const satisfies Record<RetinaResult['mode'], object>;

/** What is known of the retina: bounds of a share where a spectrum tells them, else why nothing is concluded. */
export function retinaWords(result: RetinaResult): LimitWords {
  if (!isFigure(result.figure)) return unknownWords();
  return worded(
    { subject: `Retina, ${MODES[result.mode].name}`, aspect: result.end === 'least' ? 'at least' : 'at most' },
    {
      outcome: [outcomeOf(result)],
      background: [
        'Radiance was not measured. Its bounds follow from irradiance, the spectrum and the LED field, seen from the distance of the reading, averaged over 11 mrad. The source’s angle is that of the whole field, at most 0.1 rad, which is strict.',
        LIMIT_WORDS,
      ],
    },
  );
}

function outcomeOf({ figure, mode, end, isFromEmitters, readFrom }: RetinaResult): string {
  if (!isFigure(figure)) return '';
  const { name, of } = MODES[mode];
  const value = number(figure.value);
  if (end === 'most') {
    const high = roundedTo(cautiousEnd(figure, 'high') ?? figure.value, 'high');
    return `It is at most ${value} %, ${AT_CAUTIOUS_END} ${number(high)} %, as if one emitter gave all the light there.`;
  }
  const like = isFromEmitters ? 'all emitters were equally bright' : 'the whole field were evenly bright';
  return `${lookingFrom(number(readFrom ?? Number.NaN))} with ${name} on, the brightest spot has at least ${value} % ${of}. It would be that if ${like}; single emitters are brighter, by how much is not known, so a small share here is no all-clear.`;
}

/** Why nothing is concluded of the retina, and what it would take. */
function unknownWords(): LimitWords {
  return worded(
    { subject: 'Retina', label: 'no share of a limit' },
    {
      outcome: [
        'The guide says nothing about the retina and assigns no risk group: a reading of irradiance on a plane does not hold the radiance that the limits are for.',
      ],
      background: [
        'It would take a measurement of radiance within a stated angle of acceptance, through a stated aperture, at 200 mm.',
        'With red on, a panel is no weak visual stimulus, so that the rule for weak ones can’t stand in; near-infrared alone is invisible, and nobody turns away from it.',
        LIMIT_WORDS,
      ],
    },
  );
}
