import { pointReadings } from '../../content/read/grid-points.ts';
import type { SessionEntry } from '../../ledger/ledger.ts';
import { gridPointMeans } from '../../ledger/session-figures.ts';
import { isFigure } from '../../measure/figure.ts';
import { gridControl } from '../../measure/irradiance/grid-control.ts';
import { fixed } from '../../words/format.ts';
import { axisFromNought, pixels, type Tick } from '../shared/browser/plot.ts';

/** The points of a grid one beside another: what was read, and what their rows and columns make likely. */
export interface PointControl {
  width: number;
  height: number;
  frame: { left: number; top: number; right: number; bottom: number };
  y: Tick[];
  points: Array<{
    x: number;
    name: string;
    readings: Array<{ y: number; isStruck: boolean }>;
    isOdd: boolean;
  }>;
  /** Boxes from limit to limit, and what is likely in each; empty where there are too few points for them. */
  boxes: string;
  likely: string;
  /** The mean of the grid. */
  mean?: number;
  /** The same in a table: point, readings, likely, limits. */
  rows: string[][];
  description: string;
}

const SIZE = { height: 230, top: 12, bottom: 30, left: 40, right: 8 };
/** Room of a point, px: narrow enough for nine on a phone. */
const STEP = 34;
/** Half of a box's width, px. */
const HALF = 8;
const Y_TICKS = 5;

/** The control of a session's grid; undefined where none was read. */
export function pointControl({ used, figures }: Pick<SessionEntry, 'used' | 'figures'>): PointControl | undefined {
  const { grid } = used;
  const columns = grid?.rows[0]?.length ?? 0;
  if (!grid || columns === 0) return undefined;
  const control = new Map(gridControl(gridPointMeans(used), columns).map((it) => [it.index, it]));
  const all = grid.rows.flat().map((point) => pointReadings(point));
  const values = all.flatMap((point) => point.map(({ reading }) => reading.value));
  const highest = Math.max(...values, ...[...control.values()].map((it) => it.limits[1]));
  const width = SIZE.left + STEP * all.length + SIZE.right;
  const frame = { left: SIZE.left, top: SIZE.top, right: width - SIZE.right, bottom: SIZE.height - SIZE.bottom };
  const y = axisFromNought(highest, [frame.bottom, frame.top], Y_TICKS);
  const mean = figures.get('mean-irradiance');
  const points = all.map((readings, index) => {
    const it = control.get(index);
    return {
      x: pixels(frame.left + STEP * (index + 0.5)),
      name: nameOf(index, columns),
      readings: readings.map(({ reading, rejected }) => ({
        y: y.place(reading.value),
        isStruck: rejected !== undefined,
      })),
      isOdd: it?.isOdd ?? false,
    };
  });
  const boxes = points.flatMap(({ x }, index) => {
    const it = control.get(index);
    if (!it) return [];
    const [bottom, top] = it.limits.map((limit) => y.place(limit)) as [number, number];
    const across = `h${2 * HALF}`;
    return [
      {
        box: `M${pixels(x - HALF)},${top}${across}V${bottom}h${-2 * HALF}Z`,
        likely: `M${pixels(x - HALF)},${y.place(it.likely)}${across}`,
      },
    ];
  });
  const odd = points.filter((it) => it.isOdd);
  return {
    width,
    height: SIZE.height,
    frame,
    y: y.ticks,
    points,
    boxes: boxes.map((it) => it.box).join(''),
    likely: boxes.map((it) => it.likely).join(''),
    ...(isFigure(mean) && { mean: y.place(mean.value) }),
    rows: all.map((readings, index) => {
      const it = control.get(index);
      const texts = readings.map(
        ({ reading, rejected }) => `${shown(reading.value)}${rejected === undefined ? '' : ' (struck)'}`,
      );
      return [
        nameOf(index, columns),
        texts.join('; '),
        it ? shown(it.likely) : '',
        it ? `${shown(it.limits[0])} to ${shown(it.limits[1])}` : '',
      ];
    }),
    description: `Readings of ${all.length} points of the grid with the limits that their rows and columns set: ${odd.length === 0 ? 'none lies beyond' : `beyond them ${odd.map((it) => it.name).join(', ')}`}`,
  };
}

/** Row and column: `2.3`. */
const nameOf = (index: number, columns: number) => `${Math.floor(index / columns) + 1}.${(index % columns) + 1}`;

const shown = (value: number) => fixed(value, value >= 100 ? 0 : 1);
