import type { MethodReference } from './method-versions.ts';
import type { MetricId, Unit } from './metrics.ts';
import type { Statement } from './statement.ts';

export type { Unit };

/** Where a figure comes from: read off an instrument, calculated from readings, from a model, or from the maker. */
export type Basis = 'measured' | 'derived' | 'modelled' | 'claimed';

/**
 * A bound that a reading carries. "Below 0.1 µT" stays a bound through the calculation: it is neither
 * 0.1 µT nor zero.
 */
export type Bound = 'below' | 'above';

/** An error that figures have, whichever they are and however much they have of it. */
export interface ErrorSource {
  /**
   * Names the error. Sources with one key, in whatever figure of whatever panel, are the same error: the calibration
   * of an instrument moves all that it read, so it cancels in ratios and in the order of panels.
   */
  key: string;
  /** What it is: the calibration of the irradiance instrument. */
  what: Statement;
  /** Type A: from the scatter of repeated readings. Type B: from anything else (JCGM 100:2008, 4.2 and 4.3). */
  type: 'A' | 'B';
  /** What the error is drawn from in a simulation (JCGM 101:2008, 6.4). */
  distribution: 'normal' | 'rectangular' | 't';
  /** Degrees of freedom; Infinity for a type B value taken as exactly known. */
  degreesOfFreedom: number;
  /** How the value was come by: stated as 5 % at k = 2, normal. */
  evaluation: Statement;
}

/** One component of an uncertainty budget: an error, and how much of it one figure has. */
export interface BudgetComponent {
  source: ErrorSource;
  /**
   * Contribution to the figure's standard uncertainty, in the figure's unit. Signed: negative where the figure
   * falls as the error grows, so that one error met twice adds or cancels as it should.
   */
  contribution: number;
}

/** Why a possible uncertainty is not in the budget; shown beside it, so that nothing is left out in silence. */
export interface Unassessed {
  what: Statement;
  reason: Statement;
}

/** Something odd about a figure, said in words beside it. A flag never changes a value. */
export interface Flag {
  /** The check that raised it: `efficiency-possible`. */
  check: string;
  severity: 'note' | 'doubt' | 'impossible';
  /** What was found, with the numbers in it. */
  finding: Statement;
  /** Metrics of the figures that it concerns. */
  concerns: readonly MetricId[];
  /** For the tester, not for readers: what to write instead. */
  hint?: Statement;
  /**
   * Where the tester should look: keys from the top of the panel's file, of which a first `session` stands for the
   * session that was checked. Left out where the readings behind the first figure concerned say it.
   */
  at?: readonly PropertyKey[];
  /**
   * What it concerns is all that it reaches: it is not handed on to what is made of that. So it is with a calibration
   * that has run out, which cancels in some figures made of the instrument's readings.
   */
  isNotHandedOn?: true;
  /** On a figure that it was handed on to: metric id of the figure that it concerns, of which this one is made. */
  from?: MetricId;
}

/** That a figure rests on readings which were not taken again, and stand for a session later than their own. */
export interface CarriedOver {
  /** Days of the sessions in which they were taken, `YYYY-MM-DD`, the earliest first. */
  from: readonly string[];
  /** All readings behind it are from there; else it is made of old and new ones. */
  isWhole: boolean;
}

/** Every number that the guide shows. Immutable; made by `makeFigure` and `propagate` in uncertainty.ts. */
export interface Figure {
  /** Stable for ever: `<panel>/<session date>/<metric>`. */
  id: string;
  /** The metric's id without panel and session: `optical-power`, `efficiency-red`. */
  metric: MetricId;
  value: number;
  unit: Unit;
  /** The reading was a bound, and so is the figure. */
  bound?: Bound;
  /** Null: not known, and `uncertaintyAbsent` says why. */
  standardUncertainty: number | null;
  /** The 95 % coverage interval; null with the standard uncertainty. */
  interval95: readonly [number, number] | null;
  /** Coverage factor used for the interval, and the effective degrees of freedom behind it. */
  coverageFactor: number | null;
  degreesOfFreedom: number | null;
  uncertaintyAbsent?: Statement;
  basis: Basis;
  /** The method and its version. */
  method: MethodReference;
  /** Ids of figures and paths of readings that went in. */
  inputs: string[];
  budget: BudgetComponent[];
  unassessed: Unassessed[];
  /**
   * The formula with this panel's numbers put in: notation as a string, and as a statement where words belong to it;
   * absent for plain readings.
   */
  calculation?: string | Statement;
  /** Plain notes on how the figure came about (a reading was rejected). */
  notes: Statement[];
  flags: Flag[];
  /** Rests on readings of an earlier session, which were not taken again. */
  carriedOver?: CarriedOver;
}

/** A figure that could not be had, and why. It never becomes a zero or an empty cell. */
export interface Gap {
  gap: true;
  metric: MetricId;
  /** Short enough for a table cell: "not measured". */
  reason: Statement;
}

export type FigureOrGap = Figure | Gap;

/** True for a figure, false for a stated gap. */
export function isFigure(it: FigureOrGap | undefined): it is Figure {
  // Not by `in`, which takes an engine long where there are objects of many shapes; this is asked millions of times.
  return it !== undefined && (it as Partial<Gap>).gap !== true;
}

/** A stated gap. */
export function gap(metric: MetricId, reason: Statement): Gap {
  return { gap: true, metric, reason };
}

/** Figures and gaps by their metric. */
export type FigureMap = ReadonlyMap<MetricId, FigureOrGap>;

/** Looks figures up by their metric; a gap is none. */
export function figureFinder(figures: FigureMap): (metric: MetricId) => Figure | undefined {
  return (metric) => {
    const it = figures.get(metric);
    return isFigure(it) ? it : undefined;
  };
}

/** Contributions smaller than this share of the whole have cancelled. */
const NEGLIGIBLE = 1e-9;

/** True where what the inputs share has cancelled in the figure: only what floating point leaves of it is there. */
export function hasCancelled(figure: Figure, component: BudgetComponent): boolean {
  return Math.abs(component.contribution) < NEGLIGIBLE * (figure.standardUncertainty ?? 0);
}
