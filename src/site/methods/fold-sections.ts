/** Sections of a method page by their headings: what a reader needs first stays open, the rest is one click away. */

/** Anchors of headings whose sections stay open: what is read, and what to beware of. */
const OPEN = new Set(['what-it-is', 'how-it-is-measured', 'caution']);

/**
 * The rendered prose of a method with its sections folded, those that stay open first and the caution last of them. Headings
 * of the second level divide it; their anchors stay. What stands before the first heading stays where it is.
 *
 * @param prose markup in which headings of the second level stand at the top alone
 */
export function foldSections(prose: string): { open: string; folded: string } {
  const parts = prose.split(/(?=<h2[ >])/);
  const isOpen = (part: string) => !part.startsWith('<h2') || OPEN.has(/^<h2[^>]* id="([^"]*)"/.exec(part)?.[1] ?? '');
  return {
    open: parts.filter(isOpen).join(''),
    folded: parts
      .filter((it) => !isOpen(it))
      .map((it) => it.replace(/^(<h2.*?<\/h2>)([\s\S]*)$/, '<details class="fold"><summary>$1</summary>$2</details>'))
      .join(''),
  };
}
