import { ERROR_KEYS, nameAt, placeOrName } from './packed-names.ts';

/**
 * One error of the budgets, kept once for all figures of a file: its key and the place of its kind; the key alone where
 * that is the first. Keys that most files have are their places among `ERROR_KEYS`; -1 - place has the second kind.
 */
export type PackedLine = string | number | [key: string | number, kind: number];

/** What a packed key begins with in the place of the owner, or of the owner's panel. No key begins with them. */
const OWN = '~';
const OWN_PANEL = '^';

/**
 * Packs the keys of errors.
 *
 * @param owner what most keys of a file begin with: `panel/day/`, or the panel alone
 * @returns what makes a line of a key and the place of its kind
 */
export function linePacker(owner: string): (key: string, kind: number) => PackedLine {
  const panel = panelOf(owner);
  const short = (key: string) => {
    if (owner !== '' && key.startsWith(owner)) return `${OWN}${key.slice(owner.length)}`;
    return panel !== '' && key.startsWith(panel) ? `${OWN_PANEL}${key.slice(panel.length)}` : key;
  };
  return (key, kind) => {
    const name = placeOrName(ERROR_KEYS, short(key));
    if (typeof name === 'number' && kind === 1) return -1 - name;
    return kind === 0 ? name : [name, kind];
  };
}

/** The way back: key and place of its kind of a line. @throws RangeError for a place that no key has */
export function lineUnpacker(owner: string): (line: PackedLine) => [key: string, kind: number] {
  const panel = panelOf(owner);
  const full = (key: string) => {
    if (owner !== '' && key.startsWith(OWN)) return owner + key.slice(OWN.length);
    return panel !== '' && key.startsWith(OWN_PANEL) ? panel + key.slice(OWN_PANEL.length) : key;
  };
  return (line) => {
    const [name, kind] = typeof line === 'object' ? line : Number(line) < 0 ? [-1 - Number(line), 1] : [line, 0];
    return [full(nameAt(ERROR_KEYS, name)), kind];
  };
}

/** The panel's part of `panel/day/`; nothing where there is no day. */
function panelOf(owner: string): string {
  const end = owner.indexOf('/') + 1;
  return end < owner.length ? owner.slice(0, end) : '';
}
