import type { Level } from '../../measure/exposure/field-levels.ts';
import type { FieldReading } from '../../measure/exposure/field-reading.ts';
import type { FieldResult } from '../../measure/exposure/field-results.ts';
import { SLOPE_TO } from '../../measure/exposure/reference-levels.ts';
import { type Figure, isFigure } from '../../measure/figure.ts';
import type { Statement } from '../../measure/statement.ts';
import { say } from '../say.ts';
import { AT_CAUTIOUS_END, amount, capital, hertzWords } from './amounts.ts';
import { cited } from './citation.ts';
import { CITATIONS } from './citations.ts';
import { conditionWords, frequencyTaken } from './field-frequency.ts';
import { FIELD_NAMES, readWords } from './field-words.ts';
import { cautiousPart, outcome } from './outcome.ts';
import { type LimitWords, worded } from './wording.ts';

/** What none of the levels covers. */
const IMPLANTS = 'Implants may be disturbed below the level too: ask the clinic or the implant’s maker.';
/** What neither end holds. */
const MIXED =
  'Where a field has parts at several frequencies, ICNIRP adds their shares, which can come to more than either end.';

/** Why the strict end is told first. */
const STRICT_FIRST =
  'Drivers work at tens of kilohertz, where the level is lowest, so that the strict end comes first.';
/** What the lowest level for power density leaves out. */
const RADIO =
  'Above 2 GHz the share would be a fifth of this one; the levels are for averages over 30 min, away from the source.';

/** A field's share of a reference level; both ends are told in one sentence. */
export function fieldWords(result: FieldResult): LimitWords {
  const { reading, levels, strict, mild } = result;
  const { kind, on } = reading;
  const head = headOf(result);
  const limit = `The level is the ${cited(CITATIONS[levels.limit])}.`;
  const without = (reason: Statement) =>
    worded(head, {
      withheld: `No share of the level can be given for the ${FIELD_NAMES[kind]}: ${say(reason)}.`,
      background: [limit, IMPLANTS],
    });
  if (!isFigure(on)) return without(on.reason);
  if (!isFigure(strict)) return without(strict.reason);
  const isRadio = kind === 'radio';
  const seen = isRadio ? '' : seenWords(reading);
  const ends = endWords(result, strict);
  return worded(head, {
    outcome: [readWords(reading), seen, shareWords(result, strict, on)],
    ...(ends !== undefined && { beside: [seen, ends] }),
    own: [`${capital(frequencyTaken(levels.strict.frequency))}.`],
    background: [...(isRadio ? [RADIO] : [isFigure(mild) ? STRICT_FIRST : '', MIXED]), limit, IMPLANTS],
  });
}

function headOf({ reading: { kind }, end }: FieldResult) {
  const subject = capital(FIELD_NAMES[kind]);
  if (end === 'mild') return { subject, aspect: 'share of the level at the mains’ frequency' };
  const aspect = 'share of the reference level';
  if (kind === 'radio') return { subject, aspect };
  return { subject, aspect, label: `share of the level above ${hertzWords(SLOPE_TO)}, or at the frequency read` };
}

function shareWords({ levels, mild }: FieldResult, strict: Figure, { unit }: Figure): string {
  const of = (figure: Figure, { value }: Level) => outcome(figure, 'high', `of the level, ${amount(value, unit)}`);
  const condition = ({ frequency }: Level) => (frequency ? `if ${conditionWords(frequency)}, ` : '');
  const whole = 'the reading with the panel on, the room’s own field included,';
  const first = `${condition(levels.strict)}${whole} is ${of(strict, levels.strict)}`;
  if (!levels.mild || !isFigure(mild)) return `${capital(first)}.`;
  return `${capital(first)}; ${condition(levels.mild)}it is ${of(mild, levels.mild)}.`;
}

/** The cautious ends of both shares; undefined where one has none. */
function endWords({ levels, mild }: FieldResult, strict: Figure): string | undefined {
  const part = (figure: Figure, { frequency }: Level) => {
    const end = cautiousPart(figure, 'high');
    return end && `${end}${frequency ? ` if ${conditionWords(frequency)}` : ''}`;
  };
  const first = part(strict, levels.strict);
  const second = levels.mild && isFigure(mild) ? part(mild, levels.mild) : '';
  if (first === undefined || second === undefined) return undefined;
  return `${capital(AT_CAUTIOUS_END)}, with the room’s own field, ${[first, second].filter((it) => it !== '').join(', ')}.`;
}

/** What the instrument can see at all: a reading, and a bound too, says nothing of the rest. */
function seenWords({ response }: FieldReading): string {
  const file =
    response === undefined ? 'what it responds to is not recorded' : `its file says “${response.replace(/\.$/, '')}”`;
  return `What the meter can’t see is in no share: ${file}.`;
}
