import { linksIn } from '../../content/read/body-links.ts';
import type { Source } from '../../content/read/source.ts';
import type { Loaded } from '../../ledger/load-ledger.ts';
import type { LinkAnswer } from './link-answers.ts';
import { type StaleItem, staleAt } from './stale-item.ts';

/** A place in the content that leads to another site. */
export interface OutsideLink {
  address: string;
  /** What it belongs to: a panel, a maker, a page. */
  name: string;
  source: Source;
  /** Path of the field; undefined in a body. */
  path: readonly PropertyKey[] | undefined;
  line: number;
}

const isOutside = (address: string) => /^https?:\/\//i.test(address);

/** Every link to another site that readers can follow: of newest prices, of makers, and in all texts. Drafts are left out. */
export function outsideLinks({ content, ledger }: Loaded): OutsideLink[] {
  const field = (source: Source, name: string, address: string | undefined, path: readonly PropertyKey[]) =>
    address !== undefined && isOutside(address) ? [{ address, name, source, path, line: source.lineOf(path) }] : [];
  const body = (source: Source, name: string) =>
    linksIn(source).flatMap(({ kind, address, line }) =>
      kind === 'link' && isOutside(address) ? [{ address, name, source, path: undefined, line }] : [],
    );
  return [
    ...[...ledger.panels.values()].flatMap(({ slug, name, data, prices }) => {
      const source = content.panels.get(slug)?.source;
      if (!source || data.status === 'draft') return [];
      // Earlier prices are history: nobody is sent to their shops.
      const newest = prices[0]?.price;
      const index = data.prices.findIndex((it) => it.date === newest?.date);
      return [...field(source, name, newest?.link, ['prices', index, 'link']), ...body(source, name)];
    }),
    ...[...content.makers.values()].flatMap(({ data, source }) => field(source, data.name, data.website, ['website'])),
    ...[...content.methods.values()].flatMap(({ id, source }) => body(source, `methods/${id}`)),
    ...body(content.cautions.source, 'Cautions'),
  ];
}

/** Links that answer with nothing, or from elsewhere. */
export function staleLinks(links: readonly OutsideLink[], answers: ReadonlyMap<string, LinkAnswer>): StaleItem[] {
  return links.flatMap(({ address, name, source, path, line }): StaleItem[] => {
    const answer = answers.get(address);
    if (!answer || answer.kind === 'there') return [];
    const text = answer.kind === 'moved' ? `${address} leads on to ${answer.to}` : `${address} ${answer.fault}`;
    const todo =
      answer.kind === 'moved'
        ? 'look whether that is still what the text speaks of, and write the new address'
        : 'look by hand; then mend the link, or take it out';
    const item = staleAt(source, path ?? [], {
      ...{ kind: 'link', state: answer.kind === 'moved' ? 'soon' : 'past', day: null, name, text, todo },
    });
    return [{ ...item, line }];
  });
}
