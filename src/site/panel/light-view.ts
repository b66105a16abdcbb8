import { acceptedReadings } from '../../content/read/grid-points.ts';
import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { distanceMetric, TABLE_DISTANCES } from '../../measure/beam/table-distances.ts';
import { type Figure, isFigure } from '../../measure/figure.ts';
import { timeForRadiantExposure } from '../../measure/irradiance/radiant-exposure.ts';
import type { MetricId } from '../../measure/metrics.ts';
import { rangeText } from '../../words/format.ts';
import { inInches } from '../../words/other-unit.ts';
import { say } from '../../words/say.ts';
import { type ShownFigure, shownFigure } from '../shared/shown-figure.ts';
import { type DistancePlot, distancePlot } from './distance-plot.ts';

/** A common figure and the one that is corrected for beam and size. */
export interface CorrectedPair {
  name: string;
  common: ShownFigure;
  corrected: ShownFigure;
}

/** One distance of the table. */
export interface DistanceRow {
  /** `15 cm` */
  distance: string;
  /** `5.9 in` */
  inches: string;
  mean: ShownFigure;
  peak: ShownFigure;
  evenness: ShownFigure;
  /** Time for each 1 J/cm² at the mean, s, with its 95 % interval: what the script multiplies. */
  time?: { value: number; low: number; high: number; text: string };
}

/** What the model makes of a panel's light, ready to print. */
export interface LightView {
  /** Which readings gave the beam, in a sentence; or why there is none. */
  source: string;
  corrections: CorrectedPair[];
  /** Half-angle, capture, sampling bias. */
  beam: ShownFigure[];
  /** What was assumed, for all of it. */
  notes: string[];
  /** Where ways to the beam disagree, or led nowhere. */
  warnings: string[];
  table?: DistanceRow[];
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
  return {
    source: sourceSentence(current),
    corrections: [
      pair('Light', 'optical-power', 'emitted-power'),
      pair('Price', 'price-per-watt', 'price-per-emitted-watt'),
      pair('Efficiency', 'efficiency-combined', 'efficiency-emitted'),
    ],
    // The same notes stand with each of them.
    beam: (['beam-half-angle', 'capture', 'sampling-bias'] as const).map((metric) => ({
      ...figure(metric),
      notes: [],
    })),
    notes: figure('beam-half-angle').notes,
    warnings: current.light.flags.map((it) => say(it.finding)),
    ...(isModelled && {
      table: TABLE_DISTANCES.map((distance) => distanceRow(panel, distance, figure)),
      plot: distancePlot(current, panel.figures),
    }),
  };
}

function distanceRow(panel: PanelEntry, distance: number, figure: (metric: MetricId) => ShownFigure): DistanceRow {
  const metric = distanceMetric('mean-irradiance', distance);
  const mean = panel.figures.get(metric);
  return {
    distance: `${distance} cm`,
    inches: inInches(distance),
    mean: figure(metric),
    peak: figure(distanceMetric('peak-irradiance', distance)),
    evenness: figure(distanceMetric('uniformity-lowest', distance)),
    ...(isFigure(mean) && mean.interval95 && { time: timeEachJoule(mean, mean.interval95) }),
  };
}

function timeEachJoule(mean: Figure, [low, high]: readonly [number, number]): DistanceRow['time'] {
  const time = (irradiance: number) => timeForRadiantExposure(1, irradiance);
  const [value, fast, slow] = [time(mean.value), time(high), time(low)];
  return { value, low: fast, high: slow, text: rangeText(value, fast, slow, 's') };
}

/** What the light that misses the frame rests on. */
function sourceSentence({ light, readings }: SessionEntry): string {
  const { source, figures } = light;
  if (!source) {
    const reason = isFigure(figures.emitted) ? '' : say(figures.emitted.reason);
    return `The corrected figures are withheld: ${reason}. The common ones stand.`;
  }
  const count = (readings.distances ?? []).filter((it) => it.centre && acceptedReadings(it.centre).length > 0).length;
  switch (source) {
    case 'beyond':
      return 'Here it was measured: readings past the edges, in the same plane, say how much light misses the frame.';
    case 'sweep':
      return `Here it is taken from the shape of the beam: the grid and a sweep of ${count} distances say which beams there can be. Nobody measured past the edges.`;
    case 'grid':
      return 'Here it is taken from the shape of the beam: the grid says which beams there can be, and leaves much open. Nobody measured past the edges.';
  }
}
