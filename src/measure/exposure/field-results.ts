import { type Figure, type FigureOrGap, gap, isFigure } from '../figure.ts';
import { methodReference } from '../method-versions.ts';
import { number } from '../numbers.ts';
import { productFigure } from '../uncertainty.ts';
import { FIELD_NAMES, type FieldKind, type FieldReading, readingInWorking, readWords } from './field-reading.ts';
import { cited, type Limit, type LimitResult, type Wording, worded } from './limit.ts';
import {
  ELECTRIC_LEVEL,
  electricReferenceLevel,
  LOWEST_RADIO_LEVEL,
  MAGNETIC_LEVEL,
  magneticReferenceLevel,
  RADIO_LEVEL,
} from './reference-levels.ts';
import { amount, outcome, relation } from './words.ts';

/** Frequencies of the mains, Hz. */
export type MainsFrequency = 50 | 60;

/** 1 W/m² = 1000 mW/m². */
const MILLI = 1000;

/** What a field is held against: the level in the unit of its reading, and what has to be said of that. */
interface Level {
  limit: Limit;
  value: number;
  note: string;
}

function levelFor(kind: FieldKind, mains: MainsFrequency): Level {
  const unknown = `the meter gives no frequency; the mains’ ${mains} Hz is taken`;
  if (kind === 'magnetic') {
    return {
      limit: MAGNETIC_LEVEL,
      value: magneticReferenceLevel(mains),
      note: `${unknown}, and for parts at higher frequencies, as from drivers, the level falls to ${magneticReferenceLevel(1e6)} µT`,
    };
  }
  if (kind === 'electric') {
    return {
      limit: ELECTRIC_LEVEL,
      value: electricReferenceLevel(mains),
      note: `${unknown}, and for parts at higher frequencies, as from drivers, the level falls to ${electricReferenceLevel(1e6)} V/m`,
    };
  }
  return {
    limit: RADIO_LEVEL,
    value: MILLI * LOWEST_RADIO_LEVEL,
    note: `the meter gives no frequency; the lowest of the levels for power density, ${LOWEST_RADIO_LEVEL} W/m², is taken, and above 2 GHz the share would be a fifth of this one; the levels are for averages over 30 min, away from the source`,
  };
}

/** What none of the levels covers. */
const IMPLANTS = 'Implants may be disturbed below the level too: ask the clinic or the implant’s maker.';

/** The reading with the panel on as a share of the reference level, %. The room's own field is in it. */
export function fieldResult(session: string, reading: FieldReading, mains: MainsFrequency): LimitResult {
  const { kind, on } = reading;
  const { limit, value, note } = levelFor(kind, mains);
  const metric = `${kind}-field-share`;
  const figure = isFigure(on) ? shareOf(session, metric, reading, on, value, note) : gap(metric, on.reason);
  return {
    id: metric,
    title: `${capital(FIELD_NAMES[kind])}: share of the reference level`,
    figure,
    ...wording(reading, figure, value, note, `The level is the ${cited(limit)}.`),
    limit,
    caution: 'implants-and-fields',
  };
}

function shareOf(
  session: string,
  metric: string,
  { kind }: FieldReading,
  on: Figure,
  level: number,
  note: string,
): Figure {
  return productFigure(
    {
      id: `${session}/${metric}`,
      metric,
      unit: '%',
      basis: 'derived',
      method: methodReference('field-levels'),
      notes: [note],
      working: `s ${relation(on.bound)} 100 × ${readingInWorking(kind, on)} ÷ ${number(level)} ${on.unit} = ${number((100 * on.value) / level)} %`,
    },
    [{ figure: on, power: 1 }],
    100 / level,
  );
}

function wording(reading: FieldReading, figure: FigureOrGap, level: number, note: string, limit: string): Wording {
  const { kind, on } = reading;
  if (!isFigure(figure) || !isFigure(on)) {
    const reason = isFigure(figure) ? '' : figure.reason;
    return worded([`No share of the level can be given for the ${FIELD_NAMES[kind]}: ${reason}.`], limit, IMPLANTS);
  }
  return worded(
    [
      readWords(reading),
      `The reading with the panel on, the room’s own field included, is ${outcome(figure, 'high', `of the level, ${amount(level, on.unit)}`)}.`,
    ],
    `${capital(note)}.`,
    limit,
    IMPLANTS,
  );
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
