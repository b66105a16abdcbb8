/** What stands in many cells of a page as markup: components print it one by one, and tables put it together in strings. */
import { number } from '../../measure/numbers.ts';
import type { Dagger } from '../../words/flags.ts';
import { inInches } from '../../words/other-unit.ts';
import { carriedPieces, figurePieces, markPieces } from './browser/figure-pieces.ts';
import { type Html, html, piecesHtml } from './html.ts';
import type { ShownFigure } from './shown-figure.ts';

/**
 * A figure as its value with uncertainty, linked to its calculation; or the reason why there is none.
 *
 * @param of whose figure it is, where a page shows several panels
 */
export const shownHtml = (it: ShownFigure, of?: string): Html =>
  piecesHtml(figurePieces(it, { href: it.calculation, flagsAt: it.flagsAt, of }));

/** What may mark a figure besides its own words. */
export interface Marks {
  dagger: Dagger | undefined;
  /** Where the flags stand. */
  href?: string | undefined;
  /** Whose figure it is, where a page shows several panels. */
  of?: string | undefined;
  /** From which day the figure is, where that is an earlier one. */
  carried?: string | undefined;
}

/** The marks of a figure: of doubt, which leads to the flags, and of the day that it is from. */
export const marksHtml = ({ dagger, href, of, carried }: Marks): Html =>
  piecesHtml([...markPieces(dagger, href, of), ...carriedPieces(carried)]);

/** The day that all of a line or figure is from, where that is an earlier one. */
export const carriedHtml = (carried: string | undefined): Html => piecesHtml(carriedPieces(carried));

/** A length in the unit that the reader prefers: the script of units has inches ready, since most lines of a page have one. */
export const lengthHtml = (cm: number): Html => html`<span data-in="${inInches(cm)}">${number(cm)} cm</span>`;

/** Links in a line. */
export const linksHtml = (links: ReadonlyArray<{ address: string; name: string }>, between: string): Html =>
  html`${links.map(({ address, name }, i) => html`${i > 0 && between}<a href="${address}">${name}</a>`)}`;
