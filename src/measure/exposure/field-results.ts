import { type Figure, type FigureOrGap, gap, isFigure } from '../figure.ts';
import { identityOf, type ListedMetricId } from '../metrics.ts';
import { number } from '../numbers.ts';
import type { Statement } from '../statement.ts';
import { productFigure } from '../uncertainty.ts';
import {
  type FieldFrequency,
  type Level,
  type Levels,
  levelsFor,
  type MainsFrequency,
  statedFrequency,
} from './field-levels.ts';
import { type FieldReading, readingInUnits } from './field-reading.ts';
import type { HeldFigure } from './limit.ts';
import { relation } from './made-of.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** What a share of a reference level takes for granted. */
    'field-share-holds-if': { frequency: FieldFrequency };
    'field-radio-lowest-level': object;
    /** Why there is no share at the mains' frequency: the one that the instrument showed, Hz, counts. */
    'field-share-at-shown-frequency': { hertz: number };
  }
}

/** A field as a share of a reference level. Both ends of one field have the same words. */
export interface FieldResult extends HeldFigure {
  hazard: 'field';
  reading: FieldReading;
  levels: Levels;
  /** Which of the two this one is. */
  end: 'strict' | 'mild';
  strict: FigureOrGap;
  /** Undefined for radio. */
  mild: FigureOrGap | undefined;
}

/**
 * The reading with the panel on as a share of the reference level, %; the room's own field is in it. Magnetic and
 * electric fields without a frequency give two shares, the strict end first; with one, the share at that frequency,
 * and a gap in the place of the other. Radio gives one.
 */
export function fieldResults(session: string, reading: FieldReading, mains: MainsFrequency): FieldResult[] {
  const { kind, on } = reading;
  const frequency = statedFrequency(reading);
  const levels = levelsFor(kind, mains, frequency);
  const share = (metric: ListedMetricId, level: Level) =>
    isFigure(on) ? shareOf(session, metric, reading, on, level) : gap(metric, on.reason);
  const metric = `${kind}-field-share` as const;
  const strict = share(metric, levels.strict);
  const common = {
    hazard: 'field',
    reading,
    levels,
    strict,
    limit: levels.limit,
  } as const;
  if (kind === 'radio') return [{ ...common, id: metric, end: 'strict', figure: strict, mild: undefined }];
  const atMains = `${kind}-field-share-at-mains` as const;
  const mild = levels.mild
    ? share(atMains, levels.mild)
    : gap(atMains, isFigure(on) ? shownInstead(levels.strict) : on.reason);
  return [
    { ...common, id: metric, end: 'strict', figure: strict, mild },
    { ...common, id: atMains, end: 'mild', figure: mild, mild },
  ];
}

/** Why there is no share at the mains' frequency: a RangeError where the instrument showed none. */
function shownInstead({ frequency }: Level): Statement {
  if (frequency?.from !== 'instrument') throw new RangeError('without a shown frequency there are two ends');
  return { code: 'field-share-at-shown-frequency', hertz: frequency.hertz };
}

function shareOf(session: string, metric: ListedMetricId, reading: FieldReading, on: Figure, level: Level): Figure {
  const figure = productFigure(
    {
      ...identityOf(metric, session),
      basis: 'derived',
      notes: [
        level.frequency
          ? { code: 'field-share-holds-if', frequency: level.frequency }
          : { code: 'field-radio-lowest-level' },
      ],
      calculation: `s ${relation(on.bound)} 100 × ${readingInUnits(reading.kind, on)} ÷ ${number(level.value)} ${on.unit} = ${number((100 * on.value) / level.value)} %`,
    },
    [{ figure: on, power: 1 }],
    100 / level.value,
  );
  const frequency = statedFrequency(reading);
  return frequency && reading.kind !== 'radio' ? { ...figure, inputs: [...figure.inputs, frequency.id] } : figure;
}
