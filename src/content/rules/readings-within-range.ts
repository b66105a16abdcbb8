import { type Field, fields, problemAt } from '../read/fields.ts';
import type { Source } from '../read/source.ts';
import { INSTRUMENT_KINDS, type InstrumentKind } from '../schema/instrument.ts';
import { INSTRUMENT_QUANTITY } from '../schema/instrument-kinds.ts';
import type { Problem } from '../schema/problem.ts';
import { parseQuantity } from '../schema/quantity.ts';
import { displayRange, meterName, RANGE_DUST } from './display-range.ts';
import type { Rule } from './rule.ts';
import { statedQuantities } from './stated-quantities.ts';

/** Where a session keeps what each kind of instrument showed. Widths of lines are no reading of the display's own range. */
const READINGS: Partial<Record<InstrumentKind, ReadonlyArray<readonly string[]>>> = {
  irradiance: [['peak'], ['grid', 'rows'], ['distances'], ['beyond']],
  spectrum: [
    ['wavelengths', 'red', 'peak'],
    ['wavelengths', 'nearInfrared', 'peak'],
  ],
  mains: [['mains']],
  magnetic: [
    ['magnetic', 'on'],
    ['magnetic', 'off'],
  ],
  electric: [
    ['electric', 'on'],
    ['electric', 'off'],
  ],
  radio: [
    ['radio', 'on'],
    ['radio', 'off'],
  ],
  sound: [
    ['sound', 'on'],
    ['sound', 'off'],
  ],
  flicker: [
    ['flicker', 'red', 'percent'],
    ['flicker', 'nearInfrared', 'percent'],
    ['flicker', 'combined', 'percent'],
  ],
  temperature: [['roomTemperature']],
};

/** Blocks among the readings that hold something else: how far away, and past which edge. */
const NO_READING = new Set(['distance', 'edge', 'past', 'mode', 'note', 'struck']);

/** Above these, canonical units, a reading is absurd whatever the instrument; the schema says so of each. */
const ABSURD: Partial<Record<InstrumentKind, number>> = {
  irradiance: 2000,
  spectrum: 3000,
  mains: 20_000,
  magnetic: 1e6,
  electric: 1e5,
  radio: 1e6,
  sound: 140,
  flicker: 100,
  temperature: 60,
};

/**
 * No display shows more than its range; what it showed was another number, unit or instrument. One problem an instrument and
 * session, at the highest: a wrong range would else be told of by every reading.
 */
export const readingsWithinRange: Rule = {
  id: 'readings-within-range',
  run: ({ panels, instruments }) =>
    [...panels.values()].flatMap((panel) =>
      fields(panel.data, ['sessions', '*']).flatMap(({ path, value: session }) =>
        INSTRUMENT_KINDS.flatMap((kind) => {
          const id = fields(session, ['instruments', kind])[0]?.value;
          const instrument = typeof id === 'string' ? instruments.get(id) : undefined;
          const range = displayRange(statedQuantities(instrument).find((it) => it.kind === kind));
          if (!instrument || !range) return [];
          const readings = (READINGS[kind] ?? []).flatMap((keys) => fields(session, keys, path).flatMap(leaves));
          const over = readings.flatMap((field) => {
            const value = shownValue(field, kind);
            return value !== undefined && value > range.to * (1 + RANGE_DUST) ? [{ ...field, number: value }] : [];
          });
          return problemOf(panel, over, `${range.ends[1]} ${range.unit}`, instrument);
        }),
      ),
    ),
};

/** The readings in a block or list of them, without those that are rejected. */
function leaves({ path, value }: Field): Field[] {
  if (Array.isArray(value)) return value.flatMap((item, i) => leaves({ path: [...path, i], value: item }));
  if (typeof value !== 'object' || value === null) return [{ path, value }];
  if ('struck' in value) return [];
  return Object.entries(value).flatMap(([key, item]) =>
    NO_READING.has(key) ? [] : leaves({ path: [...path, key], value: item }),
  );
}

/** What was shown, in the canonical unit; undefined where it can't be read, is absurd, or says nothing of the end. */
function shownValue(field: Field, kind: InstrumentKind): number | undefined {
  if (typeof field.value !== 'number' && typeof field.value !== 'string') return undefined;
  const max = ABSURD[kind];
  const parsed = parseQuantity(field.value, INSTRUMENT_QUANTITY[kind], {
    bounds: true,
    ...(max !== undefined && { max }),
  });
  // ">300" is how a display says that it is at its end; "<x" says nothing of it.
  return 'reading' in parsed && parsed.reading.bound !== 'below' ? parsed.reading.value : undefined;
}

function problemOf(
  panel: Source,
  over: ReadonlyArray<Field & { number: number }>,
  end: string,
  instrument: Source,
): Problem[] {
  const [highest] = over.toSorted((a, b) => b.number - a.number);
  if (!highest) return [];
  const others = over.length === 1 ? '' : `, the highest of ${over.length} readings above its range`;
  const problem = problemAt(
    panel,
    highest,
    `a reading that the meter can show: the ${meterName(instrument)} ends at ${end}`,
    `another unit, another meter, or the wrong range in ${instrument.file}?`,
  );
  return [{ ...problem, found: `${problem.found}${others}` }];
}
