import type { InstrumentEntry, Ledger } from '../../ledger/ledger.ts';

/** Sessions that a meter was used in: its own list, or the meter above whose list is the same. */
export interface MeterSessions {
  count: number;
  own: InstrumentEntry['usedIn'];
  said?: { id: string; name: string };
}

/** So few are said again. */
const FEW = 3;

/** For each meter its sessions; most meters of a bench were used in the same ones, which are listed once. */
export function sessionLists({ instruments }: Pick<Ledger, 'instruments'>): (it: InstrumentEntry) => MeterSessions {
  const keyOf = ({ usedIn }: InstrumentEntry) => JSON.stringify(usedIn);
  const first = new Map(instruments.toReversed().map((it) => [keyOf(it), it]));
  return (it) => {
    const count = it.usedIn.length;
    const same = first.get(keyOf(it));
    if (count <= FEW || !same || same.id === it.id) return { count, own: it.usedIn };
    return { count, own: [], said: { id: same.id, name: same.data.name } };
  };
}
