import { carriedBlock, carriedOf } from '../../content/schema/carried.ts';
import type { Session } from '../../content/schema/session.ts';
import { listed, showDate } from '../../words/format.ts';

/** What a session did not read again, by the day that it is from: `wavelengths and mains draw from 10 Nov 2026`. */
export function carriedLines(session: Session): Array<{ text: string; from: string }> {
  return [...Map.groupBy(carriedOf(session), (it) => it.from)]
    .toSorted(([a], [b]) => b.localeCompare(a))
    .map(([from, blocks]) => ({
      from,
      text: `${listed(blocks.map((it) => carriedBlock(it.name).name))} from ${showDate(from)}`,
    }));
}
