/** What marks an element whose text the search finds. */
const MARK = 'data-pagefind-body';

/** One tag; what is quoted in it may hold brackets. */
const TAG = String.raw`<(\/?)([a-z][a-z0-9]*)(?:[^>"']|"[^"]*"|'[^']*')*>`;

/**
 * Of a page what the search finds in it: its title, its filters, and the elements that are marked, without all else, which
 * the indexer would read to leave it out. It is most of a panel's page. A page that is searched whole stays as it is, and
 * so does one in which anything stands otherwise.
 */
export function searchedPart(html: string): string {
  const title = /<title>[^<]*<\/title>/.exec(html)?.[0];
  const [main] = /<main(?:[^>"']|"[^"]*"|'[^']*')*>/.exec(html) ?? [];
  const marked = markedElements(html);
  if (title === undefined || main === undefined || marked === undefined || main.includes(MARK)) return html;
  const language = /^<!DOCTYPE html><html(?:[^>"']|"[^"]*")*>/.exec(html)?.[0];
  if (language === undefined) return html;
  return `${language}<head>${title}</head><body>${main}${marked.join('')}</main></body></html>`;
}

/** The elements that are marked; undefined where one has no end. What is kept too much is left out by the indexer. */
function markedElements(html: string): string[] | undefined {
  const elements: string[] = [];
  let end = 0;
  for (let at = html.indexOf(MARK); at >= 0; at = html.indexOf(MARK, end)) {
    const start = html.lastIndexOf('<', at);
    const next = endOf(html, start);
    if (next === undefined || next < at) return undefined;
    elements.push(html.slice(start, next));
    end = next;
  }
  return elements;
}

/** Where the element ends that begins there. */
function endOf(html: string, start: number): number | undefined {
  const tags = new RegExp(TAG, 'g');
  tags.lastIndex = start;
  const first = tags.exec(html);
  if (first?.index !== start) return undefined;
  let depth = 1;
  for (let tag = tags.exec(html); tag; tag = tags.exec(html)) {
    if (tag[2] !== first[2]) continue;
    depth += tag[1] === '/' ? -1 : 1;
    if (depth === 0) return tags.lastIndex;
  }
  return undefined;
}
