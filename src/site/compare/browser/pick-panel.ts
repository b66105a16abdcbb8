/** Which panel a reader means who types some of its name. No DOM. */
import type { ListedPanel } from './compared-panel.ts';

/** Panels that a text may mean: the one of just that name, else all that have each of its words somewhere in theirs. */
export function meant(text: string, panels: readonly ListedPanel[]): ListedPanel[] {
  const wanted = plain(text);
  if (wanted === '') return [];
  const same = panels.filter((it) => plain(it.name) === wanted);
  if (same.length > 0) return same;
  const words = wanted.split(' ');
  return panels.filter((it) => words.every((word) => plain(it.name).includes(word)));
}

const plain = (text: string) => text.trim().toLowerCase().replace(/\s+/g, ' ');
