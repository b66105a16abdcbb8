import { carriedBlock, carriedOf } from '../content/schema/carried.ts';
import type { InstrumentKind } from '../content/schema/instrument.ts';
import type { Session } from '../content/schema/session.ts';

/** The day on which a kind of reading was taken that stands for a session. */
export function dayRead(own: Session, kind: InstrumentKind): string {
  return carriedOf(own).find(({ name }) => carriedBlock(name).instrument === kind)?.from ?? own.date;
}
