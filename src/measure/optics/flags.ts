import type { Flag } from '../figure.ts';
import type { OpticsResult } from './estimate.ts';
import type { OrderSource } from './order-fit.ts';
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

const NAMES: Readonly<Record<OrderSource, string>> = {
  sweep: 'The distance sweep',
  grid: 'The grid',
  claim: 'The claimed beam angle',
};

/**
 * What is odd about a panel's beam, in words: two ways to it that disagree, one that led nowhere, or none that gave
 * it, so that what rests on it is withheld. None where there was nothing to find it from.
 */
export function opticsFlags({ tried, choice }: Pick<OpticsResult, 'tried' | 'choice'>): Flag[] {
  const sources = Object.keys(tried) as OrderSource[];
  if (sources.length === 0) return [];
  const flag = (check: string, severity: Flag['severity'], text: string): Flag => ({
    check,
    severity,
    text: `${text.charAt(0).toUpperCase()}${text.slice(1)}.`,
    concerns: CONCERNS,
  });
  const disagreements = choice.warnings.map((text) => flag('beam-disagreement', 'doubt', text));
  if ('withheld' in choice) {
    return [
      ...disagreements,
      flag('beam-withheld', 'doubt', `emitted power and all that rests on the beam is withheld: ${choice.withheld}`),
    ];
  }
  const unused = sources.flatMap((source) => {
    const it = tried[source];
    if (!it || 'fit' in it) return [];
    const severity = it.allowed?.length === 0 || source === 'claim' ? 'doubt' : 'note';
    return [flag('beam-not-used', severity, `${NAMES[source]} did not give the beam: ${it.withheld}`)];
  });
  return [...disagreements, ...unused];
}
