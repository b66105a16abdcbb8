import type { Flag } from '../figure.ts';
import type { OpticsResult } from './optics-result.ts';
import { distanceMetric, TABLE_DISTANCES } from './table-distances.ts';

/** Metrics that rest on the beam. */
const CONCERNS = [
  'beam-half-angle',
  'sampling-bias',
  'capture',
  'emitted-power',
  'efficiency-emitted',
  'price-per-emitted-watt',
  ...TABLE_DISTANCES.flatMap((distance) => [
    distanceMetric('mean-irradiance', distance),
    distanceMetric('peak-irradiance', distance),
    distanceMetric('uniformity-lowest', distance),
  ]),
];

/**
 * What is odd about a panel's beam, in words: readings that no beam explains or that leave it open, so that what rests
 * on it is withheld; and a claimed beam angle that the readings rule out. The claim is no part of any figure.
 */
export function opticsFlags({ withheld, claimRuledOut, estimates }: OpticsResult): Flag[] {
  if (withheld !== undefined) {
    return [
      {
        check: 'beam-withheld',
        severity: 'doubt',
        finding: `Emitted power and all that rests on the beam is withheld: ${withheld}.`,
        concerns: CONCERNS,
      },
    ];
  }
  if (claimRuledOut === undefined || !estimates) return [];
  const [low, high] = estimates.halfAngle.interval95;
  const angle = (degrees: number) => degrees.toFixed(0);
  return [
    {
      check: 'beam-claim',
      severity: 'note',
      finding: `The claimed beam angle of ${angle(2 * claimRuledOut)}° is a half-angle of ${angle(claimRuledOut)}°; the readings allow ${angle(low)}° to ${angle(high)}°. No figure rests on the claim.`,
      concerns: ['beam-half-angle'],
    },
  ];
}
