import { carriedPieces, markPieces } from '../shared/browser/figure-pieces.ts';
import { type Html, html, piecesHtml } from '../shared/html.ts';
import { bracketPieces, intervalPieces } from './browser/row-pieces.ts';
import { cellPieces } from './cell-pieces.ts';
import type { GuideView, Row } from './guide-view.ts';

/*
 * The rows of the ranking: hundreds of them, so they are strings, short and alike; what compresses to nothing may be said
 * in each. Roles are told, since a narrow window shows a row as a block, and some browsers then take it for none.
 */

/** A panel's row. */
export function rowHtml(row: Row, { columns }: Pick<GuideView, 'columns'>): Html {
  return html`<tr role="row" data-f="${row.data}">${rankHtml(row)}<th scope="row" role="rowheader"><a href="${row.address}">${row.name}</a><small> ${row.remarks.join(' · ')}</small></th>${columns.map(
    (column, i) => {
      const cell = row.cells[i];
      if (!cell) return null;
      const calculation = column.isRanked ? `${row.address}methodology/#${column.metric}` : undefined;
      const figure = piecesHtml(cellPieces(cell, row, calculation));
      return column.isRanked
        ? html`<td role="cell" class="watt">${figure}</td><td aria-hidden="true" class="bar">${piecesHtml(intervalPieces(row.interval))}</td>`
        : html`<td role="cell" data-l="${cell.label}">${figure}</td>`;
    },
  )}${stripHtml(row)}</tr>`;
}

function rankHtml({ rank, rankDagger, ties, address, name }: Row): Html {
  const mark = piecesHtml(markPieces(rankDagger, `${address}#flags`, `${name}, rank`));
  return html`<td role="cell">${rank}${mark}${piecesHtml(bracketPieces(ties))}</td>`;
}

/** Peaks as ticks on the axis of all rows; broken where eyes see nothing. */
function stripHtml({ strip }: Row): Html {
  if (!strip) return html`<td role="cell" data-l="peaks nm"><span class="gap">not measured</span></td>`;
  const ticks = (places: readonly number[], name: string) =>
    places.map((it) => html`<path class="${name}" d="M${it} 1v11"/>`);
  return html`<td role="cell" data-l="peaks nm"><svg class="nm" viewBox="0 0 100 14" preserveAspectRatio="none" aria-hidden="true"><use href="#nm"/>${ticks(strip.visible, 'vis')}${ticks(strip.infrared, 'nir')}</svg> ${strip.text}${piecesHtml(carriedPieces(strip.carried))}</td>`;
}
