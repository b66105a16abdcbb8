import { isBlock, ownField } from '../schema/block.ts';
import { instrumentSchema } from '../schema/instrument.ts';
import { INSTRUMENT_KINDS, INSTRUMENT_QUANTITY, type InstrumentKind, KIND_FIELDS } from '../schema/instrument-kinds.ts';
import { QUANTITIES } from '../schema/units.ts';
import { fileText } from './file-text.ts';
import { jsonSchemaOf } from './json-schema.ts';
import { schemaLine } from './schema-line.ts';

/** What of an instrument's file is known beforehand. */
export interface NewInstrument {
  name: string;
  /** What it reads; of several, each gets a block. */
  measures: readonly InstrumentKind[];
  /** Other fields that are known, in the shape of the file; for several quantities, `response` and `calibrations` alone. */
  values: Readonly<Record<string, unknown>>;
}

/** Fields of the form for one quantity. */
const OF_ONE = ['measures', 'unit', 'range', 'resolution', 'repeatability', ...Object.keys(KIND_FIELDS)];

/** Two points at least: the schema's own example has one of each. */
const RESPONSIVITY = {
  calibratedAt: 850,
  points: [
    { wavelength: 660, response: 0.82 },
    { wavelength: 850, response: 1 },
  ],
};

/** The text of a new instrument's file, with every field that one of its kind has. */
export function newInstrumentText({ name, measures, values }: NewInstrument): string {
  const schema = jsonSchemaOf(instrumentSchema);
  const [only] = measures;
  if (measures.length < 2) {
    const text = fileText(schema, {
      values: { name, ...(only && { measures: only, unit: unitOf(only) }), ...values },
      asked: ['calibrations'],
      without: only ? notOf(only) : [],
      apart: ['quantities'],
      offered: {
        quantities: { magnetic: { unit: 'uT', range: { from: 0.1, to: 200 }, resolution: 0.01 } },
        responsivity: RESPONSIVITY,
      },
    });
    return schemaLine('instruments') + text;
  }
  const known = values.quantities;
  const blocks = measures.map((kind) => {
    const block = isBlock(known) ? ownField(known, kind) : undefined;
    return [kind, { unit: unitOf(kind), ...(isBlock(block) && block) }] as const;
  });
  const shared = ['response', 'calibrations'].filter((it) => values[it] !== undefined);
  const text = fileText(
    // What a block needs stands in it, unless it is known for all of them.
    { ...schema, else: {} },
    {
      values: { name, ...values, quantities: Object.fromEntries(blocks) },
      asked: measures.flatMap((kind) =>
        ['response', 'calibrations'].filter((it) => !shared.includes(it)).map((it) => `quantities.${kind}.${it}`),
      ),
      offered: Object.fromEntries(measures.map((kind) => [`quantities.${kind}.responsivity`, RESPONSIVITY])),
      without: [...OF_ONE, ...INSTRUMENT_KINDS.filter((it) => !measures.includes(it)).map((it) => `quantities.${it}`)],
    },
  );
  return schemaLine('instruments') + text;
}

const unitOf = (kind: InstrumentKind) => QUANTITIES[INSTRUMENT_QUANTITY[kind]].typed;

/** Fields that an instrument of this kind can't state. */
function notOf(kind: InstrumentKind): string[] {
  const others = Object.entries(KIND_FIELDS).flatMap(([name, only]) => (only === kind ? [] : [name]));
  return kind === 'sound' ? [...others, 'repeatability'] : others;
}
