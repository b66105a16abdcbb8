/** The run sheet's form. */
import {
  LEAST_SIDE,
  MOST_ALONG,
  MOST_POINTS,
  MOST_SIDE,
  readDay,
  readGrid,
  readLength,
  type SheetGrid,
  type SheetPanel,
  type SheetSetup,
  USUAL_ALONG,
} from './sheet-setup.ts';

/** The one element that fits. */
export function find(selector: string): HTMLElement {
  const element = document.querySelector<HTMLElement>(selector);
  if (!element) throw new Error(`the page has no ${selector}`);
  return element;
}

export type Fields = Record<
  'panel' | 'width' | 'height' | 'columns' | 'rows' | 'inset' | 'date',
  HTMLInputElement | HTMLSelectElement
>;

export function formFields(): Fields {
  const of = (name: string) => find(`#sheet-${name}`) as HTMLInputElement | HTMLSelectElement;
  return {
    panel: of('panel'),
    width: of('width'),
    height: of('height'),
    columns: of('columns'),
    rows: of('rows'),
    inset: of('inset'),
    date: of('date'),
  };
}

export function fillForm(fields: Fields, { panel, width, height, columns, rows, inset, date }: SheetSetup): void {
  fields.panel.value = panel ?? '';
  fields.width.value = width?.written ?? '';
  fields.height.value = height?.written ?? '';
  fields.columns.value = String(columns);
  fields.rows.value = String(rows);
  fields.inset.value = inset?.written ?? '';
  fields.date.value = date ?? '';
}

/** What the form says; a field that can't be used is as if it were empty, and named in `odd`. */
export function readForm(fields: Fields): { setup: SheetSetup; odd: string } {
  const odd: string[] = [];
  const length = (name: 'width' | 'height' | 'inset', least: number, most: number, wanted: string) => {
    const text = fields[name].value.trim();
    const read = text === '' ? undefined : readLength(text, least, most);
    const isOdd = text !== '' && !read;
    fields[name].setAttribute('aria-invalid', String(isOdd));
    if (isOdd) odd.push(`“${text.slice(0, 40)}” is no ${name}: ${wanted}.`);
    return read;
  };
  const side = `a length such as 20 cm or 8 in, from ${LEAST_SIDE} to ${MOST_SIDE} cm`;
  const width = length('width', LEAST_SIDE, MOST_SIDE, side);
  const height = length('height', LEAST_SIDE, MOST_SIDE, side);
  const inset = length('inset', 0, MOST_SIDE / 2, 'a length such as 1 in or 2.5 cm');
  const points = readGrid(`${fields.columns.value}x${fields.rows.value}`);
  if (!points)
    odd.push(`Points across and down are whole numbers from 1 to ${MOST_ALONG}, ${MOST_POINTS} points in all at most.`);
  const date = readDay(fields.date.value);
  const setup: SheetSetup = {
    ...(fields.panel.value !== '' && { panel: fields.panel.value }),
    ...(width && { width }),
    ...(height && { height }),
    ...(points ?? { columns: USUAL_ALONG, rows: USUAL_ALONG }),
    ...(inset && { inset }),
    ...(date !== undefined && { date }),
  };
  return { setup, odd: odd.join(' ') };
}

/** Shows in empty fields what holds while they are empty. */
export function hint(fields: Fields, panel: SheetPanel | undefined, { inset }: Pick<SheetGrid, 'inset'>): void {
  fields.width.setAttribute('placeholder', panel?.width?.written ?? 'such as 20 cm');
  fields.height.setAttribute('placeholder', panel?.height?.written ?? 'such as 60 cm');
  fields.inset.setAttribute('placeholder', inset.written);
}
