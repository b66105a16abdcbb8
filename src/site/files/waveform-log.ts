import type { WaveformView } from '../../ledger/files/waveform-figures.ts';
import { MODE_IDS } from '../../ledger/reading-figures.ts';
import { flickerLines } from '../../measure/exposure/flicker-lines.ts';
import type { FigureMap } from '../../measure/figure.ts';
import type { FlickerWaveform } from '../../measure/waveform/flicker-waveform.ts';
import { showText } from '../../words/figure-text.ts';
import { fixed } from '../../words/format.ts';
import { rounded } from '../../words/rounded.ts';
import { say } from '../../words/say.ts';
import { pathThrough } from '../shared/browser/path-data.ts';
import { type LogPlot, logAxes } from './log-plot.ts';
import type { LogView } from './log-view.ts';

const MODES: Readonly<Record<WaveformView['mode'], string>> = {
  red: 'red alone',
  nearInfrared: 'near-infrared alone',
  combined: 'both channels',
};

/** A record of flicker. */
export function waveformLog({ mode, found }: WaveformView, figures: FigureMap): Omit<LogView, 'id'> {
  const heading = `Flicker, ${MODES[mode]}`;
  const method = { id: 'flicker-waveform', text: 'How a record is read' };
  if (typeof found === 'string') {
    return { heading, method, answer: `No reading from this file: ${say({ code: 'waveform-refused', why: found })}.` };
  }
  const suffix = MODE_IDS[mode];
  const text = (id: 'flicker' | 'flicker-index' | 'flicker-frequency') => showText(figures.get(`${id}-${suffix}`), '');
  return {
    heading,
    answer: answer(found, text('flicker'), mode),
    method,
    plot: plot(found, mode),
    caption: caption(found),
    table: {
      summary: 'The numbers',
      head: ['What', 'Value'],
      rows: [
        ['Modulation depth', text('flicker')],
        ['Flicker index', text('flicker-index')],
        ['Main frequency', text('flicker-frequency')],
        ...found.lines
          .slice(0, 6)
          .map((it) => [`At ${hertz(it.frequency)}`, `${rounded(it.amplitude, 2)} % of the mean`]),
        ['Samples', `${fixed(found.samples, 0)} at ${hertz(found.rate)}`],
      ],
    },
  };
}

const hertz = (value: number) =>
  value >= 1e6 ? `${rounded(value / 1e6)} MHz` : value >= 1e3 ? `${rounded(value / 1e3)} kHz` : `${rounded(value)} Hz`;

function answer(
  { kind, frequency, mayBeAlias, rate }: FlickerWaveform,
  depth: string,
  mode: WaveformView['mode'],
): string {
  if (kind === 'constant' || kind === 'steady' || !frequency) {
    return `The light is steady as far as the record can tell: a depth of ${depth}. Anything faster than ${hertz(rate / 2)} isn’t seen.`;
  }
  const rises = `The light rises and falls by ${depth}`;
  if (mayBeAlias) return `${rises}. How fast can’t be told: the sensor lets more through than the samples can show.`;
  const fast = `${rises} at ${hertz(frequency.value)}`;
  if (mode === 'nearInfrared') return `${fast}, which no eye sees; the lines for flicker speak of visible light.`;
  const { lowRisk, noEffect } = flickerLines(frequency.value);
  if (noEffect === 'no-limit')
    return `${fast}, above the frequencies for which the two lines of IEEE Std 1789-2015 are drawn.`;
  return `${fast}. There the line of no observable effect lies at ${rounded(noEffect)} %${lowRisk === 'no-limit' ? '' : `, that of low risk at ${rounded(lowRisk)} %`}.`;
}

function caption({ kind, frequency }: FlickerWaveform): string {
  if (kind === 'periodic')
    return 'Two periods, all that were recorded laid over one another; light in percent of its mean, from nought.';
  if (kind === 'irregular' && frequency)
    return 'The beginning of the record; light in percent of its mean, from nought.';
  return 'Light in percent of its mean, from nought.';
}

function plot({ kind, profile, frequency, rate, mayBeAlias }: FlickerWaveform, mode: WaveformView['mode']): LogPlot {
  const isPeriodic = kind === 'periodic' && frequency !== undefined;
  const light = isPeriodic ? [...profile, ...profile] : [...profile];
  const length = isPeriodic ? 2 / frequency.value : light.length / rate;
  const [unit, name] = length < 1e-3 ? [1e6, 'µs'] : length < 1 ? [1e3, 'ms'] : [1, 's'];
  const lines = isPeriodic && !mayBeAlias && mode !== 'nearInfrared' ? flickerLines(frequency.value) : undefined;
  const drawn = (
    [
      [lines?.noEffect, 'no observable effect'],
      [lines?.lowRisk, 'low risk'],
    ] as const
  ).flatMap(([depth, text]) => (typeof depth === 'number' && depth < 100 ? [{ depth, text }] : []));
  const highest = Math.max(...light.map((it) => 100 * it), ...drawn.map((it) => 100 + it.depth));
  const { x, y, area } = logAxes([0, length * unit], [0, highest]);
  const step = (length * unit) / Math.max(1, light.length - 1);
  return {
    ...area,
    xName: `time, ${name}`,
    yName: '%',
    curves: [{ path: pathThrough(light.map((it, i) => [x.place(i * step), y.place(100 * it)] as const)), kind: 'log' }],
    levels: drawn.flatMap(({ depth, text }) =>
      [100 + depth, 100 - depth].map((level, i) => ({
        ...{ x1: area.frame.left, x2: area.frame.right, y: y.place(level), kind: 'line' as const },
        ...(i === 0 && { text, textX: area.frame.right - 60 }),
      })),
    ),
    times: [],
    marks: [],
    description: `Light against time over ${rounded(length * unit)} ${name}: between ${rounded(100 * Math.min(...light))} % and ${rounded(100 * Math.max(...light))} % of its mean`,
  };
}
