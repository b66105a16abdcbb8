import type { Problem } from '../schema/problem.ts';
import { correctionsFit } from './corrections-fit.ts';
import { linksLeadSomewhere } from './links-lead-somewhere.ts';
import { othersReadable } from './others-readable.ts';
import { photosUsable } from './photos-usable.ts';
import { quietMarkup } from './quiet-markup.ts';
import type { RawCollections, Rule, Surroundings } from './rule.ts';
import { RULES_OF_TEXT } from './rules-of-text.ts';
import { sitePlain } from './site-plain.ts';
import { visibleSigns } from './visible-signs.ts';
import { withdrawnAddresses } from './withdrawn-addresses.ts';

/** All rules between files. What one file may say by itself stands in its schema. */
export const RULES: readonly Rule[] = [
  ...RULES_OF_TEXT,
  sitePlain,
  othersReadable,
  correctionsFit,
  photosUsable,
  linksLeadSomewhere,
  quietMarkup,
  visibleSigns,
  withdrawnAddresses,
];

/** Everything that one file says wrongly of another, of itself in two places, or of what is around it. */
export function contentProblems(content: RawCollections, around: Surroundings): Problem[] {
  return RULES.flatMap((rule) => rule.run(content, around));
}
