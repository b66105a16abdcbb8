import type { BudgetComponent, Figure } from '../../measure/figure.ts';
import { METRICS } from '../../measure/metrics.ts';
import type { Statement } from '../../measure/statement.ts';
import { nameOf } from '../../words/names.ts';
import { say } from '../../words/say.ts';

/** What an error is called in a budget, where the session's table says the rest. */
const SHORT: Partial<Record<Statement['code'], string>> = {
  calibration: 'calibration',
  offset: 'offset',
  resolution: 'resolution',
  repeatability: 'repeatability',
  'repeats-at-a-point': 'repeats',
  'angular-response': 'oblique light',
  'distance-setting': 'distance',
  'beam-light-edge': 'edge of the light',
  'beam-rest': 'rest',
};

function shortName({ key, what }: BudgetComponent['source']): string {
  if (what.code === 'spectral-response')
    return `${what.band === 'nearInfrared' ? 'near-infrared' : what.band} response`;
  if (what.code === 'edge-setting') return what.side;
  if (what.code === 'beam-shape') return `beam ${/\d+$/.exec(key)?.[0] ?? ''}`.trim();
  return SHORT[what.code] ?? say(what).toLowerCase();
}

const METRIC_IDS: ReadonlySet<string> = new Set(METRICS.map((it) => it.id));

/** Of which reading an error is, by its key: that of one figure, that of the grid; else the instrument. */
function bearer({ key, what }: BudgetComponent['source']): string {
  const reading = key.split('/').at(-2) ?? '';
  if (METRIC_IDS.has(reading)) return nameOf(reading).replace(/, (.*)$/, ' ($1)');
  return 'instrument' in what && key.includes('@') ? String(what.instrument) : reading;
}

/** A short name for each error of a figure's budget; those of one kind are told apart by their reading. */
export function errorNames({ budget }: Pick<Figure, 'budget'>): string[] {
  const names = budget.map(({ source }) => shortName(source));
  return names.map((name, i) => {
    const source = budget[i]?.source;
    return source && names.indexOf(name) !== names.lastIndexOf(name) ? `${name} of ${bearer(source)}` : name;
  });
}
