import type { Column } from './ranking-columns.ts';

/** The methods behind a ranking's columns, each once, by what a reader calls the column. */
export function methodLinks(columns: readonly Column[]): Array<{ href: string; words: string }> {
  const words = new Map<string, string>([
    ['rank', 'rank and ties'],
    ['size-class', 'size'],
  ]);
  for (const it of columns) if (!words.has(it.method)) words.set(it.method, it.words);
  words.set('wavelength', 'wavelengths');
  return [...words].map(([method, text]) => ({ href: `/methods/${method}/`, words: text }));
}
