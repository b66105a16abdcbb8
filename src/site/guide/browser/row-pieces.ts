/** What is drawn in a row of the ranking, by the build and by the script that has other prices. */
import { type PieceElement, piece } from '../../shared/browser/pieces.ts';
import { LENGTH, type PlacedInterval } from './interval-scale.ts';
import type { TiedRow } from './tie-brackets.ts';

/** The interval as a line on the scale of all rows, its value as a stroke across; the scale alone where there is none. */
export function intervalPieces(interval: PlacedInterval | undefined): PieceElement[] {
  return [
    piece(
      'svg',
      { viewBox: `0 0 ${LENGTH} 8`, preserveAspectRatio: 'none' },
      piece('use', { href: '#scale' }),
      interval && piece('path', { class: 'iv', d: `M${interval.from} 4H${interval.to}` }),
      interval && piece('path', { class: 'pt', d: `M${interval.at} .5v7` }),
    ),
  ];
}

/** The row's share of each bracket, and that it ties for those who do not see one. */
export function bracketPieces({ parts }: TiedRow): PieceElement[] {
  if (parts.length === 0) return [];
  return [
    piece('span', { class: 'unseen' }, ', a tie'),
    ...parts.map(({ lane, isFirst, isLast }) => piece('span', { class: bracketClass(lane, isFirst, isLast) })),
  ];
}

/** Class names of a row's share of a bracket; `drawn-ties.ts` reads them again. */
export const bracketClass = (lane: number, isFirst: boolean, isLast: boolean) =>
  `tie t${lane}${isFirst ? ' a' : ''}${isLast ? ' z' : ''}`;
