/** What the pad tells of a run, in words: what the check would refuse, what looks wrong, what to read next. No DOM. */
import { isFigure } from '../../../../measure/figure.ts';
import type { MetricId } from '../../../../measure/metrics.ts';
import { figureWords } from '../../../../words/figure-words.ts';
import { say } from '../../../../words/say.ts';
import type { Advice } from '../advice.ts';
import type { RunProblem, WorkedRun } from '../worked-run.ts';

/** One thing that is told, with the entries that it is about. */
export interface Told {
  /** Stays the same while it is told of the same entries. */
  key: string;
  text: string;
  ids: readonly number[];
  path?: string | undefined;
  /** Where it is, for what has no place on the pad. */
  field?: string;
  /** The check would refuse it, so that it can't be accepted. */
  isRefused: boolean;
  /** It looks wrong: the tester repeats, accepts or strikes. */
  isOdd: boolean;
}

const sentence = (text: string) => {
  const upper = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.?!]$/.test(upper) ? upper : `${upper}.`;
};

const ofProblem = ({ path, field, found, wanted, hint }: RunProblem, ids: readonly number[]): Told => ({
  key: `${field} ${found}`,
  text: [`${found}; wanted: ${wanted}.`, ...(hint ? [sentence(hint)] : [])].join(' '),
  field: path ?? field,
  isRefused: true,
  ids,
  path,
  isOdd: true,
});

const ofAdvice = ({ severity, check, finding, hint, path, ids }: Advice): Told => ({
  key: `${check} ${ids.join(' ')} ${say(finding)}`,
  text: [sentence(say(finding)), ...(hint ? [sentence(say(hint))] : [])].join(' '),
  ids,
  path,
  isRefused: false,
  isOdd: severity === 'doubt' || severity === 'impossible',
});

/** All that is told of a run: what looks wrong first, the newest entries' before others'. */
export function toldOf({ problems, advice }: WorkedRun, idsAt: (path: string) => readonly number[]): Told[] {
  const all = [
    ...problems.map((it) => ofProblem(it, it.path === undefined ? [] : idsAt(it.path))),
    ...advice.map(ofAdvice),
  ];
  const newest = ({ ids }: Told) => Math.max(0, ...ids);
  return all.toSorted((a, b) => Number(b.isOdd) - Number(a.isOdd) || (a.isOdd ? newest(b) - newest(a) : 0));
}

/** Figures that the pad shows, in this order; those of the first kind with the reason where they are missing. */
export const SHOWN: ReadonlyArray<{ metric: MetricId; name: string; isAsked: boolean }> = [
  { metric: 'mean-irradiance', name: 'Mean of the grid', isAsked: true },
  { metric: 'optical-power', name: 'Power through the field', isAsked: true },
  { metric: 'price-per-watt', name: 'A watt of light', isAsked: true },
  { metric: 'efficiency-combined', name: 'Efficiency', isAsked: true },
  { metric: 'uniformity-lowest', name: 'Lowest point', isAsked: false },
  { metric: 'uniformity-variation', name: 'Spread of the points', isAsked: false },
  { metric: 'peak-irradiance-combined', name: 'Peak', isAsked: false },
  { metric: 'peak-to-mean', name: 'Peak to mean', isAsked: false },
  { metric: 'emitted-power', name: 'Light that leaves the LEDs', isAsked: false },
  { metric: 'price-per-emitted-watt', name: 'A watt that leaves the LEDs', isAsked: false },
  { metric: 'beam-half-angle', name: 'Half angle of the beam', isAsked: false },
  { metric: 'sampling-bias', name: 'What the grid misses', isAsked: false },
];

/** The running mean in one line; empty before the first reading of the grid. */
export function meanLine({ session, grid }: WorkedRun, currency: string): string {
  const figure = session?.figures.get('mean-irradiance');
  if (grid.read === 0 || !isFigure(figure)) return '';
  const { shown, absent } = figureWords(figure, { currency, say });
  const points = grid.read === grid.of ? `all ${grid.of} points` : `${grid.read} of ${grid.of} points`;
  return `Mean of ${points}: ${shown?.text ?? ''}${absent ? ` (± not known: ${absent})` : ''}`;
}
