import type { Bench } from '../../content/read/read-bench.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import { INSTRUMENT_KINDS, type InstrumentKind, quantityOf } from '../../content/schema/instrument.ts';
import { nearest } from '../../content/schema/suggest.ts';
import { type HeldInstruments, heldInstruments } from '../../ledger/held-instruments.ts';

/**
 * For each kind the instrument whose calibration holds on a day, the one that was calibrated last.
 *
 * @param asked `kind=id`, as flags have it
 * @throws UsageError where an instrument that was asked for is not there, or reads something else
 */
export function chosenInstruments({ instruments }: Bench, day: string, asked: readonly string[]): HeldInstruments {
  const { chosen, lapsed } = heldInstruments(instruments, day);
  for (const text of asked) {
    const [kind, id] = askedInstrument(text, instruments);
    chosen[kind] = id;
  }
  return { chosen, lapsed: lapsed.filter((kind) => chosen[kind] === undefined) };
}

function askedInstrument(text: string, instruments: Bench['instruments']): [InstrumentKind, string] {
  const [name = '', id = ''] = text.split('=', 2);
  const kind = INSTRUMENT_KINDS.find((it) => it === name);
  const flag = `--instrument "${text}"`;
  if (!kind) {
    throw new UsageError(`${flag}; wanted kind=name, where the kind is one of: ${INSTRUMENT_KINDS.join(', ')}`);
  }
  const fitting = [...instruments].filter(([, file]) => quantityOf(file, kind)).map(([it]) => it);
  if (fitting.includes(id)) return [kind, id];
  const near = nearest(id, fitting);
  throw new UsageError(
    `${flag}; wanted an instrument for ${kind}: ${fitting.join(', ') || 'there is none yet'}${near ? `\nDid you mean ${kind}=${near}?` : ''}`,
  );
}
