import type { PrecautionRange } from '../../measure/exposure/building-biology.ts';
import type { FieldKind } from '../../measure/exposure/field-reading.ts';
import type { PrecautionResult } from '../../measure/exposure/precaution-results.ts';
import { type Figure, isFigure } from '../../measure/figure.ts';
import type { Statement } from '../../measure/statement.ts';
import { say } from '../say.ts';
import { AT_CAUTIOUS_END, amount, capital } from './amounts.ts';
import { cited } from './citation.ts';
import { CITATIONS } from './citations.ts';
import { FIELD_NAMES, readWords } from './field-words.ts';
import { cautiousPart, outcome } from './outcome.ts';
import { type LimitWords, worded } from './wording.ts';

/** The four ranges in the words of SBM-2015. */
export const RANGE_WORDS: Readonly<Record<PrecautionRange, string>> = {
  'no-anomaly': 'No anomaly',
  slight: 'Slight anomaly',
  severe: 'Severe anomaly',
  extreme: 'Extreme anomaly',
};

/** What has to be said of each reading before it is held against the guideline. */
const KIND_WORDS: Readonly<Record<FieldKind, string>> = {
  magnetic: '',
  electric: 'The line is the one for readings against ground potential; how the meter was grounded is not recorded.',
  radio: 'The guideline is for the peak of each source; how the meter averages is not recorded.',
};

const STATUS =
  'That is a private precautionary guideline without official status, for beds at night and not for minutes before a panel.';

/** The guideline leaves it open. */
const EDGES = 'An edge counts to the range above it, which is our own rule.';

/** A field as a multiple of the lowest line of the guideline for beds. */
export function precautionWords({ figure, reading, line, range }: PrecautionResult): LimitWords {
  const { kind, on } = reading;
  const head = { subject: capital(FIELD_NAMES[kind]), aspect: 'multiple of a precautionary line for beds' };
  const guideline = `The lines are the edges of the ${cited(CITATIONS['sleeping-places'])}.`;
  const without = (reason: Statement) =>
    worded(head, {
      withheld: `No multiple of the line for sleeping places can be given for the ${FIELD_NAMES[kind]}: ${say(reason)}.`,
      background: [guideline, STATUS],
    });
  if (!isFigure(on)) return without(on.reason);
  if (!isFigure(figure)) return without(figure.reason);
  const multiple = outcome(figure, 'high', `the lowest line for sleeping places, ${amount(line, on.unit)}`);
  const end = cautiousPart(figure, 'high');
  return worded(head, {
    ...(end !== undefined && { beside: [`${capital(AT_CAUTIOUS_END)}, with the room’s own field, ${end}.`] }),
    outcome: [
      readWords(reading),
      `The reading with the panel on, the room’s own field included, is ${multiple}.`,
      range === undefined ? '' : rangeWords(range, on),
    ],
    background: [range === undefined ? '' : EDGES, KIND_WORDS[kind], guideline, STATUS],
  });
}

function rangeWords(range: PrecautionRange, { bound, interval95 }: Figure): string {
  const reach = bound === 'below' ? 'at most ' : bound === 'above' ? 'at least ' : '';
  return `In the guideline’s words that is ${reach}“${RANGE_WORDS[range]}”${interval95 ? ', by the cautious end' : ''}${bound === 'below' ? ', as far as the meter sees' : ''}.`;
}
