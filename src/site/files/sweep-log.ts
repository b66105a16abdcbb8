import type { SweepView } from '../../ledger/files/sweep-figures.ts';
import { fixed } from '../../words/format.ts';
import { rounded } from '../../words/rounded.ts';
import { timeWords } from '../../words/time-words.ts';
import { type FilePlot, logAxes, logPath } from './file-plot.ts';
import type { LogView } from './log-view.ts';

const MODES: Readonly<Record<SweepView['mode'], string>> = {
  red: 'red alone',
  nearInfrared: 'near-infrared alone',
  combined: 'both channels',
};

/** A sweep over the face, or a grid in one go. */
export function sweepLog(view: SweepView): Omit<LogView, 'id'> {
  return {
    heading: `${view.grid ? 'Grid in one go' : 'Sweep over the face'}, ${MODES[view.mode]}`,
    short: view.grid ? 'grid' : 'sweep',
    answer: view.grid ? gridAnswer(view.grid) : sweepAnswer(view),
    method: { id: 'sweep', text: 'How a sweep is read' },
    plot: plot(view),
    caption: view.grid
      ? 'Bars: held still; numbers: in the order of the sensor’s way.'
      : `Bars: held still.${view.sweep.spikes.length > 0 ? ' Crosses: spikes of one sample.' : ''}`,
    ...tableOf(view),
  };
}

function sweepAnswer({ sweep, givesPeak, distance }: SweepView): string {
  const { steadyMaximum, maximum, spikes, percentile99 } = sweep;
  const highest = `The brightest place reads ${rounded(steadyMaximum.value)} mW/cm²`;
  const spiked =
    maximum > steadyMaximum.value
      ? `; ${spikes.length === 1 ? 'a spike of one sample' : `${spikes.length} spikes of one sample`} up to ${rounded(maximum)} mW/cm² left aside`
      : '';
  const rest = ` 99 of 100 moments of the sweep lie under ${rounded(percentile99)} mW/cm².`;
  return `${highest}${spiked}.${rest}${givesPeak ? '' : ` Read at ${rounded(distance)} cm, it gives no peak.`}`;
}

function gridAnswer({ points, found, wanted, left }: NonNullable<SweepView['grid']>): string {
  if (!points) {
    return `The sensor was held still ${found.length} times; the grid has ${wanted} points. Which are the points can’t be told.`;
  }
  const more = left.length > 0 ? ` ${left.length} shorter stop${left.length === 1 ? '' : 's'} left aside.` : '';
  return `All ${wanted} points of the grid are found in the log.${more} The figures rest on the grid as it was typed.`;
}

function tableOf({ grid, hovers }: SweepView): Pick<LogView, 'table'> {
  const all = grid?.points ?? grid?.found ?? hovers;
  if (all.length === 0) return {};
  return {
    table: {
      summary: grid ? 'The points' : 'Where the sensor was held still',
      head: ['From, s', 'To, s', 'Mean, mW/cm²', 'Scatter', 'Readings'],
      rows: all.map(({ from, to, mean, deviation, samples }) => [
        fixed(from, 1),
        fixed(to, 1),
        `${rounded(mean)}`,
        `${rounded(deviation, 2)}`,
        `${samples}`,
      ]),
    },
  };
}

function plot({ sweep, hovers, series, grid, mode }: SweepView): FilePlot {
  const { x, y, area } = logAxes([0, sweep.length], [0, sweep.maximum]);
  const bars = grid?.points ?? grid?.found ?? hovers;
  return {
    ...area,
    xName: 'time, s',
    yName: 'mW/cm²',
    curves: [{ path: logPath(series, x.place, y.place), kind: 'main' }],
    levels: bars.map(({ from, to, mean }, i) => ({
      x1: x.place(from),
      x2: x.place(to),
      y: y.place(mean),
      kind: 'hover',
      ...(grid && { text: `${i + 1}`, textX: (x.place(from) + x.place(to)) / 2 }),
    })),
    uprights: [],
    tops: [],
    spikes: sweep.spikes.map((it) => ({ x: x.place(it.time), y: y.place(it.value) })),
    texts: [],
    description: `Irradiance against time, ${MODES[mode]}, ${timeWords(Math.round(sweep.length))}: up to ${rounded(sweep.maximum)} mW/cm²${grid ? `, held still at ${bars.length} places` : ''}`,
  };
}
