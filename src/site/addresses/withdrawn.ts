import type { Guide } from '../../content/schema/guide.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { showDate } from '../../words/format.ts';
import { siteAddress } from '../shared/site-address.ts';

/** An address that the guide has given up, as its file says. */
export type Withdrawn = Guide['withdrawn'][number];

/** `/panels/<slug>/` */
const PANEL = /^\/panels\/([^/]+)\/$/;
/** A panel's pages below its own; whether a panel that is gone had files nobody knows. */
const PAGES = ['methodology/', 'files/'];
/** `/panels/<slug>/methodology/#session-2026-03-02` */
const SESSION = /^\/panels\/([^/]+)\/methodology\/#session-(\d{4}-\d{2}-\d{2})$/;

/** Every address that an entry stands for: a panel's has its other pages and its file for the comparison with it. */
export function withdrawnAddresses({ withdrawn }: Pick<Guide, 'withdrawn'>): Map<string, Withdrawn> {
  return new Map(
    withdrawn.flatMap((it) => {
      const [, slug] = PANEL.exec(it.address) ?? [];
      const more = slug === undefined ? [] : [...PAGES.map((page) => it.address + page), `/data/compare/${slug}.json`];
      return [it.address, ...more].map((address) => [address, it] as const);
    }),
  );
}

/** The address by which a session is withdrawn: its place on the calculation page, whichever page has parts of it. */
export const sessionAddress = (page: string, day: string) =>
  `${page.replace(/files\/$/, 'methodology/')}#session-${day}`;

/** True where a correction was of a panel that the guide has given up, and with it the entry. */
export function isOfWithdrawn(correction: string, { withdrawn }: Pick<Guide, 'withdrawn'>): boolean {
  return withdrawn.some(({ address }) => {
    const [, slug] = PANEL.exec(address) ?? [];
    return slug !== undefined && correction.includes(`-${slug}-`);
  });
}

/** Sessions of a panel that the guide has given up, newest first. */
export function withdrawnSessions(slug: string, { withdrawn }: Pick<Guide, 'withdrawn'>) {
  return withdrawn
    .flatMap((it) => {
      const [, own, day] = SESSION.exec(it.address) ?? [];
      return own === slug && day !== undefined ? [{ ...it, day }] : [];
    })
    .toSorted((a, b) => (a.day < b.day ? 1 : -1));
}

/** Pages that say what was at their address: those without a part and without a file's ending. */
export function withdrawnPages({ guide }: Ledger): Array<{ address: string; it: Withdrawn }> {
  return [...withdrawnAddresses(guide)].flatMap(([address, it]) => (address.endsWith('/') ? [{ address, it }] : []));
}

/** What a page that serves instead is called: a panel's by its name. */
export function insteadName(address: string, { panels }: Ledger): string {
  const [, slug = ''] = PANEL.exec(address) ?? [];
  return panels.get(slug)?.name ?? address;
}

/** Files that say it, in JSON where programs expect that. */
export function withdrawnFiles({ guide }: Ledger): Array<{ path: string; isJson: boolean; text: string }> {
  return [...withdrawnAddresses(guide)].flatMap(([address, { date, reason, instead }]) => {
    if (address.endsWith('/') || address.includes('#')) return [];
    const isJson = address.endsWith('.json');
    const lasting = instead && siteAddress(instead, guide.site);
    const text = isJson
      ? JSON.stringify({ withdrawn: date, reason, ...(lasting && { instead: lasting }) })
      : `Withdrawn on ${showDate(date)}: ${reason}${lasting ? ` Instead: ${lasting}` : ''}\n`;
    return [{ path: address.slice(1), isJson, text }];
  });
}
