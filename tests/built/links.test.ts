import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { HtmlElement } from 'html-validate';
import { describe, expect, test } from 'vitest';
import { DEMO_FOLDER, DEMO_SITE } from '../support/demo-folder.ts';
import {
  attribute,
  decoded,
  FILES,
  leadsOn,
  PAGES,
  PANEL_FILES,
  pageAt,
  place,
  type SitePage,
  textOf,
} from './site.ts';

/** Stands in for wherever the site is served from. */
const ORIGIN = 'https://site.invalid';

const files = new Set(FILES);
const target = (page: SitePage, reference: string) => new URL(reference, ORIGIN + page.address);

/** Why a reference of a page leads nowhere; undefined where it leads somewhere, or off the site. */
function broken(page: SitePage, reference: string): string | undefined {
  const url = target(page, reference);
  if (url.origin !== ORIGIN) return undefined;
  const path = decodeURIComponent(url.pathname);
  if (!files.has(path.endsWith('/') ? `${path}index.html` : path)) return `no file for ${reference}`;
  const fragment = decodeURIComponent(url.hash.slice(1));
  if (fragment !== '' && !ids.get(path)?.has(fragment)) return `no place "${fragment}" on ${path}`;
  return undefined;
}

/** Everything that a selector finds on any page, with the value of an attribute. */
function everywhere(selector: string, name: string): Array<{ page: SitePage; element: HtmlElement; value: string }> {
  return PAGES.flatMap((page) =>
    page.document.querySelectorAll(selector).map((element) => ({ page, element, value: attribute(element, name) })),
  );
}

/**
 * Start tags as they are written. The parser skips what is inside drawings and formulas, and what must be nowhere
 * must not be there either.
 */
function startTags(html: string): string[] {
  return html.match(/<[a-z](?:"[^"]*"|'[^']*'|[^>"'])*>/gi) ?? [];
}

/** Attributes of a start tag; empty values for those that have none. */
function attributes(tag: string): Array<{ name: string; value: string }> {
  return [...tag.matchAll(/\s([^\s=>"'/]+)(?:\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s>"']+)))?/g)].map(
    ([, name = '', ...values]) => ({ name: name.toLowerCase(), value: decoded(values.find(Boolean) ?? '') }),
  );
}

const tags = PAGES.flatMap((page) => startTags(page.html).map((tag) => ({ page, tag, attributes: attributes(tag) })));

/** Every id of each page, in drawings too. */
const ids = new Map(
  [...Map.groupBy(tags, (it) => it.page.address)].map(([address, those]) => [
    address,
    new Set(those.flatMap((it) => it.attributes.filter(({ name }) => name === 'id').map(({ value }) => value))),
  ]),
);

test('there is a site to look at', () => {
  expect(PAGES.length).toBeGreaterThan(20);
  expect(tags.length).toBeGreaterThan(20 * PAGES.length);
});

describe('links within the site', () => {
  const links = everywhere('a[href]', 'href');

  test('lead to a file and a place that are there', () => {
    const faults = links.flatMap(({ page, element, value }) => {
      const fault = broken(page, value);
      return fault ? [`${place(page, element)}: ${fault}`] : [];
    });
    expect(faults).toEqual([]);
  });

  test('in drawings, where the parser does not look, lead there too', () => {
    const drawn = tags.filter(({ tag, page }) => /^<a\s/.test(tag) && page.address === '/');
    expect(drawn.length).toBeGreaterThan(pageAt('/').document.querySelectorAll('a[href]').length);
    const hrefs = drawn.flatMap((it) => it.attributes.filter(({ name }) => name === 'href').map(({ value }) => value));
    expect(hrefs.flatMap((it) => broken(pageAt('/'), it) ?? [])).toEqual([]);
  });

  test('are found broken where they are', () => {
    expect(broken(pageAt('/'), '/nowhere/')).toBe('no file for /nowhere/');
    expect(broken(pageAt('/'), '/panels')).toBe('no file for /panels');
    expect(broken(pageAt('/'), '#nowhere')).toBe('no place "nowhere" on /');
    expect(broken(pageAt('/methods/'), '/cautions/#eyes')).toBeUndefined();
  });

  test('find one place for each address', () => {
    const doubles = PAGES.flatMap((page) => {
      const all = page.document.querySelectorAll('[id]').map((it) => attribute(it, 'id'));
      return all.filter((id, i) => all.indexOf(id) !== i).map((id) => `${page.address} #${id}`);
    });
    expect(doubles).toEqual([]);
  });

  test('say where they lead', () => {
    const says = (it: HtmlElement) =>
      [textOf(it), attribute(it, 'aria-label'), attribute(it.querySelector('img'), 'alt')].join('');
    const silent = links.filter(({ element }) => says(element) === '');
    expect(silent.map(({ page, element }) => place(page, element))).toEqual([]);
  });

  test.each(PAGES.map((it) => it.address))('%s leads to the cautions', (address) => {
    const page = pageAt(address);
    const found = links.filter((it) => it.page === page && target(page, it.value).pathname === '/cautions/');
    // By the navigation, and by what is read: the page's text or its foot.
    // An old address has no navigation: nobody stays there. Nor has a figure's small card, which stands in a frame.
    const isCard = /^\/cards\/[^/]+\/[^/]+\.html$/.test(address);
    if (!leadsOn(page) && !isCard) expect(found.filter(({ element }) => element.closest('header nav'))).toHaveLength(1);
    expect(found.filter(({ element }) => !element.closest('header'))).not.toHaveLength(0);
  });

  test('other than the page’s own address never name the site’s host, so that a copy elsewhere works', () => {
    const host = new URL(attribute(pageAt('/').document.querySelector('link[rel="canonical"]'), 'href')).host;
    const named = links.filter(({ page, value }) => target(page, value).host === host);
    expect(named.map(({ page, element }) => place(page, element))).toEqual([]);
  });
});

describe('links off the site', () => {
  const content = globSync('**/*.{yaml,md,mdx,json,csv}', { cwd: DEMO_FOLDER })
    .map((file) => readFileSync(join(DEMO_FOLDER, file), 'utf8'))
    .join('\n');
  const external = everywhere('a[href]', 'href').filter(({ page, value }) => target(page, value).origin !== ORIGIN);

  test('stand only where the content has them', () => {
    expect(external.filter(({ value }) => !content.includes(value)).map(({ value }) => value)).toEqual([]);
  });

  test('are web addresses that tell the other side nothing of this window', () => {
    for (const { page, element, value } of external) {
      expect(new URL(value).protocol, place(page, element)).toMatch(/^https?:$/);
      expect(attribute(element, 'rel').split(' '), place(page, element)).toContain('noopener');
    }
  });

  test('are marked as sponsored, in their rel and in words, exactly where the content calls them paid', () => {
    const prices = PANEL_FILES.filter((it) => it.data.status !== 'draft').flatMap((it) => it.data.prices ?? []);
    const paid = prices.filter((it) => it.paidLink).map((it) => it.link);
    expect(paid.length).toBeGreaterThan(0);
    const sponsored = external.filter(({ element }) => attribute(element, 'rel').split(' ').includes('sponsored'));
    expect(sponsored.map(({ value }) => value).toSorted()).toEqual(paid.toSorted());
    for (const { element } of sponsored) expect(textOf(element.parent)).toContain('Paid link');
  });
});

describe('requests that a page causes', () => {
  /** Attributes whose address a browser fetches unasked; a link's `href` is one only on <link>. */
  const FETCHED = ['src', 'srcset', 'poster', 'data', 'background', 'manifest', 'ping', 'xlink:href', 'action'];

  test('stay within the site and find a file', () => {
    const faults = tags.flatMap(({ page, tag, attributes: all }) => {
      const isLink = /^<link\s/i.test(tag) && !/\srel="canonical"/.test(tag);
      const isUse = /^<(use|image|feImage)\s/i.test(tag);
      return (
        all
          .filter(({ name }) => FETCHED.includes(name) || (name === 'href' && (isLink || isUse)))
          // A list of pictures names each with its width.
          .flatMap(({ name, value }) =>
            name === 'srcset' ? value.split(', ').map((it) => it.split(' ')[0] ?? '') : value,
          )
          .filter((value) => target(page, value).origin !== ORIGIN || broken(page, value))
          .map((value) => `${page.address}: ${value}`)
      );
    });
    expect(faults).toEqual([]);
  });

  test('by style sheets stay within the site', () => {
    const sheets = FILES.filter((it) => it.startsWith('/_astro/') && it.endsWith('.css'));
    expect(sheets.length).toBeGreaterThan(0);
    const addresses = sheets.flatMap((sheet) => {
      const css = readFileSync(join(DEMO_SITE, sheet), 'utf8');
      const found = [...css.matchAll(/url\(\s*["']?([^"')]*)|@import\s+["']([^"']*)/g)];
      return found.map((it) => new URL(it[1] ?? it[2] ?? '', ORIGIN + sheet));
    });
    expect(addresses.filter((it) => it.origin !== ORIGIN).map(String)).toEqual([]);
  });

  test('by the site’s scripts name no other host', () => {
    const scripts = FILES.filter((it) => it.startsWith('/_astro/') && it.endsWith('.js'));
    expect(scripts.length).toBeGreaterThan(0);
    for (const script of scripts) {
      const text = readFileSync(join(DEMO_SITE, script), 'utf8');
      // The pad has the schemas of the content, with examples of addresses and names of standards; nobody is asked for
      // anything by them.
      const hasSchemas = text.includes('$ZodType');
      const isName = (host: string) => /^$|(?:^|\.)example$|^(?:json-schema|creativecommons)\.org$/.test(host);
      const named = [...text.matchAll(/\w+:\/\/([\w.-]*)/g)].map(([, host = '']) => host);
      expect(
        named.filter((it) => !(hasSchemas && isName(it))),
        script,
      ).toEqual([]);
    }
  });
});

describe('every page', () => {
  test.each(PAGES.map((it) => it.address))('%s has a head and a heading of its own', (address) => {
    const { document } = pageAt(address);
    const one = (selector: string) => {
      const found = document.querySelectorAll(selector);
      expect(found, selector).toHaveLength(1);
      return found[0] as HtmlElement;
    };
    expect(attribute(one('html'), 'lang')).toBe('en');
    expect(textOf(one('h1'))).not.toBe('');
    expect(textOf(one('title'))).toContain(textOf(pageAt('/').document.querySelector('.masthead .title')));
    expect(attribute(one('meta[name="description"]'), 'content').length).toBeGreaterThan(20);
    expect(attribute(one('meta[name="viewport"]'), 'content')).not.toMatch(/user-scalable|maximum-scale/);
    expect(attribute(one('link[rel="canonical"]'), 'href')).toMatch(/^https:\/\//);
  });

  test('with a picture for links says what it is, where it is and what is on it', () => {
    const of = ({ document }: SitePage, name: string) =>
      attribute(document.querySelector(`meta[property="og:${name}"]`), 'content');
    const pictured = PAGES.filter((it) => of(it, 'image') !== '');
    for (const page of pictured) {
      expect(of(page, 'title'), page.address).not.toBe('');
      expect(of(page, 'url'), page.address).toBe(
        attribute(page.document.querySelector('link[rel="canonical"]'), 'href'),
      );
      expect(of(page, 'image:alt'), page.address).toMatch(/^Card of /);
      const { origin, pathname } = new URL(of(page, 'image'));
      expect(origin, page.address).toBe(new URL(of(page, 'url')).origin);
      expect(files, page.address).toContain(pathname);
    }
    const kinds = [/^\/panels\/[^/]+\/$/, /^\/panels\/[^/]+\/methodology\/$/, /^\/methods\/[^/]+\/$/];
    expect(kinds.map((kind) => pictured.filter((it) => kind.test(it.address)).length > 10)).toEqual([true, true, true]);
  });

  test('of a panel or a method can be cited', () => {
    const cited = PAGES.filter((it) => it.document.querySelector('#cite')).map((it) => it.address);
    // What has been withdrawn for good, and what only leads on, is not to be found.
    const isListed = ({ document }: SitePage) => document.querySelector('meta[name="robots"]') === null;
    const uncited = PAGES.filter(
      (it) => /^\/(methods|panels)\/[^/]+\/(methodology\/|files\/)?$/.test(it.address) && isListed(it) && !leadsOn(it),
    )
      .map((it) => it.address)
      .filter((it) => !cited.includes(it));
    expect(uncited).toEqual([]);
  });

  test('has a title and an address that no other page has', () => {
    // The ranking that the guide's own page shows too is known by that page's address, and an old address by the new one.
    const isKnownElsewhere = (page: SitePage) => page.address === '/frame/' || leadsOn(page);
    const addresses = everywhere('link[rel="canonical"]', 'href').filter(({ page }) => !isKnownElsewhere(page));
    for (const values of [
      PAGES.map((it) => textOf(it.document.querySelector('title'))),
      addresses.map((it) => it.value),
    ]) {
      expect(values.filter((it, i) => values.indexOf(it) !== i)).toEqual([]);
    }
  });

  test('forbids what is not its own, by a policy without exceptions for inline code', () => {
    for (const { address, html, document } of PAGES) {
      const policies = document.querySelectorAll('meta[http-equiv="content-security-policy"]');
      expect(policies, address).toHaveLength(1);
      const directives = attribute(policies[0] as HtmlElement, 'content')
        .split(';')
        .map((it) => it.trim().split(/\s+/));
      const sources = new Map(directives.map(([name = '', ...rest]) => [name, rest]));
      expect(sources.get('default-src'), address).toEqual(["'self'"]);
      expect(sources.get('object-src'), address).toEqual(["'none'"]);
      expect(sources.get('base-uri'), address).toEqual(["'none'"]);
      // Every source is the site itself or nothing, apart from what the search's own index reader needs.
      const others = directives
        .flatMap(([, ...rest]) => rest)
        .filter((it) => !["'self'", "'none'", "'wasm-unsafe-eval'"].includes(it));
      expect(others, address).toEqual([]);
      // What stands before the policy is not bound by it.
      const before = startTags(html.slice(0, html.indexOf('content-security-policy')));
      expect(
        before.filter((it) => /^<(script|link|style|img)\b/i.test(it)),
        address,
      ).toEqual([]);
    }
  });

  test('has no inline script, style or handler', () => {
    // A block of data is none: no browser runs it.
    const isData = (it: { name: string; value: string }) =>
      it.name === 'type' && /^application\/(ld\+)?json$/.test(it.value);
    const faults = tags
      .filter(
        ({ tag, attributes: all }) =>
          /^<style\b/i.test(tag) ||
          (/^<script\b/i.test(tag) && !all.some((it) => it.name === 'src' || isData(it))) ||
          all.some(({ name, value }) => name === 'style' || name.startsWith('on') || /^javascript:/i.test(value)),
      )
      .map(({ page, tag }) => `${page.address}: ${tag}`);
    expect(faults).toEqual([]);
  });
});
