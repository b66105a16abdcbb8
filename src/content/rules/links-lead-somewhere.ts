import { existsSync, readdirSync, statSync } from 'node:fs';
import { dirname, extname, join, relative } from 'node:path';
import { type BodyLink, linksIn } from '../read/body-links.ts';
import { fieldLinks } from '../read/field-links.ts';
import { texts } from '../read/fields.ts';
import { isPicture, PICTURES } from '../read/picture.ts';
import type { Source } from '../read/source.ts';
import { entryId } from '../schema/collections.ts';
import { fieldPath, type Problem } from '../schema/problem.ts';
import { nearest } from '../schema/suggest.ts';
import { listedPart } from './page-parts.ts';
import type { Rule } from './rule.ts';
import { isDraft, pageOf, type SiteAddresses, siteAddresses } from './site-addresses.ts';

/** Endings that an import may leave out. */
const SCRIPTS = ['', '.ts', '.js', '.mjs', '.tsx', '.jsx', '.json', '/index.ts', '/index.js'];
/** Only to read addresses with; nothing is asked of it. */
const HERE = 'https://guide.invalid';

/**
 * Links in the tester's texts that lead nowhere, images that are not there, imports of nothing. The product's texts may
 * lead to parts that a text of the tester's own has not, which is a warning (site/warnings/doubts/own-texts.ts).
 */
export const linksLeadSomewhere: Rule = {
  id: 'links-lead-somewhere',
  run(content, { folder, unread, drafts }) {
    const published = siteAddresses(content, unread, drafts);
    const all = siteAddresses(content, unread, true);
    const own = [...content.guide.values()].flatMap((it) =>
      texts(it, 'site').map(({ value }) => value.replace(/\/+$/, '')),
    )[0];
    const inBodies = (['panels', 'methods', 'cautions'] as const).flatMap((collection) =>
      [...content[collection].values()].flatMap((source) => {
        if (source.isProducts) return [];
        const place: Place = {
          page: pageOf(collection, source),
          disk: source.path,
          folder,
          own,
          // A draft's links are those of a page that is still to come, and so are other drafts.
          site: isDraft(source) ? all : published,
        };
        return linksIn(source).flatMap((link) => {
          const fault = faultOf(link, place);
          return fault ? [{ file: source.file, line: link.line, field: '', ...fault }] : [];
        });
      }),
    );
    const inFields = Object.entries(content).flatMap(([collection, sources]) =>
      [...sources.values()].flatMap((source: Source) => {
        if (source.isProducts) return [];
        const site = collection === 'panels' && isDraft(source) ? all : published;
        const place: Place = { page: '/', disk: source.path, folder, own, site };
        return fieldLinks(source, own).flatMap(({ address, path }): Problem[] => {
          // An address that has been given up leads nowhere by its nature, and where it leads instead is looked at there.
          if (collection === 'guide' && path[0] === 'withdrawn') return [];
          const fault = linkFault(address, place);
          return fault ? [{ file: source.file, line: source.lineOf(path), field: fieldPath(path), ...fault }] : [];
        });
      }),
    );
    return [...inBodies, ...inFields];
  },
};

/** Parts that a message lists. */
const MOST_LISTED = 24;

type Fault = Pick<Problem, 'found' | 'wanted' | 'hint'>;

/** Where a link stands. */
interface Place {
  page: string;
  /** The body's file. */
  disk: string;
  folder: string;
  /** Where the guide is published, without a slash at its end. */
  own: string | undefined;
  site: SiteAddresses;
}

function faultOf(link: BodyLink, place: Place): Fault | undefined {
  if (link.kind === 'import') return importFault(link.address, place);
  return link.kind === 'image' ? imageFault(link.address, place) : linkFault(link.address, place);
}

function importFault(address: string, { disk }: Place): Fault | undefined {
  const path = address.replace(/\?.*$/, '');
  // Packages and the project's own aliases are the bundler's.
  if (!/^[./]/.test(path)) return undefined;
  const target = path.startsWith('/') ? `.${path}` : join(dirname(disk), path);
  if (SCRIPTS.some((ending) => isFile(`${target}${ending}`))) return undefined;
  return { found: `an import of "${address}"`, wanted: 'a file that is there', ...hinted(nearFile(target, path)) };
}

function imageFault(address: string, { disk, site }: Place): Fault | undefined {
  const found = `an image "${address}"`;
  if (/^(?:[a-z][a-z0-9+.-]*:|\/\/)/i.test(address)) {
    const wanted = 'an image that lies beside this file: pages load nothing from elsewhere';
    return { found, wanted, hint: 'save it here, if its terms allow, and write its name' };
  }
  const path = decoded(address);
  if (path.startsWith('/')) {
    if (site.isFile(path)) return undefined;
    return { found, wanted: `a file in public/, or one beside this file without the slash` };
  }
  const target = join(dirname(disk), path);
  if (!isFile(target)) {
    return { found, wanted: 'a file that is there, beside this one', ...hinted(nearFile(target, path)) };
  }
  if (!PICTURES.includes(extname(path).toLowerCase())) {
    return { found, wanted: `a picture that ends in ${PICTURES.join(', ')}` };
  }
  if (!isPicture(target)) {
    const wanted = `a picture: this file does not start like any of ${PICTURES.join(', ')}`;
    return { found, wanted, hint: 'export it anew as JPEG or PNG; another ending does not change what it is' };
  }
  return undefined;
}

function linkFault(written: string, place: Place): Fault | undefined {
  const { page, site, own } = place;
  const found = `a link to "${written}"`;
  // The guide's own address in full is a link within it.
  const address = own !== undefined && written.startsWith(`${own}/`) ? written.slice(own.length) : written;
  if (/^www\./i.test(address)) return { found, wanted: 'a web address', hint: `write https://${address}` };
  if (!URL.canParse(address, HERE + page)) return { found, wanted: 'an address' };
  const { origin, protocol, pathname, hash } = new URL(address, HERE + page);
  if (origin !== HERE) {
    if (['https:', 'http:', 'mailto:', 'tel:'].includes(protocol)) return undefined;
    return { found, wanted: 'an address that starts with https://, mailto: or tel:, or one within the guide' };
  }
  const path = decoded(pathname);
  if (!site.pages.has(path)) {
    if (site.isFile(path)) return undefined;
    return { found, wanted: 'a page of the guide, or a file in public/', ...hinted(linkHint(address, path, place)) };
  }
  const id = decoded(hash.slice(1));
  const ids = id === '' ? undefined : site.idsOf(path);
  if (!ids || ids.includes(listedPart(id))) return undefined;
  const near = nearest(id, ids);
  return {
    found,
    wanted: `a part that ${path} has${ids.length > MOST_LISTED ? '' : `: ${ids.map((it) => `#${it}`).join(', ')}`}`,
    ...hinted(near && `did you mean "${path}#${near}"?`),
  };
}

function linkHint(address: string, path: string, { disk, folder, site }: Place): string | undefined {
  if (site.drafts.has(path)) return 'that panel is a draft: it has no page until it is published';
  const now = site.moved.get(path);
  if (now !== undefined) return `write "${now}": the panel has that name now`;
  const slashed = `${path}/`;
  if (site.pages.has(slashed)) return `write "${slashed}": pages end with a slash`;
  const target = join(dirname(disk), decoded(address).replace(/[?#].*$/, ''));
  if (isFile(target)) {
    const [kind = '', ...rest] = relative(folder, target).split(/[/\\]/);
    const own = rest.length > 0 ? `/${kind}/${entryId(rest.join('/'))}/` : '';
    if (site.pages.has(own)) return `write "${own}", the address of its page`;
    return 'a file beside the text is not published: put it into public/ and link to it with a slash before its name';
  }
  const near = nearest(path, [...site.pages]);
  return near && `did you mean "${near}"?`;
}

/** The nearest name in the folder where a file was looked for, as it would be written. */
function nearFile(target: string, written: string): string | undefined {
  const folder = dirname(target);
  if (!existsSync(folder) || !statSync(folder).isDirectory()) return undefined;
  const names = readdirSync(folder).filter((it) => isFile(join(folder, it)));
  const name = written.split('/').at(-1) ?? written;
  const near = nearest(name, names);
  return near && `did you mean "${written.slice(0, written.length - name.length)}${near}"?`;
}

function isFile(path: string): boolean {
  return existsSync(path) && statSync(path).isFile();
}

/** An address with its signs spelt out; one that can't be is left as it is. */
function decoded(address: string): string {
  try {
    return decodeURIComponent(address);
  } catch {
    return address;
  }
}

function hinted(hint: string | undefined): { hint?: string } {
  return hint ? { hint } : {};
}
