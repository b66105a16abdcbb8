import { contours } from 'd3-contour';
import simplify from 'simplify-js';
import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { gridPointMeans } from '../../ledger/session-figures.ts';
import type { DrawnField } from '../../measure/beam/drawn-light.ts';
import { figureFinder } from '../../measure/figure.ts';
import { gridGeometry } from '../../measure/irradiance/grid-geometry.ts';
import { fixed } from '../../words/format.ts';
import { pixels } from '../shared/browser/plot.ts';

/** A closed line. */
type Ring = ReadonlyArray<readonly [x: number, y: number]>;

/** A map of the light over the LED field; lengths in px from its top left corner. */
export interface LightMap {
  name: string;
  /** Cells of one shade each, where the light was read. */
  cells: Array<{ x: number; y: number; width: number; height: number; shade: number }>;
  /** Areas of at least a shade's light, the faintest first; what another one covers whole is left out. */
  areas: Array<{ rings: Ring[]; shade: number }>;
  points: Array<{ x: number; y: number; text: string }>;
  description: string;
}

/** The grid's readings and the model's light, in the same shades. */
export interface GridMaps {
  width: number;
  height: number;
  maps: LightMap[];
  /** What the darkest shade ends at, mW/cm2. */
  highest: string;
}

/** Shades, each an equal part of the highest light. */
export const SHADES = 5;
/** Room that a map has, px: two stand side by side on a phone. */
const ROOM = { width: 168, height: 250 };
/** Bends of less than this are none to the eye, px. */
const LEAST_BEND = 0.5;

/** Both maps of a session; without the model's where there is none. Undefined where the places are not known. */
export function gridMaps(panel: PanelEntry, session: SessionEntry): GridMaps | undefined {
  const { grid } = session.used;
  const { field } = panel.data;
  if (!grid || !field) return undefined;
  const side = { width: field.width.value, height: field.height.value };
  const columns = grid.rows[0]?.length ?? 0;
  const geometry = gridGeometry(columns, grid.rows.length, side.width, side.height, grid.inset.value);
  if (!geometry) return undefined;
  const scale = Math.min(ROOM.width / side.width, ROOM.height / side.height);
  const [width, height] = [pixels(side.width * scale), pixels(side.height * scale)];
  // As the model has them: it was made of corrected readings.
  const factor = figureFinder(session.figures)('mismatch-factor-combined')?.value ?? 1;
  const read = gridPointMeans(session.used).map((it) => (it === null ? null : it * factor));
  const modelled = session.light.drawn?.field;
  const highest = Math.max(...read.map((it) => it ?? 0), ...(modelled?.cells ?? []));
  if (!(highest > 0)) return undefined;
  const shadeOf = (value: number) => Math.min(SHADES - 1, Math.floor((SHADES * value) / highest));
  const places = geometry.y.flatMap((y) => geometry.x.map((x) => ({ x: pixels(x * scale), y: pixels(y * scale) })));
  const named = (values: ReadonlyArray<number | null>) =>
    places.flatMap((it, i) => {
      const value = values[i] ?? null;
      return value === null ? [] : [{ ...it, text: shown(value) }];
    });
  const [across, down] = [edgesOf(geometry.x, side.width), edgesOf(geometry.y, side.height)];
  const cells = read.flatMap((value, i) => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    const [left = 0, right = 0] = across.slice(column, column + 2);
    const [top = 0, bottom = 0] = down.slice(row, row + 2);
    if (value === null) return [];
    const [x, y] = [pixels(left * scale), pixels(top * scale)];
    const size = { width: pixels(right * scale - x), height: pixels(bottom * scale - y) };
    return [{ x, y, ...size, shade: shadeOf(value) }];
  });
  return {
    width,
    height,
    highest: shown(highest),
    maps: [
      { name: 'Read', cells, areas: [], points: named(read), description: described('Read', read) },
      ...(modelled
        ? [
            {
              name: 'Modelled',
              cells: [],
              areas: areasOf(modelled, highest, { width, height }),
              points: named([...modelled.atPoints]),
              description: described('Modelled', [...modelled.atPoints]),
            },
          ]
        : []),
    ],
  };
}

function areasOf(
  { columns, rows, cells }: DrawnField,
  highest: number,
  { width, height }: { width: number; height: number },
): LightMap['areas'] {
  // All of the field has the faintest shade at least.
  const thresholds = Array.from({ length: SHADES - 1 }, (_, i) => ((i + 1) * highest) / SHADES);
  const drawn = contours().size([columns, rows]).thresholds(thresholds)([...cells]);
  const areas = drawn.flatMap(({ coordinates }, i) => {
    const rings = coordinates.flat().map((ring) => outline(ring, width / columns, height / rows));
    return rings.length === 0 ? [] : [{ rings, shade: i + 1 }];
  });
  return areas.filter(({ rings }, i) => JSON.stringify(rings) !== JSON.stringify(areas[i + 1]?.rings));
}

/** A ring in whole px, without the points that lie on a line between others; it is closed by whoever draws it. */
function outline(ring: readonly number[][], perColumn: number, perRow: number): Ring {
  const points = ring.slice(0, -1).map(([x = 0, y = 0]) => ({ x: x * perColumn, y: y * perRow }));
  return simplify(points, LEAST_BEND, true).map(({ x, y }) => [Math.round(x), Math.round(y)] as const);
}

/** Half-way between neighbours, and the field's own edges. */
function edgesOf(places: readonly number[], side: number): number[] {
  return [0, ...places.slice(1).map((it, i) => (it + (places[i] as number)) / 2), side];
}

function described(name: string, values: ReadonlyArray<number | null>): string {
  const known = values.filter((it) => it !== null);
  return `${name}: ${shown(Math.min(...known))} to ${shown(Math.max(...known))} mW/cm² at the points of the grid`;
}

const shown = (value: number) => fixed(value, value >= 100 ? 0 : 1);
