import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { siteLedger } from './site-ledger.ts';

/** The addresses of a page that every panel has. */
export const panelPaths = () => [...siteLedger().ledger.panels.keys()].map((slug) => ({ params: { slug } }));

/**
 * The panel of such a page.
 *
 * @throws Error where the guide has none of that name
 */
export function panelOf(ledger: Ledger, slug: string | undefined): PanelEntry {
  const panel = ledger.panels.get(slug ?? '');
  if (!panel) throw new Error(`no panel is called "${slug}"`);
  return panel;
}
