import type { Ledger } from '../../../ledger/ledger.ts';
import { showDate } from '../../../words/format.ts';

/** What the guide holds, in a line: "12 panels. Readings to 17 Nov 2026, prices to 18 Nov 2026." */
export function holdingsWords({ panels }: Pick<Ledger, 'panels'>): string {
  const shown = [...panels.values()].filter((it) => it.data.status === 'published');
  const latest = (days: string[]) => days.toSorted().at(-1);
  const read = latest(shown.flatMap((it) => it.current?.date ?? []));
  const priced = latest(shown.flatMap((it) => it.prices.map(({ price }) => price.date)));
  const dates = [read && `readings to ${showDate(read)}`, priced && `prices to ${showDate(priced)}`].filter(Boolean);
  const count = `${shown.length} ${shown.length === 1 ? 'panel' : 'panels'}`;
  return `${[count, ...dates].join(', ')}.`;
}

/** Who pays for the guide in one line: its own, or the first sentence of all that there is to say. */
export function payingWords({ disclosure, disclosureShort }: Ledger['guide']): string {
  const line = disclosureShort ?? /^.*?[.!?](?=\s|$)/s.exec(disclosure.trim())?.[0] ?? disclosure;
  return line.replaceAll(' %', '\u00a0%');
}
