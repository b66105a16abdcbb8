import { isSearched } from './search-index.ts';

/** Pages of which there are as many as panels. */
const OF_ONE_PANEL = /^\/panels\/./;

/**
 * End tags of a table's parts, and the spaces between these parts, where what comes next ends them anyway. HTML Standard
 * (WHATWG), 13.1.2.4 "Optional tags"; read from memory.
 */
const IN_TABLES = [
  '(t[dh])>\\s*(?=<t[dh][ >]|</tr>)',
  'tr>\\s*(?=<tr[ >]|</t(?:body|head|foot|able)>)',
  'thead>\\s*(?=<t(?:body|foot)[ >])',
  'tbody>\\s*(?=<t(?:body|foot)[ >]|</table>)',
];

/**
 * By the same rule, of lists and paragraphs: spaces stay, since items may stand in one line. What begins or ends after
 * them is named where it does end a paragraph; a link's end, for one, doesn't.
 */
const IN_TEXT = [
  'li>(?=\\s*(?:<li[ >]|</[uo]l>))',
  'd[td]>(?=\\s*<d[td][ >])',
  'dd>(?=\\s*</(?:dl|div)>)',
  'p>(?=\\s*(?:<(?:p|[uo]l|dl|div|h[2-6]|table|section|details|figure|nav|aside|form)[ >]|' +
    '</(?:div|section|details|figure|figcaption|li|d[dt]|td|th|main|article|aside|nav)>))',
];

const endTags = (ways: readonly string[]) => new RegExp(`</(?:${ways.join('|')})`, 'g');
const LEFT_OUT = endTags([...IN_TABLES, ...IN_TEXT]);
const LEFT_OUT_OF_TABLES = endTags(IN_TABLES);

/**
 * A panel's page without the end tags that HTML lets be left out: the same document for every browser, in fewer bytes
 * (3.5 of 91 KB a panel). The other pages are few, and stay as they are.
 *
 * The indexer takes an end tag for the end of a word, and knows no element that ends without. What it reads of a panel's
 * page has hardly a table, so there only tables lose end tags, and cells keep a space in place of theirs.
 *
 * @param page its address below the guide's top, with a slash at both ends
 */
export function leanHtml(html: string, page: string): string {
  if (!OF_ONE_PANEL.test(page)) return html;
  return isSearched(`${page.slice(1)}index.html`)
    ? html.replace(LEFT_OUT_OF_TABLES, (_, cell: string | undefined) => (cell ? ' ' : ''))
    : html.replace(LEFT_OUT, '');
}
