import { type FigureOrGap, type Flag, isFigure } from '../measure/figure.ts';
import { listed } from './format.ts';
import { DOUBT_MARK, IMPOSSIBLE_MARK } from './marks.ts';
import { nameOf } from './names.ts';

/** A mark beside a figure, and what it says to who can't see it. */
export interface Dagger {
  mark: string;
  label: string;
}

/**
 * Printers' marks for flags: a dagger for a doubt, a double dagger for what cannot be, on the figure that a flag is about
 * and on every figure made of it. A note gets none in tables; it stands on the panel's page.
 */
export function daggerOf(flags: readonly Flag[]): Dagger | undefined {
  for (const [severity, mark, words] of MARKS) {
    const own = flags.filter((flag) => flag.severity === severity);
    if (own.length > 0) return { mark, label: `${words}${throughWords(own)}, see the flags` };
  }
  return undefined;
}

/** The mark of a figure; a gap has none. */
export function markOf(it: FigureOrGap | undefined): Dagger | undefined {
  return isFigure(it) ? daggerOf(it.flags) : undefined;
}

const MARKS = [
  ['impossible', IMPOSSIBLE_MARK, 'impossible as it stands'],
  ['doubt', DOUBT_MARK, 'in doubt'],
] as const;

/** What a flag was handed on by; nothing where one of them is about the figure itself. */
function throughWords(flags: readonly Flag[]): string {
  const from = new Set(flags.map((it) => it.from));
  if (from.has(undefined)) return '';
  return `, for it is made of ${listed([...from].flatMap((it) => (it === undefined ? [] : [nameOf(it)])))}`;
}

/** The severity in words. */
export const SEVERITY_WORDS: Record<Flag['severity'], string> = {
  note: 'Note',
  doubt: '† Doubt',
  impossible: '‡ Impossible',
};
