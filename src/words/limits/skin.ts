import type { SkinResult } from '../../measure/exposure/skin.ts';
import { SKIN_TIME } from '../../measure/exposure/skin-limit.ts';
import { isFigure } from '../../measure/figure.ts';
import { say } from '../say.ts';
import { AT_CAUTIOUS_END, capital } from './amounts.ts';
import { limitSentence } from './citation.ts';
import { CITATIONS } from './citations.ts';
import { cautiousPart, outcome } from './outcome.ts';
import { type LimitWords, worded } from './wording.ts';

/** The skin's share of its thermal limit. */
export function skinWords({ figure }: SkinResult): LimitWords {
  const head = {
    subject: `Heating of the skin, exposures under ${SKIN_TIME} s`,
    label: `share of the limit under ${SKIN_TIME} s`,
  };
  const background = [
    `For a session of minutes the limit is not applicable: the standard has none from ${SKIN_TIME} s on, and pain and heat have to give the warning.`,
    limitSentence(CITATIONS['skin-heating']),
  ];
  if (!isFigure(figure)) {
    return worded(head, { withheld: `No share of the skin limit can be given: ${say(figure.reason)}.`, background });
  }
  const share = outcome(figure, 'high', `of the skin limit for an exposure just under ${SKIN_TIME} s`);
  const end = cautiousPart(figure, 'high');
  return worded(head, {
    ...(end !== undefined && { beside: [`${capital(AT_CAUTIOUS_END)} ${end}.`] }),
    outcome: [`Both channels together, at the distance of the reading, give ${share}.`],
    background,
  });
}
