import { linksIn } from '../../../content/read/body-links.ts';
import type { Content } from '../../../content/read/content.ts';
import { fieldLinks } from '../../../content/read/field-links.ts';
import type { Source } from '../../../content/read/source.ts';
import { RANKING_PARTS } from '../../../content/rules/page-parts.ts';
import { pageOf } from '../../../content/rules/site-addresses.ts';
import { fieldPath } from '../../../content/schema/problem.ts';
import { nearest } from '../../../content/schema/suggest.ts';
import type { Ledger } from '../../../ledger/ledger.ts';
import type { Loaded } from '../../../ledger/load-ledger.ts';
import { defaultBasis } from '../../guide/basis-links.ts';
import { rankingParts } from '../../guide/table-ids.ts';
import { changesParts } from '../../news/changes-view.ts';
import type { Warning } from '../warning.ts';

/**
 * Links to parts of pages that figures and days decide, as the table of a size class or an entry of the changes, and that
 * are not there now: whoever follows them lands at the page's top. All other parts are looked at before figures are known.
 */
export function linksToFigures({ content, ledger }: Loaded): Warning[] {
  const site = ledger.guide.site.replace(/\/+$/, '');
  const parts = new Map<string, readonly string[]>();
  return placedLinks(content, site).flatMap(({ address, page, ...place }): Warning[] => {
    const within = address.startsWith(`${site}/`) ? address.slice(site.length) : address;
    if (!URL.canParse(within, HERE + page)) return [];
    const { origin, pathname, hash } = new URL(within, HERE + page);
    const id = hash.slice(1);
    if (origin !== HERE || id === '') return [];
    const there = parts.get(pathname) ?? partsNow(pathname, ledger);
    parts.set(pathname, there);
    if (there.length === 0 || there.includes(id)) return [];
    const near = nearest(id, there);
    return [
      {
        ...place,
        ...{ severity: 'doubt', check: 'link-to-figures', figures: [] },
        text: `The link to "${address}" names a part that ${pathname} has not now. Whoever follows it lands at the top.`,
        hint: near ? `did you mean "${pathname}#${near}"?` : `look at the page for the part that you mean`,
      },
    ];
  });
}

/** Only to read addresses with; nothing is asked of it. */
const HERE = 'https://guide.invalid';

/** Every part of a page whose parts figures or days decide; none of another. */
function partsNow(page: string, ledger: Ledger): readonly string[] {
  if (page === '/changes/') return changesParts(ledger);
  const fixed = RANKING_PARTS[page];
  if (!fixed) return [];
  const basis = page === '/' ? defaultBasis(ledger.guide) : page === '/emitted/' ? 'emitted' : 'optical';
  return [...fixed, ...rankingParts(ledger, basis)];
}

interface PlacedLink {
  address: string;
  /** On which it stands. */
  page: string;
  file: string;
  line: number;
  field: string;
}

/** Every link in the tester's own texts. */
function placedLinks(content: Content, site: string): PlacedLink[] {
  const { guide, makers, instruments, standards, panels, methods, cautions, corrections } = content;
  const sources = [
    guide,
    ...[makers, instruments, standards, panels, methods].flatMap((it) => [...it.values()]),
    cautions,
  ];
  const inFields = [...sources, ...(corrections ? [corrections] : [])].flatMap(({ source }) =>
    own(source).flatMap(() =>
      fieldLinks(source, site).map(({ address, path }) => ({
        ...{ address, page: '/', file: source.file, line: source.lineOf(path), field: fieldPath(path) },
      })),
    ),
  );
  const bodies = [
    ...[...panels.values()].map(({ source }) => ({ source, page: pageOf('panels', source) })),
    ...[...methods.values()].map(({ source }) => ({ source, page: pageOf('methods', source) })),
    { source: cautions.source, page: pageOf('cautions', cautions.source) },
  ];
  const inBodies = bodies.flatMap(({ source, page }) =>
    own(source).flatMap(() =>
      linksIn(source).flatMap(({ kind, address, line }) =>
        kind === 'link' ? [{ address, page, file: source.file, line, field: '' }] : [],
      ),
    ),
  );
  return [...inBodies, ...inFields];
}

/** The product's texts are none of the tester's. */
const own = (source: Source) => (source.isProducts ? [] : [source]);
