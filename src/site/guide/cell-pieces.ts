import { figurePieces } from '../shared/browser/figure-pieces.ts';
import type { PieceElement } from '../shared/browser/pieces.ts';
import type { Row } from './guide-view.ts';
import type { Cell } from './ranking-cells.ts';

const plainly = (text: string) => ({ value: text, unit: '', text });

/** A cell of a ranking table as figures stand everywhere; the column's head has its unit and the way to its method. */
export function cellPieces(cell: Cell, row: Pick<Row, 'name' | 'address'>): PieceElement[] {
  if (cell.isGap) return figurePieces({ gap: cell.text }, { remark: cell.after });
  return figurePieces(
    {
      shown: { ...plainly(cell.text), ...(cell.plusMinus && { plusMinus: cell.plusMinus }) },
      ...(cell.priced && { other: plainly(cell.priced), unitKey: 'base', otherKey: 'priced' }),
      ...(cell.dagger && { dagger: cell.dagger }),
    },
    { flagsAt: `${row.address}#flags`, of: row.name, remark: cell.after, otherRemark: cell.afterPriced },
  );
}
