/** The search page: asks the index that the build wrote, and nothing else. The query lives in the address. */

interface Result {
  url: string;
  excerpt: string;
  content: string;
  meta: { title?: string };
  filters: Record<string, string[]>;
}

interface Index {
  debouncedSearch(query: string): Promise<{ results: Array<{ data(): Promise<Result> }> } | null>;
}

/** Results that are fetched and shown; a reader narrows the words sooner than reading on. */
const MOST = 30;
/** Longest query that is looked up. */
const LONGEST = 200;

const form = document.querySelector<HTMLFormElement>('#search');
const input = document.querySelector<HTMLInputElement>('#query');
const count = document.querySelector('#count');
const list = document.querySelector('#found');

let index: Promise<Index> | undefined;

function load(): Promise<Index> {
  // Written by the build after the scripts are bundled, so the bundler can't know it.
  const path = '/pagefind/pagefind.js';
  index ??= import(/* @vite-ignore */ path) as Promise<Index>;
  return index;
}

async function run(query: string): Promise<void> {
  if (!count || !list) return;
  if (query === '') {
    count.textContent = '';
    list.replaceChildren();
    return;
  }
  let found: Awaited<ReturnType<Index['debouncedSearch']>>;
  try {
    found = await (await load()).debouncedSearch(query);
  } catch {
    count.textContent = 'The search index could not be read. It is written by a build, and not there while you write.';
    return;
  }
  // A newer query has taken over.
  if (found === null) return;
  const fetched = await Promise.all(found.results.slice(0, MOST).map((it) => it.data()));
  const results = fetched.filter((it) => hasWords(it, query));
  const total = found.results.length > MOST ? found.results.length : results.length;
  count.textContent =
    total === 0
      ? `Nothing found for “${query}”.`
      : `${total} ${total === 1 ? 'page' : 'pages'} found${total > MOST ? `, the first ${MOST} shown` : ''}.`;
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

function item(result: Result): HTMLLIElement {
  const entry = document.createElement('li');
  const link = document.createElement('a');
  link.href = result.url;
  link.textContent = result.meta.title ?? result.url;
  const kind = document.createElement('span');
  kind.className = 'soft';
  kind.textContent = ` ${(result.filters.kind ?? []).join(', ')}`;
  const excerpt = document.createElement('p');
  excerpt.append(...marked(result.excerpt));
  entry.append(link, kind, excerpt);
  return entry;
}

/** The index marks hits with <mark>; everything else in an excerpt is taken as text. */
function marked(html: string): Node[] {
  const parsed = new DOMParser().parseFromString(html, 'text/html').body;
  return [...parsed.childNodes].map((node) => {
    const text = document.createTextNode(node.textContent ?? '');
    if (!(node instanceof HTMLElement) || node.tagName !== 'MARK') return text;
    const mark = document.createElement('mark');
    mark.append(text);
    return mark;
  });
}

function queryOf(address: string): string {
  return (new URL(address).searchParams.get('q') ?? '').slice(0, LONGEST).trim();
}

if (form && input) {
  form.hidden = false;
  input.value = queryOf(location.href);
  void run(input.value);
  input.addEventListener('input', () => {
    const query = input.value.slice(0, LONGEST).trim();
    const address = new URL(location.href);
    if (query) address.searchParams.set('q', query);
    else address.searchParams.delete('q');
    history.replaceState(null, '', address);
    void run(query);
  });
  form.addEventListener('submit', (event) => event.preventDefault());
}
