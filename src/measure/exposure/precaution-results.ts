import { gap, isFigure } from '../figure.ts';
import { identityOf } from '../metrics.ts';
import { number } from '../numbers.ts';
import { productFigure } from '../uncertainty.ts';
import { type PrecautionRange, RANGE_EDGES, rangeOf } from './building-biology.ts';
import { cautiousEnd } from './cautious-end.ts';
import { type FieldReading, readingInUnits } from './field-reading.ts';
import type { HeldFigure } from './limit.ts';
import { relation } from './made-of.ts';

/** A field beside the private guideline for beds. */
export interface PrecautionResult extends HeldFigure {
  hazard: 'precaution';
  reading: FieldReading;
  /** The guideline's lowest line, in the unit of the reading. */
  line: number;
  /** By the cautious end; a bound gives the farthest or nearest range. Undefined without a reading. */
  range: PrecautionRange | undefined;
}

/** The reading with the panel on as a multiple of the guideline's lowest line, and the range it falls into. */
export function precautionResult(session: string, reading: FieldReading): PrecautionResult {
  const { kind, on } = reading;
  const metric = `${kind}-field-precaution` as const;
  const [line] = RANGE_EDGES[kind];
  const figure = isFigure(on)
    ? productFigure(
        {
          ...identityOf(metric, session),
          basis: 'derived',
          calculation: `k ${relation(on.bound)} ${readingInUnits(kind, on)} ÷ ${number(line)} ${on.unit} = ${number(on.value / line)}`,
        },
        [{ figure: on, power: 1 }],
        1 / line,
      )
    : gap(metric, on.reason);
  return {
    hazard: 'precaution',
    id: metric,
    figure,
    reading,
    line,
    range: isFigure(on) ? rangeOf(kind, cautiousEnd(on, 'high') ?? on.value) : undefined,
    limit: 'sleeping-places',
  };
}
