import { IMPOSSIBLE_EFFICIENCY, ODD_EFFICIENCY } from '../methods.ts';
import { MODES_COMBINED_FIRST } from '../modes.ts';
import { type Check, words } from './check.ts';

/**
 * What an efficiency that can't be puts in doubt besides itself: at least one of the figures that it is made of, and
 * nothing tells which. One channel's is scaled by the peaks from the power of both, so that the power stands as long as
 * it gives a possible efficiency with both channels on.
 */
function suspects(mode: string, isCombinedSound: boolean): string[] {
  const draw = `mains-draw-${mode}`;
  if (mode === 'combined') return ['optical-power', 'emitted-power', draw];
  return [...(isCombinedSound ? [] : ['optical-power', 'emitted-power']), `peak-irradiance-${mode}`, draw];
}

/**
 * Limit: near-limit wall-plug efficiency of 660 nm LEDs, 81 % (Kusuma, Pattison and Bugbee 2020, Horticulture
 * Research 7:56). The whole panel also feeds drivers and fans, so that 60 % is odd already (our own choice).
 */
export const efficiencyPossible: Check = {
  id: 'efficiency-possible',
  guards: 'Efficiency above what red and near-infrared LEDs reach.',
  run: (facts) => {
    const combined = facts.figure('efficiency-combined');
    const isCombinedSound = combined !== undefined && combined.value / 100 <= ODD_EFFICIENCY;
    return MODES_COMBINED_FIRST.flatMap((mode) =>
      [`efficiency-${mode}`, `efficiency-${mode}-net`].map((metric) => ({ mode, metric })),
    ).flatMap(({ mode, metric }) => {
      const figure = facts.figure(metric);
      if (!figure) return [];
      const share = figure.value / 100;
      if (share <= ODD_EFFICIENCY) return [];
      const impossible = share > IMPOSSIBLE_EFFICIENCY;
      return [
        {
          check: 'efficiency-possible',
          severity: impossible ? ('impossible' as const) : ('doubt' as const),
          finding: impossible
            ? `An efficiency of ${words(figure.value)} % is not possible: the best red LEDs alone reach about ${words(100 * IMPOSSIBLE_EFFICIENCY)} %. A reading, the LED area or the draw is wrong.`
            : `An efficiency of ${words(figure.value)} % is odd: few LED panels come near ${words(100 * ODD_EFFICIENCY)} %. Look at the readings, the LED area and the draw again.`,
          concerns: [metric, ...suspects(mode, isCombinedSound)],
        },
      ];
    });
  },
};
