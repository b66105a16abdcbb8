import type { Guide } from '../../content/schema/guide.ts';
import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { CONTENT_POLICY } from '../shared/content-policy.ts';
import { hasFiles } from '../shared/file-addresses.ts';
import { html } from '../shared/html.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { siteAddress } from '../shared/site-address.ts';

/** An old address of a page, and the one of today. */
export interface MovedPage {
  /** `/panels/old-name/` */
  from: string;
  to: string;
  title: string;
}

/** The pages that panels have, below their own address. */
const PAGES = [
  { page: '', titled: '' },
  { page: 'methodology/', titled: ', every reading,' },
  { page: 'files/', titled: ', files from the bench,', has: hasFiles },
] as const;

/** The script of these pages, which takes along the part that an address names. */
export const MOVED_SCRIPT = '/moved.js';

/** Where panels that have another name now had their pages. */
export function movedPages({ panels }: Ledger): MovedPage[] {
  return [...panels.values()].flatMap((panel) =>
    formerNamesOf(panel).flatMap((old) =>
      PAGES.filter((it) => !('has' in it) || it.has(panel)).map(({ page, titled }) => ({
        from: `${panelAddress(old)}${page}`,
        to: `${panelAddress(panel.slug)}${page}`,
        title: `${panel.name}${titled}`,
      })),
    ),
  );
}

/** Addresses of a panel's file for the comparison under its names of before: a copy of today's lies there. */
export function movedFiles({ panels }: Ledger): Array<{ from: string; to: string; panel: PanelEntry }> {
  return [...panels.values()].flatMap((panel) =>
    formerNamesOf(panel).map((old) => ({ from: comparedAddress(old), to: comparedAddress(panel.slug), panel })),
  );
}

/**
 * `_redirects`, for hosts that read such a file: an old address, the one of today, and the status that says for good, a
 * line each. Other hosts have the pages and copies that lie there.
 */
export function redirectsText(ledger: Ledger): string {
  const lines = [...movedPages(ledger), ...movedFiles(ledger)].map(({ from, to }) => `${from} ${to} 301`);
  return `# Old addresses, each with the one of today.\n${lines.join('\n')}\n`;
}

const comparedAddress = (slug: string) => `/data/compare/${slug}.json`;

const formerNamesOf = ({ data }: PanelEntry): readonly string[] => data.formerly ?? [];

/**
 * The page at an old address: it leads on by itself, and by a link. Search engines are told the new address. Without a
 * script a part named in the address is lost on the way, since a refresh does not take it along.
 */
export function movedHtml({ to, title }: MovedPage, guide: Pick<Guide, 'site' | 'title'>): string {
  return html`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="content-security-policy" content="${CONTENT_POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="robots" content="noindex">
<title>${title} has another address now – ${guide.title}</title>
<meta name="description" content="${title} has another address now.">
<link rel="canonical" href="${siteAddress(to, guide.site)}">
<meta http-equiv="refresh" content="0; url=${to}">
<script src="${MOVED_SCRIPT}" defer></script>
</head>
<body>
<main>
<h1>${title} has another address now</h1>
<p><a href="${to}">${title.replace(/,$/, '')}</a></p>
<p>Before you stand in front of one: <a href="/cautions/">cautions</a>.</p>
</main>
</body>
</html>
`.text;
}

/** Goes where the page's link leads, with the part and the choices that the old address named. */
export const MOVED_SCRIPT_TEXT = `location.replace(document.querySelector('main a').href + location.search + location.hash);
`;
