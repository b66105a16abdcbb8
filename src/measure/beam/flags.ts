import type { Flag } from '../figure.ts';
import type { MetricId } from '../metrics.ts';
import type { OpticsResult } from './optics-result.ts';
import { distanceMetric, TABLE_DISTANCES } from './table-distances.ts';

declare module '../statement.ts' {
  interface StatementData {
    'beam-withheld': { because: Statement };
    /** Half angles, degrees: claimed, and the least and the most that the readings allow. */
    'beam-claim-ruled-out': { claimed: number; low: number; high: number };
  }
}

/** Metrics that rest on the beam. */
const CONCERNS: readonly MetricId[] = [
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
 * What is odd about a panel's beam: readings that no beam explains or that leave it open, so that what rests
 * on it is withheld; and a claimed beam angle that the readings rule out. The claim is no part of any figure.
 */
export function opticsFlags(result: OpticsResult): Flag[] {
  if (!result.estimates) {
    return [
      {
        check: 'beam-withheld',
        severity: 'doubt',
        finding: { code: 'beam-withheld', because: result.withheld },
        concerns: CONCERNS,
      },
    ];
  }
  const { claimRuledOut, estimates } = result;
  if (claimRuledOut === undefined) return [];
  const [low, high] = estimates.halfAngle.interval95;
  return [
    {
      check: 'beam-claim',
      severity: 'note',
      finding: { code: 'beam-claim-ruled-out', claimed: claimRuledOut, low, high },
      concerns: ['beam-half-angle'],
    },
  ];
}
