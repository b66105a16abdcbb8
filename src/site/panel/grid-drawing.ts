import { pointReadings } from '../../content/read/grid-points.ts';
import { curly } from '../../content/schema/curly.ts';
import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { gridPointMeans } from '../../ledger/session-figures.ts';
import { gridGeometry } from '../../measure/irradiance/grid-geometry.ts';
import { fixed } from '../../words/format.ts';

/** One point of the grid; lengths in cm, from the LED field's top left corner. */
export interface DrawnPoint {
  x: number;
  y: number;
  /** Of the highest reading, 0 to 1: what the area of its dot goes by. A point whose readings were all struck out has none. */
  share: number | undefined;
  text: string;
}

/** The readings of a grid where they were taken. */
export interface GridDrawing {
  /** Of the LED field, cm. */
  width: number;
  height: number;
  columns: number;
  /** Between neighbours, cm; the field's own side where there is one. */
  gapX: number;
  gapY: number;
  points: DrawnPoint[];
  /** How far inside the edges the outer points lie, as written. */
  inset: string;
  /** The points as rows of text, for a table: struck readings in words. */
  rows: string[][];
}

/** A session's grid; undefined where the field or the grid is not known, or the points would cross. */
export function gridDrawing(panel: PanelEntry, session: SessionEntry): GridDrawing | undefined {
  const { grid } = session.used;
  const { field } = panel.data;
  if (!grid || !field) return undefined;
  const width = field.width.value;
  const height = field.height.value;
  const columns = grid.rows[0]?.length ?? 0;
  const geometry = gridGeometry(columns, grid.rows.length, width, height, grid.inset.value);
  if (!geometry) return undefined;

  const means = gridPointMeans(session.used);
  const highest = Math.max(...means.map((it) => it ?? 0));
  return {
    width,
    height,
    columns,
    gapX: firstGap(geometry.x) ?? width,
    gapY: firstGap(geometry.y) ?? height,
    points: geometry.y.flatMap((y, i) =>
      geometry.x.map((x, j): DrawnPoint => {
        const value = means[i * columns + j] ?? null;
        return {
          x: Number(x.toFixed(2)),
          y: Number(y.toFixed(2)),
          share: value === null ? undefined : highest > 0 ? value / highest : 0,
          text: value === null ? 'struck' : readingText(value),
        };
      }),
    ),
    inset: grid.inset.written,
    rows: grid.rows.map((row) =>
      row.map((point) =>
        pointReadings(point)
          .map(({ reading, rejected }) =>
            rejected === undefined
              ? readingText(reading.value)
              : `${fixed(reading.value, 1)} struck out: ${curly(rejected)}`,
          )
          .join('; '),
      ),
    ),
  };
}

const readingText = (value: number) => fixed(value, value >= 100 ? 0 : 1);

/** From the first of evenly set places to the second; undefined where there is one. */
function firstGap([first, second]: readonly number[]): number | undefined {
  return first === undefined || second === undefined ? undefined : second - first;
}
