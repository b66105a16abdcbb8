import { type Figure, type FigureOrGap, gap, isFigure } from '../figure.ts';
import { methodReference } from '../method-versions.ts';
import type { MetricId } from '../metrics.ts';
import { number } from '../numbers.ts';
import { productFigure } from '../uncertainty.ts';
import { hertz, type Level, type Levels, levelsFor, type MainsFrequency, statedFrequency } from './field-levels.ts';
import { FIELD_NAMES, type FieldReading, readingInCalculation, readWords } from './field-reading.ts';
import { cited, type LimitResult, type Wording, worded } from './limit.ts';
import { amount, outcome, relation } from './words.ts';

/** What none of the levels covers. */
const IMPLANTS = 'Implants may be disturbed below the level too: ask the clinic or the implant’s maker.';
/** What neither end holds. */
const MIXED =
  'Where a field has parts at several frequencies, ICNIRP adds their shares, which can come to more than either end.';

/**
 * The reading with the panel on as a share of the reference level, %; the room's own field is in it. Magnetic and
 * electric fields without a frequency give two shares, the strict end first; with one, the share at that frequency,
 * and a gap in the place of the other. Radio gives one.
 */
export function fieldResults(session: string, reading: FieldReading, mains: MainsFrequency): LimitResult[] {
  const { kind, on } = reading;
  const frequency = statedFrequency(reading);
  const levels = levelsFor(kind, mains, frequency);
  const share = (metric: MetricId, level: Level) =>
    isFigure(on) ? shareOf(`${session}/${metric}`, metric, reading, on, level, levels) : gap(metric, on.reason);
  const metric = `${kind}-field-share` as const;
  const strict = share(metric, levels.strict);
  const name = capital(FIELD_NAMES[kind]);
  const common = { limit: levels.limit, caution: 'implants-and-fields' } as const;
  const title = `${name}: share of the reference level`;
  if (kind === 'radio') return [{ ...common, id: metric, title, figure: strict, ...wording(reading, levels, strict) }];
  const atMains = `${kind}-field-share-at-mains` as const;
  const mild = levels.mild
    ? share(atMains, levels.mild)
    : gap(atMains, isFigure(on) ? notAtMains(frequency) : on.reason);
  const words = wording(reading, levels, strict, mild);
  return [
    { ...common, id: metric, title, figure: strict, ...words },
    { ...common, id: atMains, title: `${name}: share of the level at the mains’ frequency`, figure: mild, ...words },
  ];
}

/** Why there is no share at the mains' frequency. */
function notAtMains(frequency: Figure | undefined): string {
  return `the meter showed ${frequency ? hertz(frequency) : 'a frequency'}, and the share is for that one`;
}

function shareOf(
  id: string,
  metric: MetricId,
  reading: FieldReading,
  on: Figure,
  level: Level,
  levels: Levels,
): Figure {
  const figure = productFigure(
    {
      id,
      metric,
      unit: '%',
      basis: 'derived',
      method: methodReference('field-levels'),
      notes: [level.condition ? `holds if ${level.condition}; ${levels.frequency}` : levels.frequency],
      calculation: `s ${relation(on.bound)} 100 × ${readingInCalculation(reading.kind, on)} ÷ ${number(level.value)} ${on.unit} = ${number((100 * on.value) / level.value)} %`,
    },
    [{ figure: on, power: 1 }],
    100 / level.value,
  );
  const frequency = statedFrequency(reading);
  return frequency && reading.kind !== 'radio' ? { ...figure, inputs: [...figure.inputs, frequency.id] } : figure;
}

function wording(reading: FieldReading, levels: Levels, strict: FigureOrGap, mild?: FigureOrGap): Wording {
  const { kind, on } = reading;
  const limit = `The level is the ${cited(levels.limit)}.`;
  if (!isFigure(strict) || !isFigure(on)) {
    const reason = isFigure(strict) ? '' : strict.reason;
    return worded([`No share of the level can be given for the ${FIELD_NAMES[kind]}: ${reason}.`], limit, IMPLANTS);
  }
  const of = (figure: Figure, level: Level) => outcome(figure, 'high', `of the level, ${amount(level.value, on.unit)}`);
  const whole = 'the reading with the panel on, the room’s own field included,';
  const said =
    levels.mild && mild && isFigure(mild)
      ? `If ${levels.strict.condition}, ${whole} is ${of(strict, levels.strict)}; if ${levels.mild.condition}, it is ${of(mild, levels.mild)}.`
      : capital(
          `${levels.strict.condition ? `if ${levels.strict.condition}, ` : ''}${whole} is ${of(strict, levels.strict)}.`,
        );
  return worded(
    [readWords(reading), kind === 'radio' ? '' : seenWords(reading), said],
    `${capital(levels.frequency)}.`,
    kind === 'radio' ? '' : MIXED,
    limit,
    IMPLANTS,
  );
}

/** What the meter can see at all: a reading, and a bound too, says nothing of the rest. */
function seenWords({ response }: FieldReading): string {
  const file =
    response === undefined ? 'what it responds to is not recorded' : `its file says “${response.replace(/\.$/, '')}”`;
  return `What the meter can’t see is in no share: ${file}.`;
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
