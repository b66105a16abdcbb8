import { curly } from '../../content/schema/curly.ts';
import { unitSigns, withSigns } from '../../words/format.ts';
import { beyondHtml } from '../panel/beyond-html.ts';
import { type Html, html } from '../shared/html.ts';
import type { SessionCalculation } from './calculation-view.ts';
import type { RawReading } from './raw-readings.ts';
import { type ReadingCell, type ReadingTable, readingTables } from './reading-tables.ts';
import { sheet } from './sheet.ts';

/** Every reading of a session as it was written, the grid by its places; rejected ones struck, with their reason. */
export function readingsHtml({ readings, carried, files, beyond, shownDate }: SessionCalculation): Html {
  const { grid, tables, singles } = readingTables(readings);
  return html`<div class="raw">
${
  grid &&
  html`<table class="grid9"><caption>The grid${grid.unit && `, ${unitSigns(grid.unit)}`}</caption><tbody>${grid.rows.map(
    (row) => html`<tr>${row.map((cell) => html`<td>${cellHtml(cell, grid.unit)}</td>`)}</tr>`,
  )}</tbody></table>`
}
${tables.map((it) => tableHtml(it, shownDate))}
</div>
${singles.length > 0 && singlesHtml(singles)}
${carried.length > 0 && html`<p>Not read again: ${carried.map(({ text, anchor }, i) => html`${i > 0 && '; '}<a href="#${anchor}">${text}</a>`)}.</p>`}
${files.length > 0 && filesHtml(files)}
${beyond && beyondHtml(beyond, shownDate)}`;
}

/** Files from the bench by their hashes (SHA-256), so that a copy can be told from another. */
const filesHtml = (files: SessionCalculation['files']) =>
  html`<details><summary>Files from the bench: ${files.length}</summary>${files.map(
    ({ name, address, sha256 }) => html`<p><a href="${address}">${name}</a> <small>SHA-256 ${sha256}</small></p>`,
  )}</details>`;

/** Readings that stand in no table, words behind numbers, since they may be sentences. */
const singlesHtml = (singles: readonly RawReading[]) =>
  html`<p>${singles
    .toSorted((a, b) => Number(a.value === undefined) - Number(b.value === undefined))
    .map(
      (it, i) =>
        html`${i > 0 && '; '}${i > 0 ? it.label : capital(it.label)}${it.value === undefined && ':'} ${cellHtml([it])}`,
    )}</p>`;

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

const tableHtml = ({ caption, heads, rows }: ReadingTable, date: string) =>
  sheet(
    `${caption}, ${date}`,
    html`<thead><tr><td></td>${heads.map((it) => html`<th scope="col">${it}</th>`)}</tr></thead>
<tbody>${rows.map(
      ({ label, cells }) =>
        html`<tr><th scope="row">${label}</th>${cells.map((it) => html`<td>${cellHtml(it)}</td>`)}</tr>`,
    )}</tbody>`,
  );

function cellHtml(cell: ReadingCell, unit = ''): Html {
  const short = ({ written, value }: RawReading) => {
    if (unit && written.endsWith(` ${unit}`)) return written.slice(0, -unit.length - 1);
    return value === undefined ? curly(written) : withSigns(written);
  };
  return html`${cell.map(
    (it, i) =>
      html`${i > 0 && ' '}${it.struck === undefined ? short(it) : html`<s>${short(it)}</s><small> struck out: ${curly(it.struck)}</small>`}`,
  )}`;
}
