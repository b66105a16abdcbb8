/** The search page: asks the index that the build wrote, and nothing else. The query lives in the address. */

import { html } from '../../shared/browser/dom.ts';
import { inSite } from '../../shared/browser/site-path.ts';
import type { MeantPage } from './other-words.ts';

interface Result {
  url: string;
  excerpt: string;
  content: string;
  meta: { title?: string };
  filters: Record<string, string[]>;
}

interface Index {
  debouncedSearch(
    query: string | null,
    options: { filters: Record<string, string> },
  ): Promise<{ results: Array<{ data(): Promise<Result> }> } | null>;
}

/** Results that are fetched and shown; a reader narrows the words sooner than reading on. */
const MOST = 30;
/** Longest query that is looked up. */
const LONGEST = 200;

const form = document.querySelector<HTMLFormElement>('#search');
const input = document.querySelector<HTMLInputElement>('#query');
const count = document.querySelector('#count');
const meant = document.querySelector('#meant');
const list = document.querySelector('#found');

let index: Promise<Index> | undefined;

function load(): Promise<Index> {
  // Written by the build after the scripts are bundled, so the bundler can't know it.
  index ??= import(/* @vite-ignore */ inSite('/pagefind/pagefind.js')) as Promise<Index>;
  return index;
}

/** Counts queries, so that what a slow one finds does not stand in the place of a later one’s. */
let turn = 0;

/** Pages that a reader may mean, by words that no page has; the list of those is loaded with the first query. */
async function meantBy(query: string): Promise<readonly MeantPage[]> {
  if (query === '') return [];
  try {
    return (await import('./other-words.ts')).meantPages(query);
  } catch {
    // What the index finds stands without them.
    return [];
  }
}

/** Filters by the name that the index knows them by. */
const FILTERS: Readonly<Record<string, string>> = { maker: 'maker', class: 'size class', kind: 'kind' };
const selects = [...document.querySelectorAll<HTMLSelectElement>('#search select')];

/** What is chosen in the filters, by the index's names. */
function chosenFilters(): Record<string, string> {
  return Object.fromEntries(
    selects.filter((it) => it.value !== '').map((it) => [FILTERS[it.name] ?? it.name, it.value]),
  );
}

async function run(query: string): Promise<void> {
  if (!count || !list || !meant) return;
  const own = ++turn;
  const pages = await meantBy(query);
  if (own !== turn) return;
  meant.replaceChildren(...pages.map(meantItem));
  const filters = chosenFilters();
  if (query === '' && Object.keys(filters).length === 0) {
    count.textContent = '';
    list.replaceChildren();
    return;
  }
  let found: Awaited<ReturnType<Index['debouncedSearch']>>;
  try {
    // Without a word the filters alone say which pages are meant.
    found = await (await load()).debouncedSearch(query || null, { filters });
  } catch {
    count.textContent = 'The search index could not be read. It is written by a build, and not there while you write.';
    return;
  }
  // A newer query has taken over.
  if (found === null) return;
  const fetched = await Promise.all(found.results.slice(0, MOST).map((it) => it.data()));
  const results = fetched.filter((it) => query === '' || hasWords(it, query)).toSorted(byName(query));
  const total = found.results.length > MOST ? found.results.length : results.length;
  if (total === 0) {
    const those = Object.keys(filters).length > 0 ? ' with these filters' : '';
    count.replaceChildren(
      `Nothing ${pages.length > 0 ? 'else ' : ''}found for “${query}”${those}. Look through `,
      html('a', { href: '/panels/' }, 'all panels'),
      ' or ',
      html('a', { href: '/methods/' }, 'all methods'),
      '.',
    );
  } else {
    const some = total > MOST ? `, the first ${MOST} shown` : '';
    count.textContent = `${total} ${total === 1 ? 'page' : 'pages'} found${some}.`;
  }
  list.replaceChildren(...results.map(item));
}

/**
 * True where a page has every word of the query, endings aside. The index cuts a word that it does not know
 * shorter and shorter until something begins with the rest, so that any word at all would find something.
 */
function hasWords({ content, meta }: Result, query: string): boolean {
  const text = `${meta.title ?? ''} ${content}`.toLowerCase();
  return query
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word.slice(0, Math.ceil(STEM * word.length))));
}

/** Share of a word that has to be found as it is; the rest may be an ending. */
const STEM = 0.7;

/** A page by what the reader may mean, with why. */
function meantItem({ address, title, says }: MeantPage): HTMLLIElement {
  const entry = document.createElement('li');
  const link = document.createElement('a');
  link.href = inSite(address);
  link.textContent = title;
  const why = document.createElement('p');
  why.textContent = says;
  entry.append(link, why);
  return entry;
}

function item(result: Result): HTMLLIElement {
  const entry = document.createElement('li');
  const link = document.createElement('a');
  link.href = result.url;
  link.textContent = result.meta.title ?? result.url;
  const kind = document.createElement('span');
  kind.className = 'soft';
  // "Methods" need not be called a method.
  const kinds = (result.filters.kind ?? []).filter((it) => !link.textContent.startsWith(it));
  kind.textContent = ` ${kinds.join(', ')}`;
  const excerpt = document.createElement('p');
  // It is cut out of the page's text, wherever a sentence begins or ends.
  const text = marked(result.excerpt);
  const plain = text.map((it) => it.textContent).join('');
  excerpt.append(/^\p{Lu}/u.test(plain) ? '' : '… ', ...text, /[.!?]$/.test(plain.trim()) ? '' : ' …');
  entry.append(link, kind, excerpt);
  return entry;
}

/** The index marks hits with <mark>; everything else in an excerpt is taken as text. */
function marked(excerpt: string): Node[] {
  const parsed = new DOMParser().parseFromString(excerpt, 'text/html').body;
  return [...parsed.childNodes].map((node) => {
    const text = document.createTextNode(node.textContent ?? '');
    if (!(node instanceof HTMLElement) || node.tagName !== 'MARK') return text;
    const mark = document.createElement('mark');
    mark.append(text);
    return mark;
  });
}

/**
 * Who asks for a figure by its name wants to know what it is: the method of that name comes first, then methods whose
 * name begins so, then the rest in the index's order.
 */
function byName(query: string): (a: Result, b: Result) => number {
  const wanted = query.toLowerCase();
  const place = ({ meta, filters }: Result) => {
    const title = (meta.title ?? '').toLowerCase();
    if (wanted === '' || !filters.kind?.includes('Method') || !title.startsWith(wanted)) return 2;
    return title === wanted ? 0 : 1;
  };
  return (a, b) => place(a) - place(b);
}

function queryOf(address: string): string {
  return (new URL(address).searchParams.get('q') ?? '').slice(0, LONGEST).trim();
}

/** Fills the form from the address; a filter that the guide does not have is left aside. */
function fill(field: HTMLInputElement): void {
  field.value = queryOf(location.href);
  const { searchParams } = new URL(location.href);
  for (const select of selects) {
    const wanted = searchParams.get(select.name) ?? '';
    select.value = [...select.options].some((it) => it.value === wanted) ? wanted : '';
  }
}

if (form && input) {
  const follow = (isNew: boolean) => {
    const query = input.value.slice(0, LONGEST).trim();
    const address = new URL(location.href);
    const fields: Array<[name: string, value: string]> = [
      ['q', query],
      ...selects.map((it): [string, string] => [it.name, it.value]),
    ];
    for (const [name, value] of fields) {
      if (value) address.searchParams.set(name, value);
      else address.searchParams.delete(name);
    }
    history[isNew ? 'pushState' : 'replaceState'](null, '', address);
    void run(query);
  };
  form.hidden = false;
  fill(input);
  void run(input.value);
  input.addEventListener('input', () => follow(false));
  for (const select of selects) select.addEventListener('change', () => follow(true));
  form.addEventListener('submit', (event) => event.preventDefault());
  addEventListener('popstate', () => {
    fill(input);
    void run(input.value);
  });
}
