import { cited } from './citation.ts';
import { CITATIONS } from './citations.ts';
import { type LimitWords, worded } from './wording.ts';

/** Why nothing is concluded of the retina, and what it would take. */
export function retinaWords(): LimitWords {
  return worded(
    { subject: 'Retina', label: 'no share of a limit' },
    {
      outcome: [
        'The guide says nothing about the retina and assigns no risk group: a reading of irradiance on a plane does not hold the radiance that the limits are for.',
      ],
      background: [
        'It would take a measurement of radiance within a stated angle of acceptance, through a stated aperture, at 200 mm.',
        'With red on, a panel is no weak visual stimulus, so that the rule for weak ones can’t stand in; near-infrared alone is invisible, and nobody turns away from it.',
        `The limits are the ${cited(CITATIONS.retina)}.`,
      ],
    },
  );
}
