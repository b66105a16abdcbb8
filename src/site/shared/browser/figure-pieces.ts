/** What stands where in a figure, on pages that the build writes and on those that a script draws. */
import { type FigureWords, notKnownWords, remarkWords } from '../../../words/figure-words.ts';
import type { Dagger } from '../../../words/flags.ts';
import { unitBehind } from '../../../words/format.ts';
import { type PieceElement, piece } from './pieces.ts';

/** What a figure has beside its own words, by the place where it stands. */
export interface FigureSetting {
  /** Where the value leads: to its calculation. */
  href?: string | undefined;
  /** Class of that link. */
  className?: string | undefined;
  /** Where the flags stand; on the same page where nothing is given. */
  flagsAt?: string | undefined;
  /** Whose figure it is, where a page shows several panels. */
  of?: string | undefined;
  /** Stands behind it all, and in its place where the reader has chosen the other unit. */
  remark?: string | undefined;
  otherRemark?: string | undefined;
  /** Class names by which ± and what it lacks keep a column's figures in line. */
  aligned?: string | undefined;
}

/**
 * A figure as value ± half of its interval and unit, linked to its calculation; its mark of doubt; smaller, the day that
 * it is from where that is not the session's, the interval that is not symmetric, a remark, why ± is not known. In both units where readers may choose, the other one hidden. For a
 * gap its reason.
 */
export function figurePieces(it: FigureWords, at: FigureSetting = {}): PieceElement[] {
  if (!it.shown) return [piece('span', { class: 'gap' }, it.gap), ...behind([{ remark: at.remark ?? '' }])];
  const absent = it.absent && notKnownWords(it.absent);
  const ways = [
    { ...it.shown, key: it.other && it.unitKey, remark: remarkWords(it.shown.interval, at.remark, absent) },
    ...(it.other
      ? [{ ...it.other, key: it.otherKey, remark: remarkWords(it.other.interval, at.otherRemark, absent) }]
      : []),
  ];
  const values = ways.map((way, i) =>
    piece(
      'span',
      { 'data-u': way.key, hidden: i > 0 },
      i > 0 && ' ',
      way.value,
      (way.plusMinus !== undefined || at.aligned) &&
        piece('i', { class: at.aligned }, way.plusMinus !== undefined && ` ± ${way.plusMinus}`),
      unitBehind(way.unit),
    ),
  );
  // A link is an element already: with one way of writing there is none to be told from.
  const [only, another] = values;
  const linked = another || !only ? values : only.pieces;
  return [
    ...(at.href === undefined ? values : [piece('a', { class: at.className, href: at.href }, ...linked)]),
    ...markPieces(it.dagger, at.flagsAt, at.of),
    ...carriedPieces(it.carried),
    ...correctedPieces(it.corrected),
    ...behind(ways),
  ];
}

/** Remarks behind a value: one for both ways where they say the same. */
function behind(ways: ReadonlyArray<{ key?: string | undefined; remark: string }>): PieceElement[] {
  const isOne = new Set(ways.map((it) => it.remark)).size === 1;
  return ways.flatMap(({ key, remark }, i) => {
    if (remark === '' || (isOne && i > 0)) return [];
    return [piece('small', isOne ? {} : { 'data-u': key, hidden: i > 0 }, ` ${remark}`)];
  });
}

/**
 * A mark of doubt that leads to the flags; nothing where there is none.
 *
 * @param href where the flags stand
 * @param of whose figure it is, where a page shows several panels
 */
export function markPieces(dagger: Dagger | undefined, href = '#flags', of?: string): PieceElement[] {
  if (!dagger) return [];
  const label = of ? `${of}: ${dagger.label}` : dagger.label;
  return [piece('a', { class: 'dagger', href, 'aria-label': label }, dagger.mark)];
}

/** From which day a figure is, where its readings were not taken again; nothing for all others. */
export function carriedPieces(carried: string | undefined): PieceElement[] {
  return carried === undefined ? [] : [piece('small', { class: 'carried' }, ` ${carried}`)];
}

/** That a figure was corrected; what it was and why stands once a page, with the way to the public list. */
function correctedPieces(it: FigureWords['corrected']): PieceElement[] {
  return it ? [piece('small', { class: 'carried' }, ` ${it.text}`)] : [];
}
