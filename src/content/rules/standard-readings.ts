import { type Field, fields, problemAt, texts } from '../read/fields.ts';
import type { Source } from '../read/source.ts';
import { isBlock } from '../schema/block.ts';
import { INSTRUMENT_QUANTITY } from '../schema/instrument-kinds.ts';
import type { Problem } from '../schema/problem.ts';
import { parseQuantity } from '../schema/quantity.ts';
import type { QuantityName } from '../schema/units.ts';
import { displayRange, meterName, RANGE_DUST } from './display-range.ts';
import type { Rule } from './rule.ts';
import { statedQuantities } from './stated-quantities.ts';

/** Repeats of one steady thing on one day that lie this factor apart were not read off it: our own choice. */
const MOST_APART = 1.5;

/**
 * Readings of a check standard are of what its meter reads, within the range of its display, and the repeats of a day
 * are near one another.
 */
export const standardReadings: Rule = {
  id: 'standard-readings',
  run: ({ standards, instruments }) =>
    [...standards.values()].flatMap((standard) => {
      const [id] = texts(standard, 'instrument');
      const meter = id && meterOf(instruments.get(id.value), texts(standard, 'reads')[0]?.value);
      if (!meter) return [];
      const days = fields(standard.data, ['readings', '*', 'value']).map((day) => problemsOfDay(standard, day, meter));
      const [first, ...more] = days.flatMap((it) => it.outside);
      // A wrong range would else be told of by every reading.
      const others = more.length === 0 ? '' : `, the first of ${more.length + 1} readings outside its range`;
      const outside = first ? [{ ...first, found: `${first.found}${others}` }] : [];
      return [...outside, ...days.flatMap((it) => it.problems)];
    }),
};

interface Meter {
  quantity: QuantityName;
  name: string;
  file: string;
  /** Ends of its display in the canonical unit, and as its file has them. */
  from: number;
  to: number;
  written: string;
}

/** What a meter can show; undefined where its file does not say so in a way that fits, which is a problem of that file. */
function meterOf(source: Source | undefined, reads: unknown): Meter | undefined {
  const stated = source && statedQuantities(source).find((it) => reads === undefined || it.kind === reads);
  const range = displayRange(stated);
  if (!source || !stated || !range) return undefined;
  const { from, to, ends, unit } = range;
  const quantity = INSTRUMENT_QUANTITY[stated.kind];
  return { quantity, name: meterName(source), file: source.file, from, to, written: `${ends.join(' to ')} ${unit}` };
}

function problemsOfDay(standard: Source, day: Field, meter: Meter): { outside: Problem[]; problems: Problem[] } {
  const repeats = Array.isArray(day.value)
    ? day.value.map((value, i): Field => ({ path: [...day.path, i], value }))
    : [day];
  const values: number[] = [];
  const outside: Problem[] = [];
  const problems: Problem[] = [];
  for (const it of repeats) {
    const isStruck = isBlock(it.value);
    const field = isStruck ? fields(it.value, ['value'], it.path)[0] : it;
    if (!field || (typeof field.value !== 'number' && typeof field.value !== 'string')) continue;
    const parsed = parseQuantity(field.value, meter.quantity);
    if ('fault' in parsed) problems.push(problemAt(standard, field, parsed.fault.wanted, parsed.fault.hint));
    else if (!isStruck) {
      const { value } = parsed.reading;
      values.push(value);
      if (value < meter.from * (1 - RANGE_DUST) || value > meter.to * (1 + RANGE_DUST)) {
        const wanted = `a reading that the ${meter.name} can show: ${meter.written}`;
        outside.push(problemAt(standard, field, wanted, `another unit, or the wrong range in ${meter.file}?`));
      }
    }
  }
  const isRead = problems.length + outside.length === 0;
  return { outside, problems: isRead ? apart(standard, day, values) : problems };
}

/** A decimal comma in a list makes two readings of one: 41,2 is 41 and 2. */
function apart(standard: Source, day: Field, values: readonly number[]): Problem[] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  if (values.length < 2 || low <= 0 || high <= MOST_APART * low) return [];
  const wanted = 'repeats of one steady thing, near one another';
  const hint = 'write decimals after a point; strike a slip out as { value: …, struck: why }';
  return [{ ...problemAt(standard, day, wanted, hint), found: `${low} and ${high} on one day` }];
}
