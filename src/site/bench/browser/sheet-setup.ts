/** What a run sheet is made for, in the address: `/bench/sheet/?panel=slug` or `?width=20 cm&height=60 cm`, `&grid=3x5&inset=1 in&date=2026-11-26`. No DOM. */
import { parseQuantity } from '../../../content/schema/quantity.ts';
import { gridGeometry } from '../../../measure/irradiance/grid-geometry.ts';
import { CM_PER_INCH } from '../../../measure/unit-factors.ts';
import { withPoint } from './decimal-point.ts';

/** A length as it was written, and in cm. */
export interface Length {
  cm: number;
  written: string;
}

/** A panel of the guide, as far as its sheet goes. */
export interface SheetPanel {
  name: string;
  width?: Length;
  height?: Length;
}

export interface SheetSetup {
  /** Name of a panel's folder. */
  panel?: string;
  /** Of the LED field; those of the panel where left out. */
  width?: Length;
  height?: Length;
  /** Points across and down. */
  columns: number;
  rows: number;
  /** Left out: 1 in, or less where that does not fit. */
  inset?: Length;
  /** Day of the session, YYYY-MM-DD; left out: today. */
  date?: string;
}

/** LED fields that a sheet can be made for, cm. */
export const LEAST_SIDE = 2;
export const MOST_SIDE = 400;
/** Points along one side, and in all: more would not go on two sides of paper. */
export const MOST_ALONG = 12;
export const MOST_POINTS = 40;
export const USUAL_ALONG = 3;
export const USUAL_INSET: Length = { cm: CM_PER_INCH, written: '1 in' };
/** Points nearer to each other than a sensor is wide tell nothing of the field: our own choice, cm. */
const LEAST_APART = 1;
const LONGEST = 500;
const LONGEST_NAME = 40;

/** A length within limits: a bare number is in cm, its decimals after a point or a comma. Undefined for anything else. */
export function readLength(text: string, least: number, most: number): Length | undefined {
  const parsed = parsedLength(text, least, most);
  return 'reading' in parsed ? { cm: parsed.reading.value, written: parsed.reading.written } : undefined;
}

/** What to write where a text is no such length; undefined where nobody can tell. */
export function lengthHint(text: string, least: number, most: number): string | undefined {
  const parsed = parsedLength(text, least, most);
  return 'fault' in parsed ? parsed.fault.hint : undefined;
}

const parsedLength = (text: string, min: number, max: number) =>
  parseQuantity(withPoint(text.trim()), 'length', { min, max });

/** `3x5`, `3 × 5`: three across, five down. */
export function readGrid(text: string): { columns: number; rows: number } | undefined {
  const match = /^\s*(\d{1,2})\s*[x×*]\s*(\d{1,2})\s*$/i.exec(text);
  const [columns, rows] = [Number(match?.[1]), Number(match?.[2])];
  const isOne = (it: number) => it >= 1 && it <= MOST_ALONG;
  return match && isOne(columns) && isOne(rows) && columns * rows <= MOST_POINTS ? { columns, rows } : undefined;
}

/** A day of the calendar, as YYYY-MM-DD. */
export function readDay(text: string): string | undefined {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return undefined;
  const day = new Date(`${text}T00:00:00Z`);
  return Number.isNaN(day.getTime()) || day.toISOString().slice(0, 10) !== text ? undefined : text;
}

export const usualSetup = (): SheetSetup => ({ columns: USUAL_ALONG, rows: USUAL_ALONG });

/** The panel that a name of today or of before means. */
type SlugOf = (name: string) => string | undefined;

/** Reads the query of an address. Never throws; what it can't use is named in `said`. */
export function readSheet(query: string, slugOf: SlugOf): { setup: SheetSetup; said: string } {
  const setup = usualSetup();
  if (query.length > LONGEST) return { setup, said: 'The address is too long to be a sheet’s; it was left aside.' };
  const odd: string[] = [];
  for (const [name, value] of new URLSearchParams(query)) {
    if (value !== '' && !set(setup, name, value, slugOf)) odd.push(`“${`${name}=${value}`.slice(0, LONGEST_NAME)}”`);
  }
  return { setup, said: odd.length > 0 ? `Left aside from the address: ${odd.slice(0, 3).join(', ')}.` : '' };
}

function set(setup: SheetSetup, name: string, value: string, slugOf: SlugOf): boolean {
  switch (name) {
    case 'panel':
      return assign(setup, keyed('panel', slugOf(value)));
    case 'width':
    case 'height':
      return assign(setup, keyed(name, readLength(value, LEAST_SIDE, MOST_SIDE)));
    case 'grid':
      return assign(setup, readGrid(value));
    case 'inset':
      return assign(setup, keyed('inset', readLength(value, 0, MOST_SIDE / 2)));
    case 'date':
      return assign(setup, keyed('date', readDay(value)));
    default:
      return false;
  }
}

const keyed = <K extends string, V>(key: K, value: V | undefined) =>
  value === undefined ? undefined : ({ [key]: value } as Record<K, V>);

function assign(setup: SheetSetup, part: Partial<SheetSetup> | undefined): boolean {
  if (part) Object.assign(setup, part);
  return part !== undefined;
}

/** Writes an address; what is as usual is left out. */
export function sheetAddress({ panel, width, height, columns, rows, inset, date }: SheetSetup): string {
  const query = new URLSearchParams();
  if (panel) query.set('panel', panel);
  if (width) query.set('width', width.written);
  if (height) query.set('height', height.written);
  if (columns !== USUAL_ALONG || rows !== USUAL_ALONG) query.set('grid', `${columns}x${rows}`);
  if (inset) query.set('inset', inset.written);
  if (date) query.set('date', date);
  const text = query.toString();
  return `/bench/sheet/${text === '' ? '' : `?${text}`}`;
}

/** The LED field and the grid of a sheet. */
export interface SheetGrid {
  /** Undefined where a side is not known. */
  field: { width: Length; height: Length } | undefined;
  columns: number;
  rows: number;
  inset: Length;
  /** That 1 in would bring points together, so that another inset was taken. */
  isInsetSmaller: boolean;
  /** The inset that was asked for leaves no room between the points. */
  fault: boolean;
}

/** The field and grid that a sheet is for; where no inset was asked for, one that fits. */
export function sheetGrid(setup: SheetSetup, panel: SheetPanel | undefined): SheetGrid {
  const width = setup.width ?? panel?.width;
  const height = setup.height ?? panel?.height;
  const { columns, rows } = setup;
  const field = width && height && { width, height };
  const fits = (inset: Length) => !field || doesFit(columns, rows, field.width.cm, field.height.cm, inset.cm);
  if (setup.inset)
    return { field, columns, rows, inset: setup.inset, isInsetSmaller: false, fault: !fits(setup.inset) };
  if (!field || fits(USUAL_INSET)) {
    return { field, columns, rows, inset: USUAL_INSET, isInsetSmaller: false, fault: false };
  }
  const cm = Math.floor((10 * Math.min(field.width.cm, field.height.cm)) / (2 * Math.max(columns, rows))) / 10;
  const smaller = { cm, written: `${cm} cm` };
  return {
    field,
    columns,
    rows,
    inset: smaller,
    isInsetSmaller: true,
    fault: !gridGeometryOf(field, columns, rows, cm),
  };
}

const gridGeometryOf = (field: { width: Length; height: Length }, columns: number, rows: number, inset: number) =>
  gridGeometry(columns, rows, field.width.cm, field.height.cm, inset);

/** Whether neighbours of a grid lie apart by a sensor's width. */
function doesFit(columns: number, rows: number, width: number, height: number, inset: number): boolean {
  const geometry = gridGeometry(columns, rows, width, height, inset);
  const isApart = ([first, second]: readonly number[]) =>
    first === undefined || second === undefined || second - first >= LEAST_APART;
  return geometry !== undefined && isApart(geometry.x) && isApart(geometry.y);
}
