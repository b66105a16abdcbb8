import { figurePieces } from '../shared/browser/figure-pieces.ts';
import type { PieceElement } from '../shared/browser/pieces.ts';
import type { Row } from './guide-view.ts';
import type { Cell } from './ranking-cells.ts';

const plainly = (text: string) => ({ value: text, unit: '', text });

/** A cell of the ranking as figures stand everywhere; the column's head has its unit. */
export function cellPieces(cell: Cell, row: Pick<Row, 'name' | 'address'>, href?: string): PieceElement[] {
  if (cell.isGap) return figurePieces({ gap: cell.text }, { remark: cell.after });
  return figurePieces(
    {
      shown: { ...plainly(cell.text), ...(cell.plusMinus && { plusMinus: cell.plusMinus }) },
      ...(cell.priced && { other: plainly(cell.priced), unitKey: 'base', otherKey: 'priced' }),
      ...(cell.dagger && { dagger: cell.dagger }),
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
