import { acceptedReadings } from '../../content/read/grid-points.ts';
import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { distanceMetric, TABLE_DISTANCES } from '../../measure/beam/table-distances.ts';
import { type Figure, type FigureOrGap, isFigure } from '../../measure/figure.ts';
import { timeForRadiantExposure } from '../../measure/irradiance/radiant-exposure.ts';
import type { MetricId } from '../../measure/metrics.ts';
import { isCode } from '../../measure/statement.ts';
import { rangeText } from '../../words/format.ts';
import { say } from '../../words/say.ts';
import { type ShownFigure, shownFigure } from '../shared/shown-figure.ts';
import { type DistancePlot, distancePlot } from './distance-plot.ts';
import { unitless } from './unitless.ts';

/** A common figure and the one that is corrected for beam and size. */
export interface CorrectedPair {
  name: string;
  common: ShownFigure;
  corrected: ShownFigure;
}

/** One distance of the table. */
export interface DistanceRow {
  /** cm */
  distance: number;
  mean: ShownFigure;
  peak: ShownFigure;
  evenness: ShownFigure;
  /** Time for each 1 J/cm² at the mean, s, with its 95 % interval: what the script multiplies. */
  time?: { value: number; low: number; high: number; text: string; calculation?: string };
  /** What was read here, or within a few millimetres: it has no line of its own elsewhere. */
  read?: Omit<DistanceRow, 'read'>;
}

/** How far the mean of the grid's points lies from that of the field. */
export interface SamplingBias {
  figure: ShownFigure;
  /** `above the true mean of the field` */
  words: string;
}

/** What the model makes of a panel's light, ready to print. */
export interface LightView {
  /** Which readings gave the beam, in a sentence; or why there is none. */
  source: string;
  corrections: CorrectedPair[];
  capture: ShownFigure;
  /** What the frame takes of the light, %, with its interval; to be drawn. */
  captured?: { value: number; low: number; high: number };
  halfAngle: ShownFigure;
  bias: SamplingBias;
  /** What each minute brings at the distance of the reading. */
  perMinute: ShownFigure;
  /** What was assumed, for all of it. */
  notes: string[];
  /** Whether the table has modelled distances, or the reading's alone. */
  isModelled: boolean;
  table: DistanceRow[];
  plot?: DistancePlot;
}

/** The modelled light of a panel's current session; undefined where there is none. */
export function lightView(panel: PanelEntry, currency: string): LightView | undefined {
  const { current } = panel;
  if (!current) return undefined;
  const figure = (metric: MetricId) => shownFigure(panel, panel.figures.get(metric), metric, currency);
  const pair = (name: string, common: MetricId, corrected: MetricId): CorrectedPair => ({
    name,
    common: figure(common),
    corrected: figure(corrected),
  });
  const isModelled = current.light.model !== undefined;
  const captured = panel.figures.get('capture');
  return {
    source: sourceSentence(current),
    corrections: [
      pair('Light', 'optical-power', 'emitted-power'),
      pair('Price of a watt', 'price-per-watt', 'price-per-emitted-watt'),
      pair('Efficiency', 'efficiency-combined', 'efficiency-emitted'),
    ].filter((it) => it.common.shown || it.corrected.shown),
    // The same notes stand with each of them.
    capture: withoutNotes(figure('capture')),
    ...(isFigure(captured) &&
      captured.interval95 && {
        captured: { value: captured.value, low: captured.interval95[0], high: captured.interval95[1] },
      }),
    halfAngle: withoutNotes(figure('beam-half-angle')),
    bias: biasOf(panel, currency),
    perMinute: figure('radiant-exposure-minute'),
    notes: assumed(panel.figures.get('beam-half-angle')),
    isModelled,
    table: distanceTable(panel, current, figure),
    ...(isModelled && { plot: distancePlot(current, panel.figures) }),
  };
}

/** What was assumed; what the light past the frame rests on is in the sentence of the source. */
function assumed(halfAngle: FigureOrGap | undefined): string[] {
  return isFigure(halfAngle) ? halfAngle.notes.filter((it) => !isCode(it, 'beam-past-frame')).map(say) : [];
}

type FigureOf = (metric: MetricId) => ShownFigure;

const withoutNotes = (it: ShownFigure): ShownFigure => ({ ...it, notes: [] });

/** "17.5 ± 1.6 % below": the sign is in the words, unless the interval reaches over nought. */
function biasOf(panel: PanelEntry, currency: string): SamplingBias {
  const metric = 'sampling-bias';
  const it = panel.figures.get(metric);
  const shown = (figure: FigureOrGap | undefined) => withoutNotes(shownFigure(panel, figure, metric, currency));
  if (!isFigure(it) || !it.interval95) return { figure: shown(it), words: OFF };
  const [low, high] = it.interval95;
  if (high < 0) {
    return { figure: shown({ ...it, value: -it.value, interval95: [-high, -low] }), words: `below ${TRUE_MEAN}` };
  }
  return { figure: shown(it), words: low > 0 ? `above ${TRUE_MEAN}` : OFF };
}

const TRUE_MEAN = 'the true mean of the field';
const OFF = `off ${TRUE_MEAN}`;

/** Distances no farther apart than this, of the nearer, share a line. Our own choice. */
const SAME_LINE = 0.05;

/** The modelled distances; what was read stands with the distance that it is nearest to, or else in its own place. */
function distanceTable(panel: PanelEntry, current: SessionEntry, figure: FigureOf): DistanceRow[] {
  const readAt = current.conditions.distance;
  const read = readRow(panel, readAt, figure);
  const rows = current.light.model
    ? TABLE_DISTANCES.map((distance) => ({
        distance,
        row: {
          ...distanceRow(panel, distance, figure),
          ...(Math.abs(distance - readAt) <= SAME_LINE * distance && { read }),
        },
      }))
    : [];
  if (rows.some(({ row }) => 'read' in row)) return rows.map(({ row }) => row);
  return [...rows, { distance: readAt, row: read }].toSorted((a, b) => a.distance - b.distance).map(({ row }) => row);
}

/** What the grid and the sweep over the face read; its time is that for the grid's mean. */
function readRow(panel: PanelEntry, distance: number, figure: FigureOf): Omit<DistanceRow, 'read'> {
  const time = panel.figures.get('time-per-joule');
  return {
    distance,
    mean: unitless(figure('mean-irradiance')),
    peak: unitless(figure('peak-irradiance-combined')),
    evenness: unitless(figure('uniformity-lowest')),
    ...(isFigure(time) &&
      time.interval95 && {
        time: { ...timeWithin(time.value, time.interval95), calculation: figure('time-per-joule').calculation },
      }),
  };
}

function distanceRow(panel: PanelEntry, distance: number, figure: FigureOf): Omit<DistanceRow, 'read'> {
  const metric = distanceMetric('mean-irradiance', distance);
  const mean = panel.figures.get(metric);
  return {
    distance,
    mean: unitless(figure(metric)),
    peak: unitless(figure(distanceMetric('peak-irradiance', distance))),
    evenness: unitless(figure(distanceMetric('uniformity-lowest', distance))),
    ...(isFigure(mean) && mean.interval95 && { time: timeEachJoule(mean, mean.interval95) }),
  };
}

function timeEachJoule(mean: Figure, [low, high]: readonly [number, number]): DistanceRow['time'] {
  const time = (irradiance: number) => timeForRadiantExposure(1, irradiance);
  return timeWithin(time(mean.value), [time(high), time(low)]);
}

function timeWithin(value: number, [low, high]: readonly [number, number]) {
  return { value, low, high, text: rangeText(value, low, high, '') };
}

/** What the light that misses the frame rests on. */
function sourceSentence({ light, used }: SessionEntry): string {
  const { source, figures } = light;
  if (!source) {
    const reason = isFigure(figures.emitted) ? '' : say(figures.emitted.reason);
    return `What leaves the LEDs is withheld: ${reason}. The figures of the frame stand.`;
  }
  const count = (used.distances ?? []).filter((it) => it.centre && acceptedReadings(it.centre).length > 0).length;
  switch (source) {
    case 'beyond':
      return 'The light past the edges was measured.';
    case 'sweep':
      return `The shape of the beam is from the grid and a sweep of ${count} distances; nobody measured past the edges.`;
    case 'grid':
      return 'The shape of the beam is from the grid alone, which leaves much open; nobody measured past the edges.';
  }
}
