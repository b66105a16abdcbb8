import { gap } from '../figure.ts';
import { cited, type Limit, type LimitResult, worded } from './limit.ts';

/** Thermal hazard to the retina: clauses from memory and secondary sources. */
export const RETINAL_LIMIT: Limit = {
  name: 'thermal limits for the retina',
  source: 'IEC 62471',
  year: 2006,
  edition: 'first edition',
  clause: '4.3.5–4.3.6',
  standing: 'memory',
};

const METRIC = 'retinal-hazard';

/**
 * Why the guide says nothing of the retina. The limits are for radiance, W/(m² sr), through a stated angle of
 * acceptance; irradiance on a plane does not hold it. There is no calculation here, and none is missing.
 */
export function retinaResult(): LimitResult {
  return {
    id: METRIC,
    title: 'Retina',
    figure: gap(METRIC, 'needs radiance; only irradiance on a plane was measured'),
    ...worded(
      [
        'The guide says nothing about the retina and assigns no risk group: a reading of irradiance on a plane does not hold the radiance that the limits are for.',
      ],
      'It would take a measurement of radiance within a stated angle of acceptance, through a stated aperture, at 200 mm.',
      'With red on, a panel is no weak visual stimulus, so that the rule for weak ones can’t stand in; near-infrared alone is invisible, and nobody turns away from it.',
      `The limits are the ${cited(RETINAL_LIMIT)}.`,
    ),
    limit: RETINAL_LIMIT,
    caution: 'eyes',
  };
}
