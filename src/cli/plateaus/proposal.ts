import type { Content } from '../../content/read/content.ts';
import { filesOf } from '../../content/read/files/file-kind.ts';
import { acceptedReadings } from '../../content/read/grid-points.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import type { Session } from '../../content/schema/session.ts';
import { gridGeometry } from '../../measure/irradiance/grid-geometry.ts';
import { pointRoute } from '../../measure/irradiance/point-route.ts';
import type { Hover } from '../../measure/log/hovers.ts';
import { type PlateauSearch, plateaus } from '../../measure/log/plateaus.ts';

/** In which order the sensor passed the points. */
export const ORDERS = {
  route: 'as the run sheet numbers them: to and fro, the shortest way',
  rows: 'row by row, each from the left',
  columns: 'column by column, each from the top',
} as const;
export type Order = keyof typeof ORDERS;

/** A point of the grid, as it was found in a log. */
export interface FoundPoint extends Hover {
  row: number;
  column: number;
  /** Mean of what was typed for it; undefined where nothing was. */
  typed: number | undefined;
}

export interface Proposal {
  slug: string;
  date: string;
  index: number;
  file: string;
  columns: number;
  rows: number;
  search: PlateauSearch;
  /** In the order of the sensor's way; undefined where they can't be told. */
  points: readonly FoundPoint[] | undefined;
  /** The session has a grid that was typed. */
  isTyped: boolean;
}

const MOST = 40;

/** `3x5`: across, then down. */
export function gridSize(text: string): { columns: number; rows: number } {
  const [, columns, rows] = /^(\d{1,2})x(\d{1,2})$/i.exec(text.trim()) ?? [];
  const size = { columns: Number(columns), rows: Number(rows) };
  if (!(size.columns >= 1 && size.rows >= 1 && size.columns * size.rows <= MOST)) {
    throw new UsageError(`--grid ${text}: points across and down, as in --grid 3x5, ${MOST} in all at most.`);
  }
  return size;
}

/** The points of a session's grid, as its log has them. */
export function proposed(
  content: Content,
  {
    slug,
    date,
    order,
    size,
  }: { slug: string; date: string | undefined; order: Order; size: ReturnType<typeof gridSize> | undefined },
): Proposal {
  const panel = content.panels.get(slug)?.data;
  const runs = filesOf(content.benchFiles.get(slug)?.read ?? [], 'sweep').filter((it) => it.entry.grid === true);
  const wanted = runs.filter((it) => date === undefined || it.date === date);
  const file = wanted.toSorted((a, b) => b.date.localeCompare(a.date))[0];
  if (!panel || !file) {
    throw new UsageError(
      `${slug} has no grid that was logged in one go${date === undefined ? '' : ` on ${date}`}: name the log in the session, under sweeps, with grid: true.`,
    );
  }
  const index = panel.sessions.findIndex((it) => it.date === file.date);
  const session = panel.sessions[index] as Session;
  const typed = session.grid?.rows;
  const { columns, rows } = typed
    ? { columns: typed[0]?.length ?? 0, rows: typed.length }
    : (size ?? { columns: 3, rows: 3 });
  const search = plateaus(file.data().series, columns * rows);
  const way = wayOf(order, columns, rows, panel.field, session);
  return {
    ...{ slug, date: file.date, index, file: file.name, columns, rows, search, isTyped: typed !== undefined },
    points: search.points?.map((hover, i) => {
      const { row, column } = way[i] as { row: number; column: number };
      return { ...hover, row, column, typed: typedAt(session, row, column) };
    }),
  };
}

function typedAt({ grid }: Session, row: number, column: number): number | undefined {
  const point = grid?.rows[row]?.[column];
  const accepted = point === undefined ? [] : acceptedReadings(point);
  return accepted.length > 0 ? accepted.reduce((sum, it) => sum + it, 0) / accepted.length : undefined;
}

function wayOf(
  order: Order,
  columns: number,
  rows: number,
  field: { width: { value: number }; height: { value: number } } | undefined,
  { grid }: Session,
): Array<{ row: number; column: number }> {
  const all = (across: number) =>
    Array.from({ length: columns * rows }, (_, i) => ({ row: Math.floor(i / across), column: i % across }));
  if (order === 'rows') return all(columns);
  if (order === 'columns') return all(rows).map((it) => ({ row: it.column, column: it.row }));
  const inset = grid?.inset.value ?? INSET;
  const places = field && gridGeometry(columns, rows, field.width.value, field.height.value, inset);
  // A field whose size is not known is gone over by rows.
  return pointRoute(places ?? { x: evenly(columns), y: evenly(rows) });
}

/** The habit, cm: 1 in. */
const INSET = 2.54;

const evenly = (count: number) => Array.from({ length: count }, (_, i) => i);

/** The rows of a grid for the panel's file, rounded to what a meter shows. */
export function gridRows({ columns, rows, points }: Proposal): number[][] {
  return Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column) => {
      const found = points?.find((it) => it.row === row && it.column === column);
      return Number((found?.mean ?? Number.NaN).toPrecision(4));
    }),
  );
}
