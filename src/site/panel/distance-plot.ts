import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { acceptedReadings } from '../../content/read/grid-points.ts';
import type { SessionEntry } from '../../ledger/ledger.ts';
import { type CurvePoint, distanceCurve } from '../../measure/beam/distance-curve.ts';
import { distanceMetric, TABLE_DISTANCES } from '../../measure/beam/table-distances.ts';
import type { FigureMap } from '../../measure/figure.ts';
import { type Figure, type FigureOrGap, isFigure } from '../../measure/figure.ts';
import { fixed } from '../../words/format.ts';

/** A tick of an axis: its place, CSS pixels, and its words. */
interface Tick {
  at: number;
  text: string;
}

/** Irradiance against distance, ready to draw; lengths in CSS pixels from the top left. */
export interface DistancePlot {
  width: number;
  height: number;
  /** The part within the axes. */
  frame: { left: number; top: number; right: number; bottom: number };
  x: Tick[];
  y: Tick[];
  curves: Array<{ name: 'mean' | 'peak'; path: string; label: { x: number; y: number; text: string } }>;
  /** 95 % intervals of the modelled values at the table's distances. */
  intervals: Array<{ x: number; from: number; to: number }>;
  /** What was read: the grid's mean, and before the middle. */
  measured: Array<{ x: number; y: number; kind: 'mean' | 'centre' }>;
  description: string;
}

const WIDTH = 640;
const HEIGHT = 360;
const FRAME = { left: 52, top: 14, right: WIDTH - 74, bottom: HEIGHT - 44 };
/** Steps of the curve, cm. */
const STEP = 1;

/** Draws a session's irradiance against distance; undefined where the model has found nothing. */
export function distancePlot(session: SessionEntry, figures: FigureMap): DistancePlot | undefined {
  const { model } = session.light;
  if (!model) return undefined;
  const first = TABLE_DISTANCES[0];
  const last = TABLE_DISTANCES.at(-1) as number;
  const sweep = (session.readings.distances ?? []).flatMap(({ distance, centre }) => {
    const accepted = centre === undefined ? [] : acceptedReadings(centre);
    return accepted.length > 0
      ? [{ distance: distance.value, value: accepted.reduce((sum, it) => sum + it, 0) / accepted.length }]
      : [];
  });
  const farthest = Math.max(last, session.conditions.distance, ...sweep.map((it) => it.distance));
  const nearest = Math.min(first, ...sweep.map((it) => it.distance));
  const steps = Math.ceil((farthest - nearest) / STEP);
  const curve = distanceCurve(
    model,
    Array.from({ length: steps + 1 }, (_, i) => nearest + ((farthest - nearest) * i) / steps),
  );
  const intervals = TABLE_DISTANCES.flatMap((distance) =>
    (['mean-irradiance', 'peak-irradiance'] as const).flatMap((quantity) => {
      const it = figures.get(distanceMetric(quantity, distance));
      return isFigure(it) && it.interval95 ? [{ distance, interval: it.interval95 }] : [];
    }),
  );
  const mean = figures.get('mean-irradiance');
  const highest = Math.max(
    ...curve.flatMap((it) => (it.peak === undefined ? [] : [it.peak])),
    ...sweep.map((it) => it.value),
    ...intervals.map((it) => it.interval[1]),
  );
  const x = scaleLinear([0, farthest], [FRAME.left, FRAME.right]).nice(6);
  const y = scaleLinear([0, highest], [FRAME.bottom, FRAME.top]).nice(5);
  const place = (value: number) => Number(value.toFixed(1));
  const drawn = (name: 'mean' | 'peak'): DistancePlot['curves'][number] => {
    const path = line<CurvePoint>(
      (it) => place(x(it.distance)),
      (it) => place(y(it[name] ?? 0)),
    )(curve.filter((it) => it[name] !== undefined));
    const end = curve.at(-1) as CurvePoint;
    return {
      name,
      path: path ?? '',
      label: { x: place(x(end.distance)) + 6, y: place(y(end[name] ?? 0)), text: name },
    };
  };
  const curves = [drawn('peak'), drawn('mean')];
  keepApart(curves.map((it) => it.label));
  return {
    width: WIDTH,
    height: HEIGHT,
    frame: FRAME,
    x: x.ticks(7).map((it) => ({ at: place(x(it)), text: fixed(it, 0) })),
    y: y.ticks(5).map((it) => ({ at: place(y(it)), text: fixed(it, Number.isInteger(it) ? 0 : 1) })),
    curves,
    intervals: intervals.map(({ distance, interval: [low, high] }) => ({
      x: place(x(distance)),
      from: place(y(low)),
      to: place(y(high)),
    })),
    measured: [
      ...(isFigure(mean)
        ? [{ x: place(x(session.conditions.distance)), y: place(y(mean.value)), kind: 'mean' as const }]
        : []),
      ...sweep.map((it) => ({ x: place(x(it.distance)), y: place(y(it.value)), kind: 'centre' as const })),
    ],
    description: describe(curve, mean, sweep.length),
  };
}

/** Room that a label of a curve needs, px. */
const LABEL_HEIGHT = 14;

/** Moves two labels apart where they would cross. */
function keepApart([upper, lower]: Array<{ y: number }>): void {
  if (!upper || !lower || lower.y - upper.y >= LABEL_HEIGHT) return;
  const middle = (upper.y + lower.y) / 2;
  upper.y = middle - LABEL_HEIGHT / 2;
  lower.y = middle + LABEL_HEIGHT / 2;
}

function describe(curve: readonly CurvePoint[], mean: FigureOrGap | undefined, sweep: number): string {
  const far = curve.at(-1) as CurvePoint;
  const near = curve[0] as CurvePoint;
  const span = (name: 'mean' | 'peak') => {
    const from = curve.find((it) => it[name] !== undefined) ?? far;
    const words = `${round(from[name] ?? 0)} to ${round(far[name] ?? 0)} mW/cm²`;
    return from === near ? words : `${words} from ${round(from.distance)} cm on`;
  };
  const read = [
    isFigure(mean as Figure) && 'the mean of the grid',
    sweep > 0 && `${sweep} reading${sweep === 1 ? '' : 's'} before the middle`,
  ].filter(Boolean);
  return `Irradiance against distance as modelled, from ${round(near.distance)} to ${round(far.distance)} cm: mean ${span('mean')}, peak ${span('peak')}; upright lines are 95 % intervals${read.length > 0 ? `; measured: ${read.join(' and ')}` : ''}`;
}

function round(value: number): string {
  return fixed(value, value >= 10 ? 0 : 1);
}
