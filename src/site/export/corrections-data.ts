import type { CorrectedValue, CorrectionEntry } from '../../ledger/corrections.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { correctionAddress } from '../shared/corrections.ts';
import { siteAddress } from '../shared/site-address.ts';

/** Corrections whose panel readers can see; those of methods. */
export function publicCorrections({ corrections, panels }: Ledger): CorrectionEntry[] {
  return corrections.filter(({ panel }) => panel === undefined || isSeen(panels.get(panel)?.data.status));
}

const isSeen = (status: string | undefined) => status === 'published' || status === 'withdrawn';

/** The public list for `panels.json`. */
export function correctionsData(ledger: Ledger) {
  return publicCorrections(ledger).map((it) => ({
    id: it.id,
    address: siteAddress(correctionAddress(it), ledger.guide.site),
    date: it.date,
    panel: it.panel ?? null,
    session: it.session ?? null,
    method: it.method ?? null,
    version: it.version ?? null,
    text: it.figures.length > 0 ? null : { from: it.from, to: it.to },
    figures: it.figures,
    why: it.why,
  }));
}

/** A value in a cell: a number stays one. */
export function correctedCell(it: CorrectedValue): string | number | null {
  return it === null || typeof it === 'string' ? it : it.value;
}
