/** The comparison's state in the address: `/compare/?with=slug,slug,slug`. No DOM. */

/** Panels that are shown beside one another at most. */
export const MOST_PANELS = 5;
/** Characters of the address that are looked at; five names need a tenth of it. */
const LONGEST = 2000;
/** Characters of an unknown name that are shown again. */
const LONGEST_NAME = 40;
/** Unknown names that are shown again. */
const MOST_NAMES = 3;

/** What an address asks for, and what was left out of it, in sentences. */
export interface AskedPanels {
  slugs: string[];
  said: string[];
}

/**
 * Reads the query of an address. Never throws; what it can't use is named in `said`.
 *
 * @param slugOf the panel that a name of today or of before means
 */
export function askedPanels(query: string, slugOf: (name: string) => string | undefined): AskedPanels {
  const said: string[] = [];
  if (query.length > LONGEST)
    said.push(`Only the first ${LONGEST.toLocaleString('en-GB')} characters of the address were read.`);
  const names = new URLSearchParams(query.slice(0, LONGEST))
    .getAll('with')
    .flatMap((it) => it.split(','))
    .map((it) => it.trim())
    .filter((it) => it !== '');
  const different = [...new Set(names)];
  const meant = names.flatMap((it) => slugOf(it) ?? []);
  const known = [...new Set(meant)];
  const unknown = different.filter((it) => slugOf(it) === undefined);
  if (unknown.length > 0) {
    const shown = unknown.slice(0, MOST_NAMES).map((it) => `“${shortened(it)}”`);
    const more = unknown.length - shown.length;
    said.push(`Not in this guide: ${shown.join(', ')}${more > 0 ? ` and ${more} more` : ''}.`);
  }
  if (meant.length > known.length) said.push('A panel that the address names twice is shown once.');
  if (known.length > MOST_PANELS) said.push(`The address names ${known.length} panels; the first five are shown.`);
  return { slugs: known.slice(0, MOST_PANELS), said };
}

/** The address of a comparison; its query is empty where nothing is compared. */
export function compareAddress(slugs: readonly string[]): string {
  return slugs.length > 0 ? `/compare/?with=${slugs.map(encodeURIComponent).join(',')}` : '/compare/';
}

/** A name that is not known, without control characters and not too long. */
function shortened(name: string): string {
  const characters = [...name.replace(/\p{C}/gu, '')];
  return characters.length > LONGEST_NAME ? `${characters.slice(0, LONGEST_NAME).join('')}…` : characters.join('');
}
