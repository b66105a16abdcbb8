import { type FigureOrGap, gap, isFigure } from '../figure.ts';
import { identityOf } from '../metrics.ts';
import { number } from '../numbers.ts';
import { productFigure } from '../uncertainty.ts';
import type { HeldFigure } from './limit.ts';
import { leavingOut, relation } from './made-of.ts';
import { SKIN_LIMIT_AT_END } from './skin-limit.ts';

declare module '../statement.ts' {
  interface StatementData {
    'light-beyond-reach': object;
  }
}

/** The skin's share of its thermal limit. */
export interface SkinResult extends HeldFigure {
  hazard: 'skin';
}

/** mW/cm² to % of it. */
const PERCENT_PER_UNIT = (100 * 10) / SKIN_LIMIT_AT_END;

const METRIC = 'skin-heating-share';

/** Share of the skin limit for an exposure just under 10 s, %, from the peak with both channels on. */
export function skinResult(session: string, peak: FigureOrGap): SkinResult {
  const figure = isFigure(peak)
    ? leavingOut(
        productFigure(
          {
            ...identityOf(METRIC, session),
            basis: 'derived',
            calculation: `s ${relation(peak.bound)} 100 × ${number(peak.value)} mW/cm² × 10 ÷ ${number(SKIN_LIMIT_AT_END, 5)} W/m² = ${number(PERCENT_PER_UNIT * peak.value)} %`,
          },
          [{ figure: peak, power: 1 }],
          PERCENT_PER_UNIT,
        ),
        { what: { code: 'light-beyond-reach' }, reason: { code: 'heat-missed' } },
      )
    : gap(METRIC, peak.reason);
  return { hazard: 'skin', id: METRIC, figure, limit: 'skin-heating' };
}
