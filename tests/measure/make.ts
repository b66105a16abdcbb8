import type { BudgetComponent, ErrorSource, Figure, FigureMap, FigureOrGap, Unit } from '../../src/measure/figure.ts';
import { isFigure } from '../../src/measure/figure.ts';
import type { AngularResponse } from '../../src/measure/instrument/angular-response.ts';
import { type Instrument, NO_INSTRUMENT } from '../../src/measure/instrument/instrument.ts';
import type { GridReadings } from '../../src/measure/irradiance/grid.ts';
import type { MethodId } from '../../src/measure/method-versions.ts';
import type { MetricId } from '../../src/measure/metrics.ts';
import { type Statement, verbatim } from '../../src/measure/statement.ts';
import { makeFigure } from '../../src/measure/uncertainty.ts';
import { equationText, say } from '../../src/words/say.ts';

/** Settings of every property test: the same cases in each run. */
export const RUNS = { seed: 152_400, numRuns: 200 } as const;

/** An instrument without any error, save for what is given. */
export function instrument(part: Partial<Instrument> = {}): Instrument {
  return {
    id: 'irradiance-meter',
    name: 'irradiance meter',
    calibrationDate: '2026-01-10',
    calibrationRelative: 0,
    calibrationAbsolute: 0,
    calibrationStated: { relative: 5, absolute: 0, unit: 'mW/cm2', coverageFactor: 2 },
    resolution: 0,
    spectralResponse: { red: 0, nearInfrared: 0 },
    angularResponse: slanted(0),
    repeatability: 0,
    ...part,
  };
}

/** An angular response that misreads light from every angle alike, so that no shape of it matters to a test. */
export function slanted(error: number): AngularResponse {
  return {
    kind: 'angles',
    points: [
      { angle: 1e-9, error },
      { angle: 90, error },
    ],
  };
}

/** A component of a budget: normal and of type B, save for what is given. */
export function line(key: string, contribution: number, part: Partial<ErrorSource> = {}): BudgetComponent {
  return {
    source: {
      key,
      what: verbatim(key),
      type: 'B',
      distribution: 'normal',
      degreesOfFreedom: Number.POSITIVE_INFINITY,
      evaluation: verbatim('for a test'),
      ...part,
    },
    contribution,
  };
}

/** A metric by a name that a test has for it; of some the catalogue knows nothing. */
export function metricNamed(name: string): MetricId {
  return name as MetricId;
}

/** Figures and gaps by the names of their metrics. */
export function figureMap(figures: Readonly<Record<string, FigureOrGap | undefined>>): FigureMap {
  return new Map(Object.entries(figures).flatMap(([name, it]) => (it ? [[metricNamed(name), it] as const] : [])));
}

const methodNamed = (name: string): MethodId => name as MethodId;

/** What a figure in a test is called. */
export function identity(name = 'optical-power', unit: Unit = 'W') {
  const metric = metricNamed(name);
  const method = { id: methodNamed(name), version: 1 };
  return { id: `test/${name}`, metric, unit, basis: 'measured' as const, method, inputs: [] };
}

/** A figure with a budget; exact without one. */
export function figure(
  value: number,
  budget: BudgetComponent[] = [],
  metric = 'optical-power',
  unit: Unit = 'W',
): Figure {
  return makeFigure(identity(metric, unit), value, { budget });
}

/** A figure whose uncertainty is not known. */
export function vague(value: number, absent: Statement | string = NO_INSTRUMENT, metric = 'optical-power'): Figure {
  return makeFigure(identity(metric), value, { absent: typeof absent === 'string' ? verbatim(absent) : absent });
}

/** The figure, where there is one; a gap fails the test. */
export function figureOf(it: FigureOrGap | undefined): Figure {
  if (!isFigure(it)) throw new Error(`no figure: ${it ? say(it.reason) : 'undefined'}`);
  return it;
}

/** The component of a budget whose key ends so; fails where it is missing or not the only one. */
export function componentOf(it: Figure, ending: string): BudgetComponent {
  const found = it.budget.filter((entry) => entry.source.key.endsWith(ending));
  if (found.length !== 1) throw new Error(`${found.length} components end in "${ending}"`);
  return found[0] as BudgetComponent;
}

/** A grid of single readings at 15 cm, the distance set exactly. */
export function gridOf(rows: readonly (readonly number[])[], part: Partial<GridReadings> = {}): GridReadings {
  return {
    points: rows.map((row) => row.map((value) => [value])),
    session: 'lantern-40/2026-03-02',
    instrument: instrument(),
    distance: { distance: 15, halfWidth: 0, area: undefined },
    ...part,
  };
}

/** A statement or an equation in words; nothing where there is none. */
export function told(it: Statement | string | undefined): string {
  return it === undefined ? '' : equationText(it);
}
