/** A tag with its attributes, or a whole element in which every character counts. */
const TAGS =
  /<(script|style|pre|textarea)\b[\s\S]*?<\/\1>|<!--[\s\S]*?-->|<(\/?)([a-z][a-z0-9-]*)((?:\s+[^\s"'>=/]+(?:="[^"]*")?)*)(\s*\/?)>/gi;

/** An attribute's value that needs no quotes: what follows must not be taken for more of it. */
const NEEDS_NO_QUOTES = /="([^\s"'=<>`]+)"(?=\s|$)/g;

/** Of tables: between these and whatever stands next to them white space is nothing. */
const TABLE_PARTS = /^(?:table|caption|colgroup|thead|tbody|tfoot|tr|td|th)$/;

/** End tags that a table's next part, or the table's own end, tells anyway. */
const TOLD_IN_TABLES = /^(?:thead|tbody|tr|td|th)$/;

/** End tags that the next of their kind, or the end of what they lie in, tells anyway. */
const TOLD_IN_TEXT = /<\/(?:li|dt|dd)>\s*(?=<(?:li|dt|dd)\b|<\/(?:ul|ol|dl)>)/g;
const TOLD_PARAGRAPH =
  /<\/p>\s*(?=<(?:p|div|ul|ol|dl|table|details|section|h[1-6]|figure|pre|form|hr)\b|<\/(?:div|section|details|figure|main|li|dd|td)>)/g;

/**
 * A page without what HTML can do without: quotes around plain values, end tags that the next tag tells, and white
 * space between a table's parts (HTML standard, 13.1.2.4 "Optional tags" and 13.1.2.3 "Attributes", from memory).
 * A browser makes the same of it. These are a tenth of a panel's bytes.
 *
 * The search's indexer takes no end for told: pages that it reads keep all but those in tables, where it reads none.
 */
export function lightHtml(html: string): string {
  // A head is read by programs that know less of HTML than a browser.
  const head = Math.max(html.indexOf('<body'), 0);
  const body = html.slice(head);
  let text = html.slice(0, head);
  let done = 0;
  let isAfterPart = false;
  for (const match of body.matchAll(TAGS)) {
    const [tag, , end, name, attributes = '', close = ''] = match;
    const isPart = name !== undefined && TABLE_PARTS.test(name);
    const between = body.slice(done, match.index);
    if (!(isPart && isAfterPart && between.trim() === '')) text += between;
    if (name === undefined) text += tag;
    else if (end) text += TOLD_IN_TABLES.test(name) ? '' : tag;
    else text += openTag(name, attributes, close.includes('/'));
    isAfterPart = isPart;
    done = match.index + tag.length;
  }
  text += body.slice(done);
  return html.includes('data-pagefind-body') ? text : text.replace(TOLD_IN_TEXT, '').replace(TOLD_PARAGRAPH, '');
}

/** A slash right behind a value without quotes would be the value's. */
function openTag(name: string, attributes: string, isEmpty: boolean): string {
  const plain = attributes.replace(NEEDS_NO_QUOTES, '=$1');
  if (!isEmpty) return `<${name}${plain}>`;
  return `<${name}${plain}${plain === '' || plain.endsWith('"') ? '/' : ' /'}>`;
}
