import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { pageKey } from './page-reads.ts';
import { siteLedger } from './site-ledger.ts';

/**
 * The addresses of a page that panels have, each with what the page is kept under from one build to the next.
 *
 * @param has which panels have it; all, where it is left out
 */
export const panelPaths = (
  { routePattern }: { routePattern: string },
  has: (panel: PanelEntry) => boolean = () => true,
) => {
  const loaded = siteLedger();
  return [...loaded.ledger.panels.values()].filter(has).map(({ slug }) => {
    const cacheKey = pageKey(`${routePattern.replace(/\[slug\]/, slug).replace(/\/$/, '')}/`, loaded);
    return { params: { slug }, ...(cacheKey !== undefined && { cacheKey }) };
  });
};

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
