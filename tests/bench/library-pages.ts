/**
 * Pages with the same rows and columns as the guide's longest table, shown by general table libraries in their fastest
 * settings: virtual rows where they have them, pages of rows where they don't, no animation. All draw about as many rows as
 * our table keeps live, and all columns in the window: what lies out of it one library would leave out.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { dice } from '../support/draw-panel.ts';

/** A library's page, and how it is told to sort and to filter. */
export interface LibraryPage {
  name: string;
  html: string;
  /** Size of its script, KB gzip; style sheets are not counted. */
  scriptKb: number;
}

const NUMERIC_COLUMNS = 11;
/** Rows that a library draws at a time: as many as our table keeps live. */
const SHOWN = 12;

function rowsOf(count: number): Array<[string, ...number[]]> {
  const draw = dice(1);
  return Array.from({ length: count }, () => [
    `Model ${1 + Math.floor(draw.between([0, 10 * count]))}`,
    ...Array.from({ length: NUMERIC_COLUMNS }, () => Number(draw.between([0, 1000]).toFixed(2))),
  ]);
}

const file = (path: string) => fileURLToPath(new URL(`../../node_modules/${path}`, import.meta.url));
const read = (path: string) => readFileSync(file(path), 'utf8');
const gzipped = (text: string) => gzipSync(text, { level: 9 }).length / 1000;

/** Each page answers `window.sortBy(column, isDescending)` and `window.filterBelow(value)` on the second number. */
export function libraryPages(rows: number): LibraryPage[] {
  const data = JSON.stringify(rowsOf(rows));
  const columns = Array.from({ length: NUMERIC_COLUMNS + 1 }, (_, i) => (i === 0 ? 'Panel' : `Figure ${i}`));
  const objects = `const rows = ${data}; const names = ${JSON.stringify(columns)};
    const objects = rows.map((row) => Object.fromEntries(row.map((it, i) => ['c' + i, it])));`;
  const page = (name: string, scripts: string[], styles: string[], body: string, code: string): LibraryPage => ({
    name,
    html: `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>${name}</title>${styles
      .map((it) => `<style>${it}</style>`)
      .join(
        '',
      )}</head><body>${body}${scripts.map((it) => `<script>${it.replaceAll('</script', '<\\/script')}</script>`).join('')}<script>${objects}${code}</script></body></html>`,
    scriptKb: scripts.reduce((sum, it) => sum + gzipped(it), 0),
  });
  return [
    page(
      `simple-datatables, ${SHOWN} rows a page`,
      [read('simple-datatables/dist/umd/simple-datatables.js')],
      [read('simple-datatables/dist/style.css')],
      '<table id="t"></table>',
      `const table = new simpleDatatables.DataTable('#t', { data: { headings: names, data: rows }, perPage: ${SHOWN}, columns: names.map((_, i) => ({ select: i, type: i ? 'number' : 'string' })) });
       window.sortBy = (column, isDescending) => table.columns.sort(column, isDescending ? 'desc' : 'asc');
       // It has no filter on numbers; a search is what it offers.
       window.filterBelow = (value) => table.search(String(value).slice(0, 2));
       window.isReady = true;`,
    ),
    page(
      'ag-grid-community, virtual rows',
      [read('ag-grid-community/dist/ag-grid-community.min.js')],
      [],
      `<div id="t" style="height:${SHOWN * 42 + 51}px"></div>`,
      `const api = agGrid.createGrid(document.querySelector('#t'), {
         columnDefs: names.map((headerName, i) => ({ headerName, field: 'c' + i, filter: i ? 'agNumberColumnFilter' : 'agTextColumnFilter' })),
         defaultColDef: { width: 104 }, rowBuffer: 0, rowData: objects, animateRows: false, suppressColumnMoveAnimation: true, onFirstDataRendered: () => { window.isReady = true; } });
       window.sortBy = (column, isDescending) => api.applyColumnState({ state: [{ colId: 'c' + column, sort: isDescending ? 'desc' : 'asc' }], defaultState: { sort: null } });
       window.filterBelow = (value) => api.setFilterModel({ c2: { filterType: 'number', type: 'lessThanOrEqual', filter: value } });`,
    ),
    page(
      'tabulator-tables, virtual rows',
      [read('tabulator-tables/dist/js/tabulator.min.js')],
      [read('tabulator-tables/dist/css/tabulator.min.css')],
      '<div id="t"></div>',
      `const table = new Tabulator('#t', { data: objects, height: ${SHOWN * 24 + 30}, renderVertical: 'virtual', renderVerticalBuffer: 1, layout: 'fitDataFill', columns: names.map((title, i) => ({ title, field: 'c' + i, sorter: i ? 'number' : 'string' })) });
       table.on('tableBuilt', () => { window.isReady = true; });
       window.sortBy = (column, isDescending) => table.setSort('c' + column, isDescending ? 'desc' : 'asc');
       window.filterBelow = (value) => table.setFilter('c2', '<=', value);`,
    ),
  ];
}
