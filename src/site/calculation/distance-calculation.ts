import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { type DistanceQuantity, distanceMetric, TABLE_DISTANCES } from '../../measure/beam/table-distances.ts';
import { type ErrorSource, type Figure, isFigure } from '../../measure/figure.ts';
import { metricById } from '../../measure/metrics.ts';
import { methodOf, type Shown, showFigure } from '../../words/format.ts';
import { say } from '../../words/say.ts';
import { twoDigits } from '../../words/two-digits.ts';
import { calculationAnchor } from '../shared/shown-figure.ts';
import { errorNames } from './error-names.ts';

/** One modelled value of the table by distance. */
export interface DistanceFigure {
  anchor: string;
  datedAnchor: string;
  name: string;
  id: string;
  shown: Shown;
}

/** The calculation of all values of the table by distance: they share model, notes and inputs. */
export interface DistanceCalculation {
  figures: DistanceFigure[];
  method: string;
  version: number;
  inputs: string[];
  notes: string[];
  unassessed: Figure['unassessed'];
  /** `15 cm` */
  heads: string[];
  /** For each quantity what each error makes of it at each distance, %. */
  budgets: Array<{ name: string; lines: Array<{ source: string; shares: string[] }> }>;
}

const QUANTITIES: ReadonlyArray<readonly [DistanceQuantity, string]> = [
  ['mean-irradiance', 'Mean irradiance'],
  ['peak-irradiance', 'Peak irradiance'],
  ['uniformity-lowest', 'Lowest place over mean'],
];

/** The calculation of a session's table by distance; undefined where there is none. */
export function distanceCalculation(
  panel: PanelEntry,
  session: SessionEntry,
  currency: string,
): DistanceCalculation | undefined {
  const at = (quantity: DistanceQuantity): Figure[] =>
    TABLE_DISTANCES.flatMap((distance) => {
      const it = session.figures.get(distanceMetric(quantity, distance));
      return isFigure(it) ? [it] : [];
    });
  const first = at('mean-irradiance')[0];
  if (!first) return undefined;
  const figures = QUANTITIES.flatMap(([quantity]) => at(quantity));
  return {
    figures: figures.map((figure) => {
      return {
        anchor: calculationAnchor(figure.metric, session, panel.current),
        datedAnchor: `${figure.metric}-${session.date}`,
        name: metricById(figure.metric).name,
        id: figure.id,
        shown: showFigure(figure, currency),
      };
    }),
    method: methodOf(first).address,
    version: methodOf(first).version,
    inputs: first.inputs,
    notes: first.notes.map(say),
    unassessed: first.unassessed,
    heads: TABLE_DISTANCES.map((distance) => `${distance} cm`),
    budgets: QUANTITIES.map(([quantity, name]) => ({ name, lines: shares(at(quantity)) })),
  };
}

/** Each error's part in some figures, %, in the order of the first budget that has it. */
function shares(figures: readonly Figure[]): Array<{ source: string; shares: string[] }> {
  const rows = figures.map((it) => new Map(it.budget.map((one) => [rowOf(one.source), one])));
  const components = new Map(rows.flatMap((it) => [...it]));
  const names = errorNames({ budget: [...components.values()] });
  return [...components.keys()].map((row, i) => ({
    source: names[i] ?? row,
    shares: figures.map(({ value }, of) => {
      const own = rows[of]?.get(row);
      return own ? twoDigits(Math.abs((100 * own.contribution) / value)) : '0';
    }),
  }));
}

/** The row of an error. What the simulation leaves is each figure's own, and one row for all. */
const rowOf = ({ key, what }: ErrorSource) => (what.code === 'beam-rest' ? what.code : key);
