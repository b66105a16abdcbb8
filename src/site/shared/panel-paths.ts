import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { siteLedger } from './site-ledger.ts';

/**
 * The addresses of a page that panels have.
 *
 * @param has which panels have it; all, where it is left out
 */
export const panelPaths = (has: (panel: PanelEntry) => boolean = () => true) =>
  [...siteLedger().ledger.panels.values()].filter(has).map(({ slug }) => ({ params: { slug } }));

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
