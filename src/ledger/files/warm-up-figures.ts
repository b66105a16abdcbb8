import { filesOf, type ReadFile } from '../../content/read/files/file-kind.ts';
import { type FigureMap, type FigureOrGap, type Flag, gap, isFigure } from '../../measure/figure.ts';
import type { NoFit } from '../../measure/log/exponential-fit.ts';
import type { TimeSeries } from '../../measure/log/series.ts';
import { SETTLED_SPREAD } from '../../measure/log/settled-criterion.ts';
import { excessAt, type NotSettled, type Uncertain, type WarmUp, warmUp } from '../../measure/log/warm-up.ts';
import { identityOf, type ListedMetricId } from '../../measure/metrics.ts';
import type { Statement } from '../../measure/statement.ts';
import { coverageFactor, makeFigure, typeB } from '../../measure/uncertainty.ts';
import { CLOSE, type DrawnSeries, drawnSeries } from './drawn-series.ts';
import type { FileContext, FileMaker } from './file-maker.ts';

declare module '../../measure/statement.ts' {
  interface StatementData {
    /** Readings, and s from the first to the last. */
    'warm-up-read': { samples: number; seconds: number };
    /** Why nothing is held against a settled value; the spread of the last 15 minutes, %. */
    'warm-up-not-settled': { why: NotSettled; spread: number; seconds: number };
    'warm-up-begins-late': { seconds: number };
    /** Why there is no time constant. */
    'warm-up-no-fit': { why: NoFit };
    'warm-up-scatter': object;
    /** Length of the means that were looked at, s. */
    'warm-up-scatter-found': { stretch: number };
    'sensor-drift': object;
    'sensor-warms-too': object;
    /** s that the panel had been on, by how much it was brighter than settled, % with 95 % uncertainty, and when it had settled, s. */
    'grid-before-settled': { warmUp: number; excess: number; uncertainty: number; settled: number };
    'read-after-settling': { settled: number };
  }
}

declare module './file-maker.ts' {
  interface FileViews {
    warmUpLog: WarmUpView;
  }
}

/** A warm-up log as pages draw it. */
export interface WarmUpView {
  file: string;
  warmUp: Omit<WarmUp, 'bins'>;
  /** Against the settled value, or the last one: 1 is that. */
  series: DrawnSeries;
  /** The same for who looks closer. */
  close: DrawnSeries;
  /** Time from switching on to the first reading of the session, s; and how much brighter than settled it was then, %. */
  readings: { time: number; excess: Uncertain | undefined } | undefined;
}

const DRAWN = 400;

/** Loss from cold, time to settle and time constant; and a doubt about what was read before. */
export const warmUpMaker: FileMaker<'warmUpLog'> = {
  block: 'warmUpLog',
  make(all, context) {
    const [file] = filesOf(all, 'warmUp') as [ReadFile<'warmUp'>];
    const found = context.findIn([file], ['warm-up'], () => warmUp(sinceOn(file)));
    const { bins: _bins, ...told } = found;
    const time = context.session.warmUp?.value;
    const excess = time === undefined ? undefined : excessAt(found, time);
    const unit = typeof found.settled === 'string' ? found.window.mean : found.settled.value;
    const shares = { times: sinceOn(file).times, values: file.data().series.values.map((it) => it / unit) };
    return {
      figures: figuresOf(found, context),
      view: {
        file: file.name,
        warmUp: told,
        series: drawnSeries(shares, DRAWN),
        close: drawnSeries(shares, CLOSE),
        readings: time === undefined ? undefined : { time, excess },
      },
      flags: (figures) => earlyFlags(found, time, excess, figures),
    };
  },
};

/** Times count from switching on. */
function sinceOn({ data, entry }: ReadFile<'warmUp'>): TimeSeries {
  const { series } = data();
  const onFor = entry.onFor?.value ?? 0;
  return onFor === 0 ? series : { times: series.times.map((it) => it + onFor), values: series.values };
}

function figuresOf(found: WarmUp, { id }: FileContext): FigureOrGap[] {
  const { settled, drop, settlingTime, fit, stretch, samples, length, window } = found;
  const notes: Statement[] = [{ code: 'warm-up-read', samples, seconds: length }];
  const figure = (metric: ListedMetricId, { value, uncertainty }: Uncertain) =>
    makeFigure(
      { ...identityOf(metric, id), basis: 'measured', inputs: [`${id}/warmUpLog`], notes, ...LOWEST[metric] },
      value,
      {
        budget: [
          {
            source: typeB({
              key: `${id}/${metric}/scatter`,
              what: { code: 'warm-up-scatter' },
              distribution: 'normal',
              evaluation: { code: 'warm-up-scatter-found', stretch },
            }),
            contribution: uncertainty,
          },
        ],
        unassessed: [{ what: { code: 'sensor-drift' }, reason: { code: 'sensor-warms-too' } }],
      },
    );
  const without: Statement | undefined =
    typeof settled === 'string'
      ? { code: 'warm-up-not-settled', why: settled, spread: window.spread, seconds: length }
      : undefined;
  const late: Statement = { code: 'warm-up-begins-late', seconds: found.bins[0]?.time ?? 0 };
  return [
    drop ? figure('warm-up-drop', drop) : gap('warm-up-drop', without ?? late),
    settlingTime ? figure('settling-time', settlingTime) : gap('settling-time', without ?? late),
    typeof fit === 'string'
      ? gap('warm-up-constant', { code: 'warm-up-no-fit', why: fit })
      : figure('warm-up-constant', { value: fit.constant, uncertainty: fit.constantUncertainty }),
  ];
}

/** Some panels gain light as they warm. */
const LOWEST: Partial<Record<ListedMetricId, { lowest: number }>> = {
  'warm-up-drop': { lowest: Number.NEGATIVE_INFINITY },
};

/** Readings that were taken while the light was still more than half a percent away, beyond what the log leaves open. */
function earlyFlags(
  found: WarmUp,
  time: number | undefined,
  excess: Uncertain | undefined,
  figures: FigureMap,
): Flag[] {
  if (time === undefined || excess === undefined) return [];
  const uncertainty = coverageFactor(Number.POSITIVE_INFINITY) * excess.uncertainty;
  if (Math.abs(excess.value) - uncertainty < SETTLED_SPREAD) return [];
  const settled = found.settlingTime?.value ?? time;
  const concerns = (['peak-irradiance-combined', 'mean-irradiance'] as const).filter((it) => isFigure(figures.get(it)));
  if (concerns.length === 0) return [];
  return [
    {
      check: 'grid-before-settled',
      severity: isLarge(excess.value, figures) ? 'doubt' : 'note',
      finding: { code: 'grid-before-settled', warmUp: time, excess: excess.value, uncertainty, settled },
      hint: { code: 'read-after-settling', settled },
      concerns,
      at: ['session', 'warmUp'],
    },
  ];
}

/** More than half of what the mean of the grid may be off anyway: then it is in doubt. Our own choice. */
function isLarge(excess: number, figures: FigureMap): boolean {
  const mean = figures.get('mean-irradiance');
  if (!isFigure(mean) || mean.interval95 === null) return true;
  const [low, high] = mean.interval95;
  return (Math.abs(excess) / 100) * mean.value > (high - low) / 4;
}
