import type { RankBasis } from '../measure/catalogue/rows.ts';
import type { MetricId } from '../measure/metrics.ts';

/** The figures that a ranking rests on. */
export const RANKED_BY = {
  optical: { power: 'optical-power', perWatt: 'price-per-watt' },
  emitted: { power: 'emitted-power', perWatt: 'price-per-emitted-watt' },
} as const satisfies Readonly<Record<RankBasis, { power: MetricId; perWatt: MetricId }>>;
