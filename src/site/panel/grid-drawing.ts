import { pointReadings } from '../../content/read/grid-points.ts';
import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { gridPointMeans } from '../../ledger/session-figures.ts';
import { gridGeometry } from '../../measure/irradiance/grid-geometry.ts';
import { fixed } from '../../words/format.ts';

/** One point of the grid on the drawing; lengths in cm, as the drawing's units. */
export interface DrawnPoint {
  x: number;
  y: number;
  /** Radius: its area is in proportion to the irradiance. */
  radius: number;
  text: string;
  /** Every reading of the point was struck out. */
  isRejected: boolean;
}

/** The LED field with its grid, to scale. */
export interface GridDrawing {
  width: number;
  height: number;
  housing?: { x: number; y: number; width: number; height: number };
  /** Part of the drawing that is seen, cm: x, y, width, height. */
  viewBox: string;
  /** Size on the screen, CSS pixels, so that the drawing never grows past legible or shrinks past it. */
  pixelWidth: number;
  pixelHeight: number;
  points: DrawnPoint[];
  /** Height of the type, cm, so that it stays legible whatever the field's size. */
  typeSize: number;
  description: string;
  /** The points as rows of text, for a table: struck readings in words. */
  rows: string[][];
}

/** Longer side of a drawing on the screen, CSS pixels. */
const LARGEST_PX = 480;

/** Draws a session's grid; undefined where the field or the grid is not known, or the points would cross. */
export function gridDrawing(panel: PanelEntry, session: SessionEntry): GridDrawing | undefined {
  const { grid } = session.readings;
  const { field, housing } = panel.data;
  if (!grid || !field) return undefined;
  const width = field.width.value;
  const height = field.height.value;
  const columns = grid.rows[0]?.length ?? 0;
  const geometry = gridGeometry(columns, grid.rows.length, width, height, grid.inset.value);
  if (!geometry) return undefined;

  const means = gridPointMeans(session.readings);
  const highest = Math.max(...means.map((it) => it ?? 0));
  const gapX = firstGap(geometry.x) ?? width;
  const gapY = firstGap(geometry.y) ?? height;
  const largest = 0.36 * Math.min(gapX, gapY, width, height);
  const points = geometry.y.flatMap((y, i) =>
    geometry.x.map((x, j): DrawnPoint => {
      const value = means[i * columns + j] ?? null;
      return {
        x: Number(x.toFixed(2)),
        y: Number(y.toFixed(2)),
        radius: Number((value === null ? largest / 4 : largest * Math.sqrt(value / highest)).toFixed(2)),
        text: value === null ? 'struck' : fixed(value, value >= 100 ? 0 : 1),
        isRejected: value === null,
      };
    }),
  );
  const margin = 0.04 * Math.max(width, height);
  const outer = housing
    ? {
        x: (width - housing.width.value) / 2,
        y: (height - housing.height.value) / 2,
        width: housing.width.value,
        height: housing.height.value,
      }
    : undefined;
  const left = Math.min(0, outer?.x ?? 0) - margin;
  const top = Math.min(0, outer?.y ?? 0) - margin;
  const whole = { width: width - 2 * left, height: height - 2 * top };
  const scale = Math.min(LARGEST_PX / whole.width, LARGEST_PX / whole.height);
  return {
    width,
    height,
    pixelWidth: Math.round(scale * whole.width),
    pixelHeight: Math.round(scale * whole.height),
    ...(outer && { housing: outer }),
    viewBox: [left, top, whole.width, whole.height].map((it) => Number(it.toFixed(2))).join(' '),
    points,
    typeSize: Number(Math.min(0.26 * Math.min(gapX, gapY), 0.1 * width).toFixed(2)),
    description: `LED field ${width} by ${height} cm${outer ? `, housing ${outer.width} by ${outer.height} cm` : ''}, with ${grid.rows.length} by ${columns} readings in mW/cm², outer points ${grid.inset.written} inside the edges; the area of a dot is in proportion to its reading`,
    rows: grid.rows.map((row) =>
      row.map((point) =>
        pointReadings(point)
          .map(({ reading, rejected }) =>
            rejected === undefined
              ? fixed(reading.value, reading.value >= 100 ? 0 : 1)
              : `${fixed(reading.value, 1)} struck out: ${rejected}`,
          )
          .join('; '),
      ),
    ),
  };
}

/** From the first of evenly set places to the second; undefined where there is one. */
function firstGap([first, second]: readonly number[]): number | undefined {
  return first === undefined || second === undefined ? undefined : second - first;
}
