/** A plot on a canvas, of which a part is in view: curves, what is marked among them, and the place that is read. */
import {
  Chart,
  type ChartConfiguration,
  type ChartDataset,
  Decimation,
  LinearScale,
  LineController,
  LineElement,
  LogarithmicScale,
  type Plugin,
  PointElement,
  type Scale,
} from 'chart.js';
import { type PageColours, pageColours } from '../../shared/browser/page-colours.ts';
import { drawMarks } from './close-marks.ts';
import { type CloseCurve, type ClosePlot, nearestIndex, reachOf } from './close-plot.ts';
import { axisTicks, tickText } from './close-ticks.ts';
import type { ViewWindow } from './view-window.ts';

Chart.register(LineController, LineElement, PointElement, LinearScale, LogarithmicScale, Decimation);

/** So few readings in view are drawn as points too. */
const FEW = 80;
/** Room over and under what is in view where the height is fitted to it, share. */
const ROOM = 0.06;

/** About so many ticks upright, and so much room for each along, px. */
const Y_TICKS = 6;
const WIDE = 75;
/** Room for the words of the upright axis, whatever its numbers are, px. */
const UPRIGHT = 64;

/** Ticks at round numbers alone: the ends of what is in view are none. */
function putTicks(scale: Scale, count: number): void {
  const { min, max } = scale;
  scale.ticks = axisTicks(min, max, scale.type === 'logarithmic', count).map((value) => ({ value }));
}

interface Place {
  x: number;
  y: number;
}

/** The readings of a curve, stretches from their lowest to their highest. */
function placesOf({ x, y, high }: CloseCurve): Place[] {
  return x.flatMap((at, i) => {
    const [low, top] = [y[i] as number, high?.[i] ?? (y[i] as number)];
    return low === top
      ? [{ x: at, y: low }]
      : [
          { x: at, y: low },
          { x: at, y: top },
        ];
  });
}

/** Curves as Chart.js has them; light that nobody sees is one of its own, as it is on paper. */
function datasets({ curves, unseenFrom = Number.POSITIVE_INFINITY }: ClosePlot): Array<ChartDataset<'line', Place[]>> {
  return curves.flatMap((curve) => {
    const places = placesOf(curve);
    const line = (data: Place[], dash: number[]) => ({ data, borderDash: dash, borderWidth: 1.5, pointRadius: 0 });
    const at = places.findIndex((it) => it.x >= unseenFrom);
    if (at < 0) return [line(places, curve.isBeside ? [7, 4] : [])];
    return [line(places.slice(0, at + 1), []), line(places.slice(at), [6, 3])];
  });
}

/** The chart of a plot. */
export class CloseChart {
  readonly plot: ClosePlot;
  readonly view: ViewWindow;
  /** Index of the reading that is read out, on the first curve. */
  read: number;
  /** The height shows what is in view alone. */
  isFitted = false;
  #colours: PageColours = pageColours();
  readonly #chart: Chart<'line', Place[]>;
  readonly #whole: readonly [number, number];

  constructor(canvas: HTMLCanvasElement, plot: ClosePlot, view: ViewWindow) {
    this.plot = plot;
    this.view = view;
    const [first] = plot.curves;
    this.read = nearestIndex(first?.x ?? [], view.from);
    this.#whole = this.#heights(reachOf(plot));
    const marks: Plugin<'line'> = {
      id: 'marks',
      afterDatasetsDraw: (chart) => drawMarks(chart, plot, this.read, this.#colours),
    };
    const configuration: ChartConfiguration<'line', Place[]> = {
      type: 'line',
      data: { datasets: datasets(plot) },
      options: {
        animation: false,
        parsing: false,
        normalized: true,
        events: [],
        maintainAspectRatio: false,
        // Else the frame would move whenever another label stands at its end, and with it what lies under the hand.
        layout: { autoPadding: false, padding: { top: 8, right: 24, bottom: 0, left: 0 } },
        scales: {
          x: {
            type: plot.x.isLogarithmic ? 'logarithmic' : 'linear',
            afterBuildTicks: (it) => putTicks(it, it.width / WIDE),
          },
          y: {
            type: 'linear',
            afterBuildTicks: (it) => putTicks(it, Y_TICKS),
            afterFit: (it) => {
              it.width = Math.max(it.width, UPRIGHT);
            },
          },
        },
        plugins: { decimation: { enabled: !plot.x.isLogarithmic, algorithm: 'min-max' } },
      },
      plugins: [marks],
    };
    this.#chart = new Chart(canvas, configuration);
    this.recolour();
  }

  /** Draws what is in view now. */
  update(): void {
    const { view, plot } = this;
    const { options, data } = this.#chart;
    const { x, y } = options.scales ?? {};
    if (!x || !y) return;
    [x.min, x.max] = [view.from, view.to];
    const [low, high] = this.isFitted ? this.#heights([view.from, view.to]) : this.#whole;
    const isFromNought = plot.y.isFromNought && !this.isFitted;
    const room = ROOM * (high - (isFromNought ? 0 : low) || 1);
    y.min = isFromNought ? 0 : low - room;
    y.max = high + room;
    const inView = plot.curves.reduce(
      (most, it) => Math.max(most, nearestIndex(it.x, view.to) - nearestIndex(it.x, view.from)),
      0,
    );
    for (const it of data.datasets) it.pointRadius = inView < FEW ? 2.5 : 0;
    this.#chart.update('none');
  }

  /** The value of the axis at a place of the canvas, and the other way round, CSS pixels. */
  valueAt(pixel: number): number {
    return this.#chart.scales.x?.getValueForPixel(pixel) ?? this.view.from;
  }

  /** How wide the part within the axes is, CSS pixels. */
  get width(): number {
    return this.#chart.chartArea.width;
  }

  /** Takes the page's colours anew. */
  recolour(): void {
    const now = pageColours();
    this.#colours = now;
    const { options, data } = this.#chart;
    const axis = ({ name, unit }: { name: string; unit: string }, isUpright = false) => ({
      title: { display: true, text: `${name}, ${unit}`, color: now.ink, font: { family: now.font, size: 13 } },
      ticks: {
        color: now.ink,
        font: { family: now.font, size: 13 },
        maxRotation: 0,
        autoSkipPadding: 12,
        callback: (_: unknown, i: number, all: ReadonlyArray<{ value: number }>) => tickText(i, all),
      },
      grid: { color: now.rule, drawOnChartArea: isUpright },
      border: { color: now.soft },
    });
    Object.assign(options.scales?.x ?? {}, axis(this.plot.x));
    Object.assign(options.scales?.y ?? {}, axis(this.plot.y, true));
    for (const it of data.datasets) {
      it.borderColor = now.accent;
      it.pointBackgroundColor = now.accent;
      it.pointBorderColor = now.accent;
    }
    this.update();
  }

  destroy(): void {
    this.#chart.destroy();
  }

  /** Lowest and highest reading within a part of the axis, and what is marked there. */
  #heights([from, to]: readonly [number, number]): readonly [number, number] {
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const { x, y, high: highs } of this.plot.curves) {
      const last = nearestIndex(x, to);
      for (let i = nearestIndex(x, from); i <= last; i++) {
        low = Math.min(low, y[i] as number);
        high = Math.max(high, highs?.[i] ?? (y[i] as number));
      }
    }
    return low <= high ? [low, high] : [0, 1];
  }
}
