/** What entries are worth: their values in canonical units, and the meter that read them. */
import { type InstrumentKind, quantityId, quantityOf } from '../../../content/schema/instrument.ts';
import { parseQuantity } from '../../../content/schema/quantity.ts';
import type { QuantityName } from '../../../content/schema/units.ts';
import { instrumentOf } from '../../../ledger/instruments.ts';
import type { Instrument } from '../../../measure/instrument/instrument.ts';
import type { BenchSetup } from './bench-data.ts';
import { openSetup } from './open-setup.ts';
import type { Entry, Run } from './run.ts';
import { withPoint } from './session-data.ts';

/** An entry with its value. */
export interface EntryValue {
  entry: Entry;
  /** In the canonical unit of its quantity. */
  value: number;
  unit: string;
  isBound: boolean;
}

interface Reads {
  quantity: QuantityName;
  kind: InstrumentKind | undefined;
}

/** What is read at a path, by its beginning. */
const READS: ReadonlyArray<readonly [RegExp, Reads]> = [
  [/^(?:grid|peak|beyond|distances)\b/, { quantity: 'irradiance', kind: 'irradiance' }],
  [/^wavelengths\.\w+\.peak$/, { quantity: 'wavelength', kind: 'spectrum' }],
  [/^wavelengths\./, { quantity: 'wavelength', kind: undefined }],
  [/^mains\./, { quantity: 'power', kind: 'mains' }],
  [/\.frequency$/, { quantity: 'frequency', kind: undefined }],
  [/^magnetic\./, { quantity: 'magnetic', kind: 'magnetic' }],
  [/^electric\./, { quantity: 'electric', kind: 'electric' }],
  [/^radio\./, { quantity: 'radio', kind: 'radio' }],
  [/^sound\./, { quantity: 'sound', kind: 'sound' }],
  [/^flicker\./, { quantity: 'percent', kind: 'flicker' }],
  [/^warmUp$/, { quantity: 'time', kind: undefined }],
  [/^roomTemperature$/, { quantity: 'temperature', kind: 'temperature' }],
  [/^(?:field|housing)\./, { quantity: 'length', kind: undefined }],
  [/^weight$/, { quantity: 'mass', kind: undefined }],
];

/** What is read at a path, and with which kind of meter; undefined where there is no such place. */
export const readsAt = (path: string): Reads | undefined => READS.find(([it]) => it.test(path))?.[1];

/** An entry's value; undefined where what was typed is none. */
export function entryValue(entry: Entry): EntryValue | undefined {
  const reads = readsAt(entry.path);
  const parsed = reads && parseQuantity(withPoint(entry.written), reads.quantity, { bounds: true });
  if (!parsed || !('reading' in parsed)) return undefined;
  const { value, unit, bound } = parsed.reading;
  return { entry, value, unit, isBound: bound !== undefined };
}

/** Values of the entries that count, in their order. */
export const countingValues = ({ entries }: Run): EntryValue[] =>
  entries.flatMap((it) => (it.struck === undefined ? (entryValue(it) ?? []) : []));

/** The meter of a kind that the run names, as it is calibrated on the day of the run. */
export function meterOf(run: Run, setup: BenchSetup, kind: InstrumentKind): Instrument | undefined {
  const instrument = openSetup(setup).entries.instruments.get(run.instruments[kind] ?? '');
  const quantity = quantityOf(instrument?.data, kind);
  return instrument && quantity && instrumentOf(quantityId(instrument.id, instrument.data, kind), quantity, run.date);
}

/** A length as it was set, cm; undefined where it is none. */
export function lengthOf(written: string): number | undefined {
  const parsed = parseQuantity(withPoint(written), 'length');
  return 'reading' in parsed ? parsed.reading.value : undefined;
}
