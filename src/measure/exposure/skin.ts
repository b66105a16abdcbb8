import { type FigureOrGap, gap, isFigure } from '../figure.ts';
import { methodReference } from '../method-versions.ts';
import { number } from '../numbers.ts';
import { productFigure } from '../uncertainty.ts';
import { type LimitResult, limitSentence, worded } from './limit.ts';
import { SKIN_LIMIT, SKIN_LIMIT_AT_END, SKIN_TIME } from './skin-limit.ts';
import { leavingOut, outcome, relation } from './words.ts';

/** mW/cm² to % of it. */
const PERCENT_PER_UNIT = (100 * 10) / SKIN_LIMIT_AT_END;

const METRIC = 'skin-heating-share';

/** Share of the skin limit for an exposure just under 10 s, %, from the peak with both channels on. */
export function skinResult(session: string, peak: FigureOrGap): LimitResult {
  const figure = isFigure(peak)
    ? leavingOut(
        productFigure(
          {
            id: `${session}/${METRIC}`,
            metric: METRIC,
            unit: '%',
            basis: 'derived',
            method: methodReference('skin-heating'),
            calculation: `s ${relation(peak.bound)} 100 × ${number(peak.value)} mW/cm² × 10 ÷ ${number(SKIN_LIMIT_AT_END, 5)} W/m² = ${number(PERCENT_PER_UNIT * peak.value)} %`,
          },
          [{ figure: peak, power: 1 }],
          PERCENT_PER_UNIT,
        ),
        {
          what: 'Light beyond the meter’s reach',
          reason: 'heat that the panel radiates and the meter misses is not in it',
        },
      )
    : gap(METRIC, peak.reason);
  const longer = `For a session of minutes the limit is not applicable: the standard has none from ${SKIN_TIME} s on, and pain and heat have to give the warning.`;
  const limit = limitSentence(SKIN_LIMIT);
  return {
    id: METRIC,
    title: `Heating of the skin, exposures under ${SKIN_TIME} s`,
    figure,
    ...(isFigure(figure)
      ? worded(
          [
            `Both channels together, at the distance of the reading, give ${outcome(figure, 'high', `of the skin limit for an exposure just under ${SKIN_TIME} s`)}.`,
          ],
          longer,
          limit,
        )
      : worded([`No share of the skin limit can be given: ${figure.reason}.`], longer, limit)),
    limit: SKIN_LIMIT,
    caution: 'skin-and-heat',
  };
}
