/** The run sheet's page: the sheet of a panel or a field, as the form says. */

import { expectedBias, halvingBias } from '../../../measure/beam/expected-bias.ts';
import { biasWords } from '../../../words/bench-words.ts';
import { fixed, showDate } from '../../../words/format.ts';
import { elementOf, html } from '../../shared/browser/dom.ts';
import { nameToday } from '../../shared/browser/former-names.ts';
import type { PieceElement } from '../../shared/browser/pieces.ts';
import { inSite } from '../../shared/browser/site-path.ts';
import { calibrationState } from './calibration-state.ts';
import { metersFor, type SheetData } from './sheet-data.ts';
import { aroundDrawing, fieldDrawing } from './sheet-drawing.ts';
import { fillForm, find, formFields, hint, readForm } from './sheet-form.ts';
import { type SheetPoint, type SheetPoints, sheetPoints } from './sheet-points.ts';
import { readSheet, type SheetGrid, type SheetSetup, sheetAddress, sheetGrid } from './sheet-setup.ts';
import { today } from './today.ts';

/** More points than this stand in two tables, side by side. */
const ONE_TABLE = 10;

const form = document.querySelector<HTMLFormElement>('#bench-sheet');
if (form) start(form);

function start(place: HTMLFormElement): void {
  const data = JSON.parse(place.querySelector('script[data-sheet]')?.textContent ?? '') as SheetData;
  const slugOf = nameToday(Object.entries(data.panels).map(([slug, { formerly = [] }]) => ({ slug, formerly })));
  const fields = formFields();
  let setup: SheetSetup = readSheet('', () => undefined).setup;

  const show = (before: string) => {
    const panel = setup.panel === undefined ? undefined : data.panels[setup.panel];
    const grid = sheetGrid(setup, panel);
    find('[data-sheet-panel]').textContent = panel?.name ?? '';
    const { field } = grid;
    find('[data-sheet-sides]').textContent = field ? `${field.width.written} × ${field.height.written}` : '';
    hint(fields, panel, grid);
    find('[data-sheet-date]').textContent = setup.date ? showDate(setup.date) : '';
    const said = showGrid(grid, data.distance);
    showMeters(data, setup);
    find('[data-sheet-said]').textContent = [before, said].filter((it) => it !== '').join(' ');
  };
  const apply = () => {
    const found = readSheet(location.search, slugOf);
    setup = found.setup;
    fillForm(fields, setup);
    show(found.said);
  };

  place.addEventListener('submit', (event) => event.preventDefault());
  place.addEventListener('input', () => {
    const { setup: written, odd } = readForm(fields);
    setup = written;
    history.replaceState(null, '', inSite(sheetAddress(setup)));
    show(odd);
  });
  place.querySelector('[data-print]')?.addEventListener('click', () => print());
  addEventListener('popstate', apply);
  place.hidden = false;
  apply();
}

/** Puts the grid's parts in their places; tells what is odd about it. */
function showGrid(grid: SheetGrid, distance: number): string {
  const made = sheetPoints(grid);
  const { inset } = grid;
  const sides = grid.field && { width: grid.field.width.cm, height: grid.field.height.cm };
  const first = made.points.length > ONE_TABLE ? Math.ceil(made.points.length / 2) : made.points.length;
  find('[data-sheet-points]').replaceChildren(
    ...made.points.slice(0, first).map((it) => row(it, first === made.points.length ? 3 : 2)),
  );
  find('[data-sheet-more]').replaceChildren(...made.points.slice(first).map((it) => row(it, 2)));
  find('.run-sheet').classList.toggle('is-dense', first < made.points.length);
  find('[data-sheet-inset]').textContent = inset.written;
  find('[data-sheet-grid-lead]').textContent = leadOf(grid, made);
  const field = sides && !grid.fault ? fieldDrawing(sides, made.points, first < made.points.length) : undefined;
  draw('[data-sheet-field]', field?.picture, field && `1 : ${field.scale} on paper, from the upper left corner`);
  draw('[data-sheet-around]', sides && aroundDrawing(sides), 'Places past the edges, not to scale');
  showBias(grid, distance);
  if (grid.fault)
    return `An inset of ${inset.written} leaves no room between the points; write a smaller one. Until then their places are formulas.`;
  if (grid.isInsetSmaller)
    return `1 in would crowd the points of so small a field, so the outer ones lie ${inset.written} inside.`;
  return '';
}

function leadOf({ field }: SheetGrid, { travel }: SheetPoints): string {
  const from =
    'Places are counted from the upper left corner of the LED field as you face the panel. Set the sensor anew for each reading.';
  if (!field || !travel) return from;
  const saved = travel.readingOrder - travel.shortest;
  const way = `The shortest way over all points, ${fixed(travel.shortest, 0)} cm${saved >= 1 ? ` instead of ${fixed(travel.readingOrder, 0)} cm row by row` : ''}.`;
  return `${from} ${way}`;
}

function row({ number, path, across, down }: SheetPoint, repeats: number): HTMLElement {
  const others = Array.from({ length: repeats - 1 }, () => html('td', { class: 'blank' }));
  return html(
    'tr',
    {},
    html('th', { scope: 'row' }, String(number)),
    html('td', {}, across),
    html('td', {}, down),
    html('td', { class: 'blank' }, html('code', {}, path)),
    ...others,
  );
}

function draw(place: string, picture: PieceElement | undefined, caption = ''): void {
  const figure = find(place);
  figure.hidden = picture === undefined;
  figure.replaceChildren(...(picture ? [elementOf(picture), html('figcaption', { class: 'small' }, caption)] : []));
}

function showBias({ field, columns, rows, inset, fault }: SheetGrid, distance: number): void {
  const place = find('[data-sheet-bias]');
  const sides = field && { width: field.width.cm, height: field.height.cm };
  const grid = { columns, rows, inset: inset.cm };
  const bias = sides && !fault ? expectedBias(sides, grid, distance) : undefined;
  place.hidden = bias === undefined;
  if (!sides || !bias) return;
  const { answer, better, basis } = biasWords(grid, bias, halvingBias(sides, grid, distance));
  place.replaceChildren(
    html('p', {}, html('b', {}, answer), ' ', better.join(' ')),
    html('p', { class: 'small' }, `${basis} `, html('a', { href: '/methods/sampling-bias/' }, 'Sampling bias'), '.'),
  );
}

function showMeters(data: SheetData, { panel, date }: SheetSetup): void {
  const day = date ?? today();
  const chosen = new Set(metersFor(data, panel));
  find('[data-sheet-as-of]').textContent = `on ${showDate(day)}`;
  const others: string[] = [];
  for (const meter of data.meters) {
    const state = calibrationState(meter.spans, day);
    const line = find(`[data-meter="${CSS.escape(meter.key)}"]`);
    line.hidden = !chosen.has(meter.key);
    const cell = line.querySelector('[data-state]');
    if (cell) {
      cell.textContent = state.text;
      cell.classList.toggle('expired', state.isExpired);
    }
    if (line.hidden) others.push(`${meter.name} (${state.text})`);
  }
  const place = find('[data-sheet-others]');
  place.hidden = others.length === 0;
  place.textContent = `Also kept: ${others.join('; ')}.`;
}
