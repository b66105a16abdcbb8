import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { writeWhole } from '../content/read/write-whole.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { RankedGuide } from '../site/changes/compare-ranks.ts';
import { ranksOfLedger } from '../site/changes/state-of-ledger.ts';

const NAME = 'ranks.json';

/** The file of a guide that has its ranks, and much else: with 1,000 panels, 30 MB. */
const dataOf = (site: string) => join(site, 'data', 'panels.json');

/** Stands for that file as it lies there: another build's would have another time. */
function stateOf(site: string): string | undefined {
  const stat = statSync(dataOf(site), { bigint: true, throwIfNoEntry: false });
  return stat && `${dataOf(site)} ${stat.size} ${stat.mtimeNs} ${stat.ino}`;
}

/** Keeps the ranks of the guide that was put in its place just now, so that the next build need not read all of its data. */
export function keepRanks(cache: string, site: string, ledger: Ledger): void {
  const { panels } = ranksOfLedger(ledger);
  const kept = { state: stateOf(site), builtFor: ledger.today, panels: [...panels] };
  try {
    writeWhole(join(cache, NAME), JSON.stringify(kept));
  } catch {
    // What can't be kept is read from the guide.
  }
}

/** The ranks of the guide that lies there; undefined where they were not kept, or it is another one. */
export function keptRanks(cache: string, site: string): (RankedGuide & { builtFor: string }) | undefined {
  try {
    const { state, builtFor, panels } = JSON.parse(readFileSync(join(cache, NAME), 'utf8'));
    return state !== undefined && state === stateOf(site) ? { builtFor, panels: new Map(panels) } : undefined;
  } catch {
    return undefined;
  }
}
