import type { FigureMap } from '../../measure/figure.ts';
import { type FiguresById, figuresById } from './linked-equation.ts';
import type { Referable, ShortBudget } from './short-budget.ts';

/** A figure that the page tells, so far as others refer to it. */
interface Tellable extends Referable {
  id: string;
  methodAddress: string;
  short: ShortBudget;
  inputs: readonly WithId[];
}

interface WithId {
  id: string;
}

/** What a figure of a session may refer to; kept by what it is looked for by, since pages have dozens of figures. */
export interface Told<It extends Tellable> {
  /** All figures of the session, told or not. */
  own: FiguresById;
  /** Those that the page tells before it, in their order, and by their ids. */
  figures: It[];
  byId: Map<string, It>;
  /** The first of those that have the same list of inputs. */
  byInputs: Map<string, It>;
  /** Those with a budget of their own, by their method's page. */
  byMethod: Map<string, It[]>;
  newer: NewerFigures;
}

/** Figures of newer sessions, by their metric. */
export type NewerFigures = ReadonlyMap<string, readonly Referable[]>;

/** A session of which nothing is told yet. */
export const nothingTold = <It extends Tellable>(figures: FigureMap, newer: NewerFigures): Told<It> => ({
  own: figuresById(figures),
  figures: [],
  byId: new Map(),
  byInputs: new Map(),
  byMethod: new Map(),
  newer,
});

/** Notes that a figure has been told. */
export function tell<It extends Tellable>({ figures, byId, byInputs, byMethod }: Told<It>, it: It): void {
  figures.push(it);
  byId.set(it.id, it);
  const inputs = idsOf(it.inputs);
  if (!byInputs.has(inputs)) byInputs.set(inputs, it);
  if (it.short.as.length === 0) addTo(byMethod, it.methodAddress, it);
}

/** Adds something to one of many lists. */
export function addTo<It>(lists: Map<string, It[]>, key: string, it: It): void {
  const known = lists.get(key);
  if (known) known.push(it);
  else lists.set(key, [it]);
}

/** What a list of inputs is known by. */
export const idsOf = (inputs: readonly WithId[]): string => inputs.map(({ id }) => id).join();
