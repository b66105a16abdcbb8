import { csvFormatRow } from 'd3-dsv';
import type { Ledger, PanelEntry } from '../../../ledger/ledger.ts';
import { publishedPanels } from '../data-parts.ts';
import type { PanelPiece, Piece } from '../panel-piece.ts';

/** What a cell may hold; an empty cell says that there is nothing. */
export type Cell = string | number | boolean | null;

/** A column, in the words of Frictionless' Table Schema. */
export interface Field {
  name: string;
  type: 'string' | 'number' | 'integer' | 'boolean' | 'date';
  description: string;
  /** Of all numbers in the column. */
  unit?: string;
  constraints?: { required?: boolean; enum?: readonly string[]; pattern?: string };
}

/** What a table of the data package is. */
interface Described<Name extends string> {
  name: Name;
  title: string;
  description: string;
  fields: readonly Field[];
  /** Columns that no two rows have alike. */
  primaryKey: readonly string[];
  foreignKeys: ReadonlyArray<{ fields: readonly string[]; table: string; to: readonly string[] }>;
}

/** A row, in the order of `fields`. */
export type Row = readonly Cell[];

/** A table of the data package: what its columns are, and its rows; those of each panel by themselves where they are many. */
export type Table<Name extends string = string> = Described<Name> &
  ({ rows(ledger: Ledger): Iterable<Row> } | { ofPanels(ledger: Ledger): PanelRows });

/** The rows of each panel, and what they are made with besides the panel, as a text. */
export interface PanelRows {
  given: string;
  rows(panel: PanelEntry): Iterable<Row>;
}

/** Keys that tables lead to one another by. */
export const TO_PANEL = { fields: ['panel'], table: 'panels', to: ['panel'] } as const;
export const TO_SESSION = { fields: ['panel', 'session'], table: 'sessions', to: ['panel', 'session'] } as const;
export const TO_METRIC = { fields: ['metric'], table: 'metrics', to: ['metric'] } as const;

export const REQUIRED = { required: true } as const;

/** The panel's part of an address, as a column. */
export const PANEL_FIELD: Field = {
  name: 'panel',
  type: 'string',
  description: 'The panel, by the part of its address that is its own.',
  constraints: REQUIRED,
};

export const SESSION_FIELD: Field = {
  name: 'session',
  type: 'date',
  description: 'Day of the session on the bench.',
  constraints: REQUIRED,
};

/** Rows that are put together before they are written. */
const CHUNK = 200;

/** A table as CSV (RFC 4180, UTF-8, one line of names), in pieces that are written one after another. */
export function* tableCsv(table: Table, ledger: Ledger): Generator<Piece> {
  yield `${csvFormatRow(table.fields.map((it) => it.name))}\n`;
  if ('ofPanels' in table) yield* panelPieces(table.ofPanels(ledger), ledger);
  else yield* chunks(table.rows(ledger));
}

function* panelPieces({ given, rows }: PanelRows, ledger: Ledger): Generator<PanelPiece> {
  for (const panel of publishedPanels(ledger)) {
    yield { panel: panel.slug, given, toString: () => Array.from(rows(panel), line).join('') };
  }
}

function* chunks(rows: Iterable<Row>): Generator<string> {
  let lines: string[] = [];
  for (const row of rows) {
    lines.push(line(row));
    if (lines.length < CHUNK) continue;
    yield lines.join('');
    lines = [];
  }
  yield lines.join('');
}

const line = (row: Row) => `${csvFormatRow(row.map((it) => (it === null ? '' : String(it))))}\n`;
