import { type Figure, gap, isFigure } from '../figure.ts';
import { methodReference } from '../method-versions.ts';
import { number } from '../numbers.ts';
import { productFigure } from '../uncertainty.ts';
import { RANGE_EDGES, rangeOf, SLEEPING_PLACES } from './building-biology.ts';
import { FIELD_NAMES, type FieldKind, type FieldReading, readingInCalculation, readWords } from './field-reading.ts';
import { cited, type LimitResult, worded } from './limit.ts';
import { amount, cautiousEnd, outcome, relation } from './words.ts';

/** What has to be said of each reading before it is held against the guideline. */
const KIND_WORDS: Record<FieldKind, string> = {
  magnetic: '',
  electric: 'The line is the one for readings against ground potential; how the meter was grounded is not recorded.',
  radio: 'The guideline is for the peak of each source; how the meter averages is not recorded.',
};

const STATUS =
  'That is a private precautionary guideline without official status, for beds at night and not for minutes before a panel.';

/** The reading with the panel on as a multiple of the guideline's lowest line, and the range it falls into. */
export function precautionResult(session: string, reading: FieldReading): LimitResult {
  const { kind, on } = reading;
  const metric = `${kind}-field-precaution` as const;
  const line = RANGE_EDGES[kind][0];
  const figure = isFigure(on)
    ? productFigure(
        {
          id: `${session}/${metric}`,
          metric,
          unit: '1',
          basis: 'derived',
          method: methodReference('building-biology'),
          calculation: `k ${relation(on.bound)} ${readingInCalculation(kind, on)} ÷ ${number(line)} ${on.unit} = ${number(on.value / line)}`,
        },
        [{ figure: on, power: 1 }],
        1 / line,
      )
    : gap(metric, on.reason);
  const guideline = `The lines are the edges of the ${cited(SLEEPING_PLACES)}.`;
  return {
    id: metric,
    title: `${FIELD_NAMES[kind].charAt(0).toUpperCase()}${FIELD_NAMES[kind].slice(1)}: multiple of a precautionary line for beds`,
    figure,
    ...(isFigure(figure) && isFigure(on)
      ? worded(
          [
            readWords(reading),
            `The reading with the panel on, the room’s own field included, is ${outcome(figure, 'high', `the lowest line for sleeping places, ${amount(line, on.unit)}`)}.`,
            rangeWords(kind, on),
          ],
          KIND_WORDS[kind],
          guideline,
          STATUS,
        )
      : worded(
          [
            `No multiple of the line for sleeping places can be given for the ${FIELD_NAMES[kind]}: ${isFigure(on) ? '' : on.reason}.`,
          ],
          guideline,
          STATUS,
        )),
    limit: SLEEPING_PLACES,
    caution: 'implants-and-fields',
  };
}

/** The range by the cautious end; a bound gives the farthest or nearest range. */
function rangeWords(kind: FieldKind, on: Figure): string {
  const range = rangeOf(kind, cautiousEnd(on, 'high') ?? on.value);
  const reach = on.bound === 'below' ? 'at most ' : on.bound === 'above' ? 'at least ' : '';
  return `In the guideline’s words that is ${reach}“${range}”${on.interval95 ? ', by the cautious end' : ''}${on.bound === 'below' ? ', as far as the meter sees' : ''}; an edge counts to the range above it, which is our own rule.`;
}
