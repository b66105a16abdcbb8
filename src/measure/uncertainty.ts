import { carriedTogether } from './carried-over.ts';
import type { BudgetComponent, ErrorSource, Figure, Unassessed } from './figure.ts';
import { handedOn } from './handed-on.ts';
import { type Statement, statementKey } from './statement.ts';
import { student975 } from './student-t.ts';

declare module './statement.ts' {
  interface StatementData {
    'input-uncertainty-not-known': object;
    /** What a figure is divided by may be nought, so that there is no highest value. */
    'divisor-reaches-nought': object;
  }
}

/** Standard uncertainty of a value known to lie within +-a with equal chance: a / sqrt 3 (JCGM 100:2008, 4.3.7). */
export function rectangular(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}

/** An error known from the scatter of repeated readings (JCGM 100:2008, 4.2): as sure as the repeats are many. */
export function typeA(
  { key, what, evaluation }: Pick<ErrorSource, 'key' | 'what' | 'evaluation'>,
  { degreesOfFreedom }: { degreesOfFreedom: number },
): ErrorSource {
  return { key, what, type: 'A', distribution: 't', degreesOfFreedom, evaluation };
}

/** An error known from anything else (JCGM 100:2008, 4.3), its size taken as exact. */
export function typeB({
  key,
  what,
  distribution,
  evaluation,
}: Pick<ErrorSource, 'key' | 'what' | 'evaluation'> & { distribution: 'normal' | 'rectangular' }): ErrorSource {
  return { key, what, type: 'B', distribution, degreesOfFreedom: Number.POSITIVE_INFINITY, evaluation };
}

/**
 * Combined standard uncertainty of independent contributions: the root of the sum of squares
 * (JCGM 100:2008, 5.1.2). Contributions are in one unit; the result is in it too.
 */
export function combinedUncertainty(contributions: readonly number[]): number {
  return Math.hypot(...contributions);
}

/** What of a budget component its degrees of freedom follow from. */
export interface DegreesPart {
  contribution: number;
  source: Pick<ErrorSource, 'degreesOfFreedom'>;
}

/**
 * Effective degrees of freedom, Welch-Satterthwaite (JCGM 100:2008, G.4.1, G.2b), rounded down to a whole
 * number as G.4.1 asks; Infinity where no contribution is of type A.
 */
export function effectiveDegreesOfFreedom(parts: readonly DegreesPart[]): number {
  return wholeDegrees(exactDegreesOfFreedom(parts));
}

/**
 * The same before it is rounded down, for parts that are put together as one and go into another sum: rounded twice, the
 * whole would be less than the sum of its parts.
 */
export function exactDegreesOfFreedom(parts: readonly DegreesPart[]): number {
  return degreesWithin(combinedUncertainty(parts.map((part) => part.contribution)), parts);
}

/** @param u what the parts come to together */
function degreesWithin(u: number, parts: readonly DegreesPart[]): number {
  if (u === 0) return Number.POSITIVE_INFINITY;
  let sum = 0;
  for (const part of parts) sum += (part.contribution / u) ** 4 / part.source.degreesOfFreedom;
  return 1 / sum;
}

/**
 * Effective degrees of freedom from sums that are there already.
 *
 * @param squares sum of the squares of the contributions
 * @param fourths sum of their fourth powers, each over its degrees of freedom
 */
export function degreesOfFreedomFrom(squares: number, fourths: number): number {
  return wholeDegrees(fourths === 0 ? Number.POSITIVE_INFINITY : squares ** 2 / fourths);
}

/** A hair below a whole number is that number: two equal parts with 8 each give 16, not 15. */
function wholeDegrees(exact: number): number {
  return Number.isFinite(exact) ? Math.max(1, Math.floor(exact + 1e-9)) : exact;
}

/** Coverage factor for 95 %: t(0.975, nu) (JCGM 100:2008, G.3); 1.96 for infinitely many. */
export function coverageFactor(degreesOfFreedom: number): number {
  return student975(degreesOfFreedom);
}

/** What a figure is, apart from its numbers. */
export type FigureIdentity = Pick<Figure, 'id' | 'metric' | 'unit' | 'basis' | 'method' | 'inputs'> &
  Partial<Pick<Figure, 'bound' | 'calculation' | 'notes'>> & {
    /** Physical end of the scale; an interval is cut there. Left out: 0. */
    lowest?: number;
  };

/** What is known of a figure's uncertainty: a budget, or the reason why there is none. */
export type UncertaintyKnowledge = { budget: BudgetComponent[]; unassessed?: Unassessed[] } | { absent: Statement };

/**
 * Makes a figure from its value and budget: combined standard uncertainty, effective degrees of freedom,
 * coverage factor and 95 % interval follow from the budget. An empty budget means exact.
 */
export function makeFigure(identity: FigureIdentity, value: number, knowledge: UncertaintyKnowledge): Figure {
  const { lowest = 0, bound, calculation } = identity;
  const budget = 'absent' in knowledge ? [] : knowledge.budget;
  const figure: Figure = {
    id: identity.id,
    metric: identity.metric,
    value,
    unit: identity.unit,
    standardUncertainty: null,
    interval95: null,
    coverageFactor: null,
    degreesOfFreedom: null,
    basis: identity.basis,
    method: identity.method,
    inputs: identity.inputs,
    budget,
    unassessed: ('absent' in knowledge ? undefined : knowledge.unassessed) ?? [],
    notes: identity.notes ?? [],
    flags: [],
  };
  if (bound !== undefined) figure.bound = bound;
  if (calculation !== undefined) figure.calculation = calculation;
  if ('absent' in knowledge) {
    figure.uncertaintyAbsent = knowledge.absent;
    return figure;
  }
  const u = combinedUncertainty(budget.map((it) => it.contribution));
  const degreesOfFreedom = wholeDegrees(degreesWithin(u, budget));
  const k = coverageFactor(degreesOfFreedom);
  figure.standardUncertainty = u;
  figure.interval95 = [Math.max(Math.min(lowest, value), value - k * u), value + k * u];
  figure.coverageFactor = k;
  figure.degreesOfFreedom = degreesOfFreedom;
  return figure;
}

/** One input of a calculation and how far the result moves when it moves by one. */
export interface Term {
  figure: Figure;
  sensitivity: number;
}

/**
 * Law of propagation of uncertainty (JCGM 100:2008, 5.1.2 and, for errors that inputs share, 5.2.2): every
 * component of every input's budget is carried over times its sensitivity; components with one key are one error and are added
 * with their signs before anything is squared.
 *
 * An input without a known uncertainty makes the result's unknown too, with the reason handed on. So are doubts about
 * the inputs, and that they rest on readings of an earlier session.
 */
export function propagate(identity: Omit<FigureIdentity, 'inputs'>, value: number, terms: readonly Term[]): Figure {
  const inputs = terms.map((term) => term.figure.id);
  const notes = distinct([identity.notes ?? [], ...terms.map((term) => term.figure.notes)], statementKey);
  const bound = identity.bound ?? boundOf(terms);
  const whole = { ...identity, inputs, notes, ...(bound && { bound }) };

  const figure = makeFigure(whole, value, propagatedKnowledge(terms));
  figure.flags = handedOn(terms.map((term) => term.figure));
  const carriedOver = carriedTogether(terms.map((term) => term.figure));
  if (carriedOver) figure.carriedOver = carriedOver;
  return figure;
}

function propagatedKnowledge(terms: readonly Term[]): UncertaintyKnowledge {
  const unknown = terms.find((term) => term.figure.standardUncertainty === null);
  if (unknown) return { absent: unknown.figure.uncertaintyAbsent ?? { code: 'input-uncertainty-not-known' } };
  const unassessed = distinct(
    terms.map((term) => term.figure.unassessed),
    (it) => statementKey(it.what) + statementKey(it.reason),
  );
  return { budget: propagatedBudget(terms), unassessed };
}

function propagatedBudget(terms: readonly Term[]): BudgetComponent[] {
  const budget: BudgetComponent[] = [];
  const places = new Map<string, BudgetComponent>();
  for (const { figure, sensitivity } of terms) {
    for (const { source, contribution } of figure.budget) {
      const known = places.get(source.key);
      if (known) known.contribution += sensitivity * contribution;
      else {
        const own = { source, contribution: sensitivity * contribution };
        places.set(source.key, own);
        budget.push(own);
      }
    }
  }
  return budget;
}

/** What several lists hold, in their order, each only once. */
function distinct<T>(lists: ReadonlyArray<readonly T[]>, name: (it: T) => string): T[] {
  // Names take time to make, and most figures have none or one of what is asked for.
  const all = [...new Set(lists.flat())];
  if (all.length < 2) return all;
  return [...new Map(all.map((it) => [name(it), it])).values()];
}

/** A bound stays a bound as long as every bounded input pushes the same way; otherwise the result is no bound. */
function boundOf(terms: readonly Term[]): Figure['bound'] {
  if (!terms.some((term) => term.figure.bound)) return undefined;
  const directions = new Set(
    terms
      .filter((term) => term.figure.bound && term.sensitivity !== 0)
      .map((term) => (term.sensitivity > 0 === (term.figure.bound === 'below') ? 'below' : 'above')),
  );
  return directions.size === 1 ? ([...directions][0] as Figure['bound']) : undefined;
}

/**
 * A product of powers, y = factor * x1^p1 * x2^p2 ..., with its uncertainty by the relative rule
 * (JCGM 100:2008, 5.1.6). Inputs must not be zero where their power is negative.
 */
export function productFigure(
  identity: Omit<FigureIdentity, 'inputs'>,
  factors: ReadonlyArray<{ figure: Figure; power: number }>,
  factor = 1,
): Figure {
  let value = factor;
  for (const { figure, power } of factors) value *= figure.value ** power;
  const terms = factors.map(({ figure, power }, index) => {
    // Written without dividing by x, so that a product with a zero factor keeps a finite sensitivity.
    let sensitivity = factor * power * figure.value ** (power - 1);
    factors.forEach((other, at) => {
      if (at !== index) sensitivity *= other.figure.value ** other.power;
    });
    return { figure, sensitivity };
  });
  return propagate(identity, value, terms);
}

/** A sum with coefficients, y = c1 x1 + c2 x2 ..., with its uncertainty (JCGM 100:2008, 5.1.2 and 5.2.2). */
export function linearFigure(identity: Omit<FigureIdentity, 'inputs'>, terms: readonly Term[]): Figure {
  const value = terms.reduce((sum, term) => sum + term.sensitivity * term.figure.value, 0);
  return propagate(identity, value, terms);
}

/** A figure with a standard uncertainty and an interval that were found otherwise than from its budget. */
export function withInterval(
  figure: Figure,
  standardUncertainty: number,
  interval95: readonly [number, number],
): Figure {
  return {
    ...figure,
    standardUncertainty,
    interval95,
    coverageFactor: standardUncertainty > 0 ? (interval95[1] - interval95[0]) / (2 * standardUncertainty) : null,
  };
}

/** A figure of which only the value can be told. */
export function withoutInterval(figure: Figure, why: Statement): Figure {
  return {
    ...figure,
    standardUncertainty: null,
    interval95: null,
    coverageFactor: null,
    degreesOfFreedom: null,
    budget: [],
    uncertaintyAbsent: why,
  };
}

/**
 * An exact number over a figure, y = c / x. The standard uncertainty is of first order (JCGM 100:2008, 5.1.6); the 95 %
 * interval is that of x turned round, since y falls wherever x grows (JCGM 101:2008, 7.7, has the same ends). First
 * order would put both ends too low by as large a part of the half width as this is of the value: for 300 EUR and
 * 10 W +- 9 W it gives 3 to 57 EUR/W, where 1 W to 19 W make it 16 to 300 EUR/W. None where x's interval reaches nought.
 */
export function exactOver(identity: Omit<FigureIdentity, 'inputs'>, exact: Figure | number, below: Figure): Figure {
  const isNumber = typeof exact === 'number';
  const figure = productFigure(
    identity,
    [...(isNumber ? [] : [{ figure: exact, power: 1 }]), { figure: below, power: -1 }],
    isNumber ? exact : 1,
  );
  const u = figure.standardUncertainty;
  const isExact = isNumber || exact.standardUncertainty === 0;
  if (u === null || u === 0 || !isExact || !below.interval95) return figure;
  const [low, high] = below.interval95;
  if (low > 0) {
    const number = isNumber ? exact : exact.value;
    return withInterval(figure, u, [number / high, number / low]);
  }
  return withoutInterval(figure, { code: 'divisor-reaches-nought' });
}
