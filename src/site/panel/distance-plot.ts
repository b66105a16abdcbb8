import simplify from 'simplify-js';
import { acceptedReadings } from '../../content/read/grid-points.ts';
import type { SessionEntry } from '../../ledger/ledger.ts';
import { at } from '../../measure/at.ts';
import type { DrawnCurve } from '../../measure/beam/drawn-light.ts';
import { distanceMetric, TABLE_DISTANCES } from '../../measure/beam/table-distances.ts';
import { type FigureMap, type FigureOrGap, isFigure } from '../../measure/figure.ts';
import { fixed } from '../../words/format.ts';
import { pathThrough } from '../shared/browser/path-data.ts';
import { keepApart, type Plot, pixels, plotAxes } from '../shared/browser/plot.ts';

/** Irradiance against distance, ready to draw; lengths in CSS pixels from the top left. */
export interface DistancePlot extends Plot {
  curves: Array<{ name: 'mean' | 'peak'; path: string; label: { x: number; y: number; text: string } }>;
  /** 95 % intervals of the modelled values at the table's distances. */
  intervals: Array<{ name: 'mean' | 'peak'; x: number; from: number; to: number }>;
  /** What was read: the grid's mean, and before the middle. */
  measured: Array<{ x: number; y: number; kind: 'mean' | 'centre' }>;
  /** From the grid's mean to the curve of the true mean at its distance: what the grid's points miss. */
  bias?: { x: number; from: number; to: number };
}

/** So that a phone shows it all but in full size, and its letters stay legible. */
const SIZE = { width: 430, height: 320, right: 46 };
/** Room that a label of a curve needs, px. */
const LABEL_HEIGHT = 16;
/** Bends of less than this are none to the eye, px. */
const LEAST_BEND = 0.2;
/** Intervals of the two curves stand this far to either side of their distance, or one would hide the other, px. */
const ASIDE = 2.5;

/** Draws a session's irradiance against distance; undefined where the model has found nothing. */
export function distancePlot(session: SessionEntry, figures: FigureMap): DistancePlot | undefined {
  const { drawn: light, own } = session.light;
  if (!light) return undefined;
  const { curve } = light;
  const sweep = (session.used.distances ?? []).flatMap(({ distance, centre }) => {
    const accepted = centre === undefined ? [] : acceptedReadings(centre);
    return accepted.length > 0
      ? [{ distance: distance.value, value: accepted.reduce((sum, it) => sum + it, 0) / accepted.length }]
      : [];
  });
  const intervals = TABLE_DISTANCES.flatMap((distance) =>
    (['mean', 'peak'] as const).flatMap((name) => {
      const it = figures.get(distanceMetric(`${name}-irradiance`, distance));
      return isFigure(it) && it.interval95 ? [{ name, distance, interval: it.interval95 }] : [];
    }),
  );
  const mean = figures.get('mean-irradiance');
  const highest = Math.max(
    ...curve.peak.filter(isKnown),
    ...sweep.map((it) => it.value),
    ...intervals.map((it) => it.interval[1]),
  );
  const { area, x, y } = plotAxes(SIZE, curve.distances.at(-1) ?? 0, highest);
  const { frame } = area;
  const drawn = (name: 'mean' | 'peak'): DistancePlot['curves'][number] => {
    const places = [...curve[name]].flatMap((value, i) =>
      isKnown(value) ? [[x.place(curve.distances[i] ?? 0), y.place(value)] as const] : [],
    );
    const [endX, endY] = places.at(-1) ?? [frame.left, frame.bottom];
    return { name, path: pathThrough(withoutNeedless(places)), label: { x: endX + 6, y: endY, text: name } };
  };
  const readAt = session.conditions.distance;
  const curves = [drawn('peak'), drawn('mean')];
  keepApart(
    curves.map((it) => it.label),
    frame.bottom,
    LABEL_HEIGHT,
  );
  return {
    ...area,
    curves,
    intervals: intervals.map(({ name, distance, interval: [low, high] }) => ({
      name,
      x: pixels(x.place(distance) + (name === 'mean' ? -ASIDE : ASIDE)),
      from: y.place(low),
      to: y.place(high),
    })),
    measured: [
      ...(isFigure(mean) ? [{ x: x.place(readAt), y: y.place(mean.value), kind: 'mean' as const }] : []),
      ...sweep.map((it) => ({ x: x.place(it.distance), y: y.place(it.value), kind: 'centre' as const })),
    ],
    ...(isFigure(mean) &&
      own && { bias: { x: x.place(readAt), from: y.place(mean.value), to: y.place(own.mean.value) } }),
    description: describe(curve, mean, sweep.length),
  };
}

/** A curve without the points that lie on a line between others. */
function withoutNeedless(places: ReadonlyArray<readonly [x: number, y: number]>) {
  const points = places.map(([x, y]) => ({ x, y }));
  return simplify(points, LEAST_BEND, true).map(({ x, y }) => [x, y] as const);
}

const isKnown = (it: number) => !Number.isNaN(it);

function describe(curve: DrawnCurve, mean: FigureOrGap | undefined, sweep: number): string {
  const { distances } = curve;
  const far = distances.length - 1;
  const span = (name: 'mean' | 'peak') => {
    const values = curve[name];
    const known = values.findIndex(isKnown);
    const from = known < 0 ? far : known;
    const words = `${round(values[from] || 0)} to ${round(values[far] || 0)} mW/cm²`;
    return from === 0 ? words : `${words} from ${round(at(distances, from))} cm on`;
  };
  const read = [
    isFigure(mean) && 'the mean of the grid',
    sweep > 0 && `${sweep} reading${sweep === 1 ? '' : 's'} before the middle`,
  ].filter(Boolean);
  return `Irradiance against distance as modelled, from ${round(at(distances, 0))} to ${round(at(distances, far))} cm: mean ${span('mean')}, peak ${span('peak')}; upright lines are 95 % intervals${read.length > 0 ? `; measured: ${read.join(' and ')}` : ''}`;
}

function round(value: number): string {
  return fixed(value, value >= 10 ? 0 : 1);
}
