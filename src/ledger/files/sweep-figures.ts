import { type AnyReadFile, filesOf, type ReadFile } from '../../content/read/files/file-kind.ts';
import type { ModeKey } from '../../content/schema/session.ts';
import type { BudgetComponent, Figure, Flag } from '../../measure/figure.ts';
import { sameDistance } from '../../measure/irradiance/same-distance.ts';
import type { Hover } from '../../measure/log/hovers.ts';
import { type PlateauSearch, plateaus } from '../../measure/log/plateaus.ts';
import { type Sweep, sweep } from '../../measure/log/sweep.ts';
import type { ListedMetricId, MetricId } from '../../measure/metrics.ts';
import { readingFigure } from '../../measure/reading.ts';
import type { Statement } from '../../measure/statement.ts';
import { MODE_IDS } from '../reading-figures.ts';
import { CLOSE, type DrawnSeries, drawnSeries } from './drawn-series.ts';
import type { FileContext, FileMaker } from './file-maker.ts';

declare module '../../measure/statement.ts' {
  interface StatementData {
    /** How a log was taken: readings, and s from the first to the last. */
    'sweep-read': { samples: number; seconds: number };
    /** Readings of one sample that the figure leaves out, and the highest of them, mW/cm². */
    'sweep-spikes-left': { count: number; highest: number };
    /** Where the sensor was held still highest: mean, mW/cm², and for how long, s. */
    'sweep-highest-hover': { value: number; seconds: number };
    'sweep-between-samples': object;
    'sweep-moves-on': object;
    /** The same, as a flag: its mode's peak, the highest sample and what is left without it. */
    'sweep-spike': { metric: MetricId; count: number; highest: number; without: number };
    'look-at-spike': object;
  }
}

declare module './file-maker.ts' {
  interface FileViews {
    sweeps: readonly SweepView[];
  }
}

/** A sweep as pages draw it. */
export interface SweepView {
  file: string;
  mode: ModeKey;
  /** cm */
  distance: number;
  /** It was read at the session's distance, and gives a peak. */
  givesPeak: boolean;
  sweep: Omit<Sweep, 'hovers'>;
  hovers: readonly Hover[];
  series: DrawnSeries;
  /** The same for who looks closer. */
  close: DrawnSeries;
  /** Of a grid in one go: its points, or what was found. */
  grid?: PlateauSearch & { wanted: number };
}

/** Stretches of a drawing. */
const DRAWN = 600;
/** Hovers that a page lists, at most. */
const LISTED = 40;

/** Points of a grid, where a session has none yet. */
export const USUAL_POINTS = 9;

/** Peaks of the modes from sweeps, with the highest sample and the 99th percentile beside. */
export const sweepMaker: FileMaker<'sweeps'> = {
  block: 'sweeps',
  make(all, context) {
    const views = filesOf(all as readonly AnyReadFile[], 'sweep').map((it) => ({
      file: it,
      view: viewOf(it, context),
    }));
    const highest = new Map<ModeKey, (typeof views)[number]>();
    for (const it of views) {
      const { mode, givesPeak, sweep } = it.view;
      const before = highest.get(mode);
      if (givesPeak && !(before && before.view.sweep.steadyMaximum.value >= sweep.steadyMaximum.value)) {
        highest.set(mode, it);
      }
    }
    const counted = [...highest.values()];
    return {
      figures: counted.flatMap(({ file, view }) => figuresOf(file, view, context)),
      view: views.map((it) => it.view),
      flags: () => counted.flatMap(({ file, view }) => spikeFlags(file, view)),
    };
  },
};

function viewOf(file: ReadFile<'sweep'>, { session, distance }: FileContext): SweepView {
  const { entry } = file;
  const { series } = file.data();
  const from = entry.distance?.value ?? distance.distance;
  const { hovers, ...found } = sweep(series);
  const wanted = session.grid?.rows.flat().length ?? USUAL_POINTS;
  return {
    file: file.name,
    mode: entry.mode ?? 'combined',
    distance: from,
    givesPeak: !entry.grid && sameDistance(from, distance.distance),
    sweep: found,
    hovers: hovers.slice(0, LISTED),
    series: drawnSeries(series, DRAWN),
    close: drawnSeries(series, CLOSE),
    ...(entry.grid && { grid: { ...plateaus(series, wanted), wanted } }),
  };
}

function figuresOf(file: ReadFile<'sweep'>, view: SweepView, context: FileContext): Figure[] {
  const { mode, sweep } = view;
  const suffix = MODE_IDS[mode];
  const make = (metric: ListedMetricId, value: number, notes: Statement[]): Figure => {
    const figure = readingFigure({
      metric,
      value,
      session: context.id,
      path: `${context.id}/sweeps[${String(file.field[1])}]`,
      instrument: context.instrumentFor('irradiance'),
      distance: context.distance,
      bands: context.modes.bands[mode],
      notes,
    });
    return { ...figure, budget: ownErrors(figure) };
  };
  const read: Statement = { code: 'sweep-read', samples: sweep.samples, seconds: sweep.length };
  const hover = highestHover(view);
  const spikes: Statement[] =
    sweep.spikes.length > 0
      ? [{ code: 'sweep-spikes-left', count: sweep.spikes.length, highest: highestSpike(sweep) }]
      : [];
  const peak = make(`peak-irradiance-${suffix}`, sweep.steadyMaximum.value, [
    read,
    ...spikes,
    ...(hover ? [{ code: 'sweep-highest-hover', value: hover.mean, seconds: hover.to - hover.from } as const] : []),
  ]);
  return [
    {
      ...peak,
      unassessed: [...peak.unassessed, { what: { code: 'sweep-between-samples' }, reason: { code: 'sweep-moves-on' } }],
    },
    make(`sweep-maximum-${suffix}`, sweep.maximum, [read]),
    make(`sweep-percentile-${suffix}`, sweep.percentile99, [read]),
  ];
}

/** Rounding and scatter are the log's own: a reading that was typed for the same figure has others. */
function ownErrors({ id, budget }: Figure): BudgetComponent[] {
  return budget.map((it) =>
    it.source.key.startsWith(`${id}/`)
      ? { ...it, source: { ...it.source, key: `${id}/sweep/${it.source.key.slice(id.length + 1)}` } }
      : it,
  );
}

const highestSpike = ({ spikes }: SweepView['sweep']) => Math.max(...spikes.map((it) => it.value));

const highestHover = ({ hovers }: SweepView) =>
  hovers.reduce<Hover | undefined>((most, it) => (most && most.mean >= it.mean ? most : it), undefined);

/** Only spikes that stand above all else move the maximum. */
function spikeFlags(file: ReadFile<'sweep'>, { mode, sweep }: SweepView): Flag[] {
  const without = sweep.steadyMaximum.value;
  const above = sweep.spikes.filter((it) => it.value > without);
  if (above.length === 0) return [];
  const metric = `peak-irradiance-${MODE_IDS[mode]}` as const;
  return [
    {
      check: 'sweep-spike',
      severity: 'note',
      finding: { code: 'sweep-spike', metric, count: above.length, highest: sweep.maximum, without },
      hint: { code: 'look-at-spike' },
      concerns: [metric],
      at: ['session', ...file.field],
    },
  ];
}
