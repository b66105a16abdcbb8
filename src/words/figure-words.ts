import { type FigureOrGap, isFigure } from '../measure/figure.ts';
import type { Statement } from '../measure/statement.ts';
import { carriedWords } from './carried-words.ts';
import type { Dagger } from './flags.ts';
import { type Shown, showFigure } from './format.ts';
import { inOtherUnit, unitKeys } from './other-unit.ts';

/** A figure or a gap in words, with all that stands beside it wherever it is shown. */
export interface FigureWords {
  /** Left out for a gap. */
  shown?: Shown;
  /** The same in the unit that some readers prefer, or a price as it was asked. */
  other?: Shown;
  /** What the choice of units calls the two ways. */
  unitKey?: string;
  otherKey?: string;
  /** Why its uncertainty is not known; left out for what is only known to lie beyond a bound, which has none. */
  absent?: string;
  /** Why there is no figure. */
  gap?: string;
  /** Its mark of doubt. */
  dagger?: Dagger;
  /** From which day it is, where its readings were not taken again: `from 10 Nov 2026`. */
  carried?: string;
  /** That it was corrected, and where the public list says so: `corrected 6 Oct 2026`. */
  corrected?: { text: string; address: string };
}

/** What a figure is put into words with. */
export interface WordedWith {
  /** Of the guide, for figures in money. */
  currency: string;
  /** Puts reasons into words; a page's script brings fewer words than the build. */
  say: (it: Statement) => string;
  /** A price in the currency that it was asked in, where that is another one. */
  priced?: Shown | undefined;
  dagger?: Dagger | undefined;
  corrected?: FigureWords['corrected'] | undefined;
}

/** A figure, or why there is none, as every page prints it. */
export function figureWords(
  it: FigureOrGap | undefined,
  { currency, say, priced, dagger, corrected }: WordedWith,
): FigureWords {
  if (!isFigure(it)) return { gap: say(it?.reason ?? { code: 'not-measured' }) };
  const shown = showFigure(it, currency);
  const other = priced ?? inOtherUnit(it, currency);
  const carried = carriedWords(it);
  return {
    shown,
    ...(other && { other, ...unitKeys(it.unit, other.unit) }),
    ...(shown.absent && !it.bound && { absent: say(shown.absent) }),
    ...(dagger && { dagger }),
    ...(carried && { carried }),
    ...(corrected && { corrected }),
  };
}

/** A price in words of its own currency, beside the figure that it was made into. */
export const pricedAs = (text: string): Shown => ({ value: text, unit: '', text });

/** What stands behind a value, smaller: the interval that is not symmetric, a remark, that or why ± is not known. */
export function remarkWords(
  interval: string | undefined,
  remark: string | undefined,
  absent: string | undefined,
): string {
  return [interval && `(${interval})`, remark, absent].filter(Boolean).join(' ');
}

/** Why ± is missing behind a value; the reason only where there is room for it. */
export const notKnownWords = (reason?: string) => (reason ? `± not known: ${reason}` : '± not known');
