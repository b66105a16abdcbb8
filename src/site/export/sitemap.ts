import { FIXED_PAGES } from '../../content/rules/site-addresses.ts';
import { guideEvents } from '../../ledger/events.ts';
import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { METHODS } from '../../measure/methods.ts';
import { CARDS_PAGE } from '../cards/card-files.ts';
import { filesAddress, hasFiles } from '../shared/file-addresses.ts';
import { escaped } from '../shared/html.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { siteAddress } from '../shared/site-address.ts';

/** Pages that search engines are not asked to list: a tool of the tester, and one without content of its own. */
const UNLISTED: ReadonlySet<string> = new Set(['/bench/sheet/', '/search/']);

/**
 * `sitemap.xml` (sitemaps.org, protocol 0.9): every page at its own address, panels with the day of what is newest about
 * them. No day of a build.
 */
export function sitemapXml(ledger: Ledger): string {
  const { guide, panels } = ledger;
  const twin = guide.rankBy === 'frame' ? '/frame/' : '/emitted/';
  const pages: Array<{ path: string; day?: string | undefined }> = [
    ...FIXED_PAGES.filter((it) => !UNLISTED.has(it) && it !== twin).map((path) => ({
      path,
      ...(path === '/changes/' && { day: guideEvents(ledger)[0]?.date }),
    })),
    ...(guide.agreement.length > 0 ? [{ path: '/agreement/' }] : []),
    ...(guide.cards.show || guide.cards.badges ? [{ path: CARDS_PAGE }] : []),
    ...METHODS.map(({ id }) => ({ path: `/methods/${id}/` })),
    ...[...panels.values()]
      .filter((it) => it.data.status !== 'draft')
      .flatMap((panel) => {
        const own = panelAddress(panel.slug);
        const paths = [own, `${own}methodology/`, ...(hasFiles(panel) ? [filesAddress(panel.slug)] : [])];
        return paths.map((path) => ({ path, day: newestDay(panel) }));
      }),
  ];
  const urls = pages.map(
    ({ path, day }) =>
      `<url><loc>${escaped(siteAddress(path, guide.site))}</loc>${day ? `<lastmod>${day}</lastmod>` : ''}</url>`,
  );
  return `<?xml version="1.0" encoding="UTF-8"?>\n<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">\n${urls.join('\n')}\n</urlset>\n`;
}

/** Days of the newest session and the newest price, the later one. */
function newestDay({ current, prices: [price] }: PanelEntry): string | undefined {
  return [current?.date, price?.price.date]
    .filter((it) => it !== undefined)
    .toSorted()
    .at(-1);
}

/** `robots.txt`: everything may be read, and where the list of pages is. */
export const robotsTxt = ({ guide }: Ledger): string =>
  `User-agent: *\nAllow: /\n\nSitemap: ${siteAddress('/sitemap.xml', guide.site)}\n`;
