import { figurePieces } from '../shared/browser/figure-pieces.ts';
import { type PieceElement, piece } from '../shared/browser/pieces.ts';
import type { Row } from './guide-view.ts';
import type { Cell } from './ranking-cells.ts';

/** Letters of a reason that stands in a gap's place. */
const LONGEST_REASON = 14;

const plainly = (text: string) => ({ value: text, unit: '', text });

/** A cell of the ranking as figures stand everywhere; the column's head has its unit. */
export function cellPieces(cell: Cell, row: Pick<Row, 'name' | 'address'>, href?: string): PieceElement[] {
  if (cell.isGap) {
    const reason = cell.after ?? '';
    // A long reason would set the width of the column; it stands on the panel's page too.
    return reason.length > LONGEST_REASON
      ? [...figurePieces({ gap: cell.text }), piece('span', { class: 'unseen' }, ` ${reason}`)]
      : figurePieces({ gap: reason });
  }
  return figurePieces(
    {
      shown: { ...plainly(cell.text), ...(cell.plusMinus && { plusMinus: cell.plusMinus }) },
      ...(cell.priced && { other: plainly(cell.priced), unitKey: 'base', otherKey: 'priced' }),
      ...(cell.dagger && { dagger: cell.dagger }),
      ...(cell.carried && { carried: cell.carried }),
    },
    {
      href,
      flagsAt: `${row.address}#flags`,
      of: row.name,
      remark: cell.after,
      otherRemark: cell.afterPriced,
      aligned: cell.aligned,
    },
  );
}
