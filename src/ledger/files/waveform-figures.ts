import { mean } from 'simple-statistics';
import { filesOf, type ReadFile } from '../../content/read/files/file-kind.ts';
import type { ModeKey } from '../../content/schema/session.ts';
import { type BudgetComponent, type FigureOrGap, type Flag, gap, type Unassessed } from '../../measure/figure.ts';
import {
  calibrationComponents,
  instrumentAbsence,
  isCalibrated,
  missingRepeatability,
  repeatabilityComponents,
} from '../../measure/instrument/instrument.ts';
import { identityOf, type ListedMetricId, type MetricId } from '../../measure/metrics.ts';
import type { Statement } from '../../measure/statement.ts';
import { makeFigure, typeB, type UncertaintyKnowledge } from '../../measure/uncertainty.ts';
import {
  type FlickerWaveform,
  flickerWaveform,
  type NoWaveform,
  type WaveformKind,
} from '../../measure/waveform/flicker-waveform.ts';
import { MODE_IDS } from '../reading-figures.ts';
import { CLOSE, type DrawnSeries, drawnSeries } from './drawn-series.ts';
import type { FileContext, FileMaker } from './file-maker.ts';

declare module '../../measure/statement.ts' {
  interface StatementData {
    /** Readings, readings a second, and how the extremes were found. */
    'waveform-read': { samples: number; rate: number; kind: WaveformKind };
    /** Why a record says nothing. */
    'waveform-refused': { why: NoWaveform };
    'no-modulation-seen': object;
    /** Readings a second, and what the sensor lets through, Hz. */
    'frequency-may-be-mirrored': { rate: number; bandwidth: number };
    /** Depth is only known to be at least so much: samples hit the same places of each period. */
    'waveform-few-places': object;
    'waveform-noise': object;
    'waveform-noise-found': object;
    'sampling-clock': object;
    'sampling-clock-not-stated': object;
    'dark-level': object;
    'dark-level-not-given': object;
    /** A file that gives no figure, as a flag. */
    'file-says-nothing': { metric: MetricId; because: Statement };
    'record-again': { why: NoWaveform };
  }
}

declare module './file-maker.ts' {
  interface FileViews {
    waveforms: readonly WaveformView[];
  }
}

/** A record of flicker as pages draw it. */
export interface WaveformView {
  file: string;
  mode: ModeKey;
  found: FlickerWaveform | NoWaveform;
  /** The record as it was taken, the mean being 1; undefined where it says nothing. */
  close: DrawnSeries | undefined;
}

/** Depth, index and frequency of flicker, mode by mode. */
export const waveformMaker: FileMaker<'waveforms'> = {
  block: 'waveforms',
  make(all, context) {
    const made = filesOf(all, 'waveform').map((file) => {
      const { dark, bandwidth } = file.entry;
      const found = context.findIn([file], ['flicker'], () =>
        flickerWaveform(file.data().series, {
          ...(dark !== undefined && { dark }),
          ...(bandwidth && { bandwidth: bandwidth.value }),
        }),
      );
      return { file, mode: file.field[1] as ModeKey, found };
    });
    return {
      figures: made.flatMap((it) => figuresOf(it.file, it.mode, it.found, context)),
      view: made.map(({ file, mode, found }) => ({
        ...{ file: file.name, mode, found },
        close: typeof found === 'string' ? undefined : closeRecord(file),
      })),
      flags: () => made.flatMap(({ file, mode, found }) => refusedFlags(file, mode, found)),
    };
  },
};

function closeRecord({ data, entry: { dark = 0 } }: ReadFile<'waveform'>): DrawnSeries {
  const { series } = data();
  const light = mean(series.values as unknown as number[]) - dark;
  return drawnSeries({ times: series.times, values: series.values.map((it) => (it - dark) / light) }, CLOSE);
}

function figuresOf(
  file: ReadFile<'waveform'>,
  mode: ModeKey,
  found: FlickerWaveform | NoWaveform,
  context: FileContext,
): FigureOrGap[] {
  const suffix = MODE_IDS[mode];
  const [depth, frequency, index] = [
    `flicker-${suffix}`,
    `flicker-frequency-${suffix}`,
    `flicker-index-${suffix}`,
  ] as const;
  if (typeof found === 'string') {
    return [depth, frequency, index].map((it) => gap(it, { code: 'waveform-refused', why: found }));
  }
  const { samples, rate, kind, bound } = found;
  const notes: Statement[] = [{ code: 'waveform-read', samples, rate, kind }];
  if (bound === 'above') notes.push({ code: 'waveform-few-places' });
  const figure = (metric: ListedMetricId, value: number, knowledge: UncertaintyKnowledge, isBound = false) =>
    makeFigure(
      {
        ...identityOf(metric, context.id),
        basis: 'measured',
        inputs: [`${context.id}/waveforms.${mode}`],
        notes,
        ...(isBound && bound && { bound }),
      },
      value,
      isBound && bound ? { absent: { code: 'reading-is-bound', bound } } : knowledge,
    );
  return [
    figure(depth, found.depth, depthKnowledge(found, `${context.id}/${depth}/waveform`, file, context), true),
    frequencyOf(found, file, (value, knowledge) => figure(frequency, value, knowledge), frequency, context),
    figure(
      index,
      found.index,
      { budget: [noise(`${context.id}/${index}`, found.indexUncertainty)], unassessed: dark(file) },
      true,
    ),
  ];
}

/** The meter's file states its uncertainty in percent of depth. */
function depthKnowledge(
  { depth, depthUncertainty }: FlickerWaveform,
  key: string,
  file: ReadFile<'waveform'>,
  { instrumentFor }: FileContext,
): UncertaintyKnowledge {
  const instrument = instrumentFor('flicker');
  if (!isCalibrated(instrument)) return { absent: instrumentAbsence(instrument) };
  return {
    budget: [
      ...calibrationComponents(instrument, depth),
      ...repeatabilityComponents(instrument, key, depth),
      noise(key, depthUncertainty),
    ],
    unassessed: [...missingRepeatability(instrument), ...dark(file)],
  };
}

function frequencyOf(
  { frequency, mayBeAlias, rate }: FlickerWaveform,
  { entry }: ReadFile<'waveform'>,
  make: (value: number, knowledge: UncertaintyKnowledge) => FigureOrGap,
  metric: ListedMetricId,
  { id }: FileContext,
): FigureOrGap {
  if (!frequency) return gap(metric, { code: 'no-modulation-seen' });
  if (mayBeAlias) {
    return gap(metric, { code: 'frequency-may-be-mirrored', rate, bandwidth: entry.bandwidth?.value ?? 0 });
  }
  return make(frequency.value, {
    budget: [noise(`${id}/${metric}`, frequency.uncertainty)],
    unassessed: [{ what: { code: 'sampling-clock' }, reason: { code: 'sampling-clock-not-stated' } }],
  });
}

const noise = (key: string, contribution: number): BudgetComponent => ({
  source: typeB({
    key: `${key}/noise`,
    what: { code: 'waveform-noise' },
    distribution: 'normal',
    evaluation: { code: 'waveform-noise-found' },
  }),
  contribution,
});

/** Where darkness lies counts for both. */
const dark = ({ entry }: ReadFile<'waveform'>): Unassessed[] =>
  entry.dark === undefined ? [{ what: { code: 'dark-level' }, reason: { code: 'dark-level-not-given' } }] : [];

/** A record that says nothing is told to the tester, and that a typed reading stands in its place. */
function refusedFlags(file: ReadFile<'waveform'>, mode: ModeKey, found: FlickerWaveform | NoWaveform): Flag[] {
  if (typeof found !== 'string') return [];
  const metric = `flicker-${MODE_IDS[mode]}` as const;
  return [
    {
      check: 'file-says-nothing',
      severity: 'note',
      finding: { code: 'file-says-nothing', metric, because: { code: 'waveform-refused', why: found } },
      hint: { code: 'record-again', why: found },
      concerns: [metric],
      at: ['session', ...file.field],
    },
  ];
}
