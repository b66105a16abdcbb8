import type { MetricId } from '../metrics.ts';
import { MODES_COMBINED_FIRST, type Mode } from '../modes.ts';
import { IMPOSSIBLE_EFFICIENCY, ODD_EFFICIENCY } from '../thresholds.ts';
import type { Check, RaisedFlag } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** % */
    'efficiency-impossible': { percent: number; limit: number };
    /** % */
    'efficiency-odd': { percent: number; limit: number };
  }
}

/**
 * What an efficiency that can't be puts in doubt besides itself: at least one of the figures that it is made of, and
 * nothing tells which. One channel's is scaled by the peaks from the power of both, so that the power stands as long as
 * it gives a possible efficiency with both channels on.
 */
function suspects(mode: Mode, isCombinedSound: boolean): MetricId[] {
  const draw = `mains-draw-${mode}` as const;
  if (mode === 'combined') return ['optical-power', 'emitted-power', draw];
  const own: MetricId[] = [`peak-irradiance-${mode}`, draw];
  return isCombinedSound ? own : ['optical-power', 'emitted-power', ...own];
}

/**
 * Efficiency above what red and near-infrared LEDs reach. Limit: near-limit wall-plug efficiency of 660 nm LEDs, 81 % (Kusuma, Pattison and Bugbee 2020, Horticulture
 * Research 7:56). The whole panel also feeds drivers and fans, so that 60 % is odd already (our own choice).
 */
export const efficiencyPossible: Check = {
  id: 'efficiency-possible',
  run: (facts) => {
    const combined = facts.figure('efficiency-combined');
    const isCombinedSound = combined !== undefined && combined.value / 100 <= ODD_EFFICIENCY;
    return MODES_COMBINED_FIRST.flatMap((mode) =>
      ([`efficiency-${mode}`, `efficiency-${mode}-net`] as const).map((metric) => ({ mode, metric })),
    ).flatMap(({ mode, metric }): RaisedFlag[] => {
      const figure = facts.figure(metric);
      if (!figure) return [];
      const share = figure.value / 100;
      if (share <= ODD_EFFICIENCY) return [];
      // What its own interval leaves possible is odd and no more.
      const isImpossible = (figure.interval95?.[0] ?? figure.value) / 100 > IMPOSSIBLE_EFFICIENCY;
      return [
        {
          severity: isImpossible ? 'impossible' : 'doubt',
          finding: isImpossible
            ? { code: 'efficiency-impossible', percent: figure.value, limit: 100 * IMPOSSIBLE_EFFICIENCY }
            : { code: 'efficiency-odd', percent: figure.value, limit: 100 * ODD_EFFICIENCY },
          concerns: [metric, ...suspects(mode, isCombinedSound)],
        },
      ];
    });
  },
};
