import type { WarmUpView } from '../../ledger/files/warm-up-figures.ts';
import type { FigureMap } from '../../measure/figure.ts';
import { showText } from '../../words/figure-text.ts';
import { fixed } from '../../words/format.ts';
import { rounded } from '../../words/rounded.ts';
import { timeWords } from '../../words/time-words.ts';
import { pathThrough } from '../shared/browser/path-data.ts';
import { type LogPlot, logAxes, logPath } from './log-plot.ts';
import type { LogView } from './log-view.ts';

const MINUTE = 60;
/** Room that a word beside an upright line needs, px. */
const LABEL = 110;
/** Points of the fit's curve. */
const STEPS = 80;

/** The light from cold. */
export function warmUpLog(view: WarmUpView, figures: FigureMap): Omit<LogView, 'id'> {
  return {
    heading: 'From cold',
    answer: answer(view),
    method: { id: 'settling', text: 'How a warm-up log is read' },
    plot: plot(view),
    caption: caption(view),
    table: {
      summary: 'The numbers',
      head: ['What', 'Value'],
      rows: [
        ['Drop from cold', showText(figures.get('warm-up-drop'), '')],
        ['Time to settle', showText(figures.get('settling-time'), '')],
        ['Time constant', showText(figures.get('warm-up-constant'), '')],
        ['Spread of the last 15 min', `${rounded(view.warmUp.window.spread, 2)} %`],
        ['Readings', `${fixed(view.warmUp.samples, 0)} in ${timeWords(Math.round(view.warmUp.length))}`],
      ],
    },
  };
}

function answer({ warmUp, readings }: WarmUpView): string {
  const { drop, settlingTime, settled } = warmUp;
  if (typeof settled === 'string' || !settlingTime) return 'The log doesn’t say when the light settles.';
  const lost = !drop
    ? ''
    : Math.abs(drop.value) < 2 * drop.uncertainty
      ? 'The light is as strong warm as cold'
      : `Warm, the panel gives ${rounded(Math.abs(drop.value), 2)} % ${drop.value > 0 ? 'less' : 'more'} light than cold`;
  const settling = `it settles within ${timeWords(Math.ceil(settlingTime.value / MINUTE) * MINUTE || MINUTE)}`;
  const first = lost === '' ? `${settling.charAt(0).toUpperCase()}${settling.slice(1)}.` : `${lost}; ${settling}.`;
  if (!readings?.excess) return first;
  const { time, excess } = readings;
  const off = Math.abs(excess.value);
  return `${first} The readings began after ${timeWords(time)}, ${
    off < 0.1
      ? 'when it had settled'
      : `when it was still ${rounded(off, 2)} % ${excess.value > 0 ? 'above' : 'below'} that`
  }.`;
}

function caption({ warmUp }: WarmUpView): string {
  const fit = typeof warmUp.fit === 'object' ? ' Dashed: one exponential through it.' : '';
  return `Light in percent of ${typeof warmUp.settled === 'string' ? 'the last 15 minutes' : 'the settled value'}. The scale doesn’t begin at nought.${fit}`;
}

function plot({ warmUp, series, readings }: WarmUpView): LogPlot {
  const [first, last] = [series.times[0] ?? 0, series.times.at(-1) ?? 1];
  const percent = { ...series, low: series.low.map((it) => 100 * it), high: series.high.map((it) => 100 * it) };
  const end = Math.max(last, readings?.time ?? 0) / MINUTE;
  const { x, y, area } = logAxes([0, end], [Math.min(...percent.low, 98), Math.max(...percent.high, 102)]);
  const at = (seconds: number) => x.place(seconds / MINUTE);
  const { fit, settled } = warmUp;
  const unit = typeof settled === 'string' ? warmUp.window.mean : settled.value;
  const fitted =
    typeof fit === 'object'
      ? Array.from({ length: STEPS + 1 }, (_, i) => {
          const t = first + ((last - first) * i) / STEPS;
          return [at(t), y.place((100 * (fit.settled + fit.excess * Math.exp(-t / fit.constant))) / unit)] as const;
        })
      : [];
  const upright = [
    ...(warmUp.settlingTime ? [{ seconds: warmUp.settlingTime.value, text: 'settled' }] : []),
    ...(readings ? [{ seconds: readings.time, text: 'readings begin' }] : []),
  ];
  const { left, right } = area.frame;
  const earliest = Math.min(...upright.map((it) => it.seconds));
  // Of two, the earlier one has its word before it, so that they don't meet.
  const places = upright.map(({ seconds, text }) => {
    const place = at(seconds);
    const isBefore = place > right - LABEL || (upright.length > 1 && seconds === earliest && place > left + LABEL);
    return {
      x: place,
      text,
      textX: place + (isBefore ? -5 : 5),
      anchor: isBefore ? ('end' as const) : ('start' as const),
    };
  });
  return {
    ...area,
    xName: 'since switching on, min',
    yName: '%',
    curves: [
      { path: logPath(percent, at, y.place), kind: 'log' },
      ...(fitted.length > 0 ? [{ path: pathThrough(fitted), kind: 'fit' as const }] : []),
    ],
    levels: [{ x1: area.frame.left, x2: area.frame.right, y: y.place(100), kind: 'line' }],
    times: places,
    marks: [],
    description: `Light since switching on: from ${rounded(percent.high[0] ?? 100)} % to 100 % of the settled value${warmUp.settlingTime ? `, settled after ${timeWords(Math.round(warmUp.settlingTime.value))}` : ''}${readings ? `; readings begin after ${timeWords(readings.time)}` : ''}`,
  };
}
