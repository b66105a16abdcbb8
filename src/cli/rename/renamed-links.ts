import { dirname, join } from 'node:path/posix';
import { openContent } from '../../content/edit/content-text.ts';
import { type BodyLink, linksIn } from '../../content/read/body-links.ts';
import { entryId } from '../../content/schema/collections.ts';

/** A link that leads to a panel's new name. */
export interface RenamedLink {
  /** In the file as it was, from 1. */
  line: number;
  from: string;
  to: string;
}

/** A body with its links to a panel led to the panel's new name. */
export interface RenamedBody {
  text: string;
  links: RenamedLink[];
  /** Links to the old name that stand in a way in which they can't be changed for sure. */
  left: BodyLink[];
}

/** Only to read addresses with; nothing is asked of it. */
const HERE = 'https://guide.invalid';

/**
 * Leads the links of a body to another name of a panel: its pages and data, choices in addresses that name it, pictures
 * and imports that lie beside it. Every other byte stays.
 *
 * @param raw the file's text
 * @param path of the file in the content folder
 */
export function renamedBody(raw: string, path: string, panel: { from: string; to: string }): RenamedBody {
  const { body } = openContent(raw, path);
  const start = raw.length - body.length;
  const bodyLine = raw.slice(0, start).split('\n').length;
  const found = linksIn({ file: path, body, bodyLine }).filter((it) => isOf(it, path, panel.from));
  const links: RenamedLink[] = [];
  const left: BodyLink[] = [];
  const places: Array<{ at: number; link: RenamedLink }> = [];
  for (const link of found) {
    const to = withName(link.address, panel);
    // Above it on its line another link may have the same address.
    const taken = places.filter((it) => it.link.from === link.address).map((it) => it.at);
    const at = placeOf(raw, Math.max(start, lineStart(raw, link.line)), link.address, taken);
    if (at === undefined || to === link.address) left.push(link);
    else places.push({ at, link: { line: link.line, from: link.address, to } });
  }
  let text = raw;
  for (const { at, link } of places.toSorted((a, b) => b.at - a.at)) {
    text = text.slice(0, at) + link.to + text.slice(at + link.from.length);
  }
  links.push(...places.map((it) => it.link));
  return { text, links, left };
}

/** True for an address that names the panel. */
function isOf({ kind, address }: BodyLink, path: string, name: string): boolean {
  if (kind !== 'link') {
    // From its own folder a file beside it keeps its name.
    return (
      /^\.\.?\//.test(address) && join(dirname(path), address).startsWith(`panels/${name}/`) && hasName(address, name)
    );
  }
  const [collection = ''] = path.split('/');
  const page = path === 'cautions.mdx' ? '/cautions/' : `/${collection}/${entryId(path)}/`;
  if (!URL.canParse(address, HERE + page)) return false;
  const { origin, pathname, search } = new URL(address, HERE + page);
  if (origin !== HERE || !hasName(address, name)) return false;
  return /^\/(panels|data\/compare)\//.test(pathname) || hasName(decodeURIComponent(search), name);
}

/** A name as a whole part of an address: between slashes, commas, signs of a query, or at an end. */
const asPart = (name: string) => new RegExp(`(?<=^|[/=,.?&])${name}(?=$|[/?#&=,]|\\.json)`, 'g');

const hasName = (address: string, name: string) => asPart(name).test(address);

const withName = (address: string, { from, to }: { from: string; to: string }) => address.replace(asPart(from), to);

/** Where an address stands on a line or, where a link is set over several, on the next ones; undefined where it does not. */
function placeOf(raw: string, start: number, address: string, taken: readonly number[]): number | undefined {
  const end = lineStart(raw.slice(start), LINES_OF_A_LINK + 1) + start;
  for (let at = raw.indexOf(address, start); at >= 0 && at < end; at = raw.indexOf(address, at + 1)) {
    const isWhole = !/[\w/-]/.test(raw[at - 1] ?? '') && !/[\w/-]/.test(raw[at + address.length] ?? '');
    if (isWhole && !taken.includes(at)) return at;
  }
  return undefined;
}

const LINES_OF_A_LINK = 8;

/** Where a line, from 1, starts; the end of the text where it has fewer. */
function lineStart(raw: string, line: number): number {
  let at = 0;
  for (let n = 1; n < line; n++) {
    const next = raw.indexOf('\n', at);
    if (next < 0) return raw.length;
    at = next + 1;
  }
  return at;
}
