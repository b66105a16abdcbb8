import equal from 'fast-deep-equal';
import { type BudgetComponent, type ErrorSource, type Figure, type FigureOrGap, isFigure } from '../measure/figure.ts';
import type { SinglePanel } from './panel-entry.ts';

/** What figures without any have for their notes, flags and errors that are not assessed. */
const NONE: never[] = [];
Object.freeze(NONE);

const ANYTHING = /^./;

/** The engine keeps a text that was put together as its many parts, until somebody searches it. */
function whole(text: string): string {
  ANYTHING.test(text);
  return text;
}

/**
 * Has the figures of a panel take less room, and say the same: they are what a guide of a thousand panels has in memory.
 * Every figure is made with error sources of its own, most of which are the same few again.
 */
export function compactFigures({ figures, sessions, prices }: SinglePanel): void {
  const known = new Map<string, ErrorSource[]>();
  const shared = new WeakMap<ErrorSource, ErrorSource>();
  const texts = new Map<string, string>();
  const budgets = new WeakMap<BudgetComponent[], BudgetComponent[]>();

  const text = (it: string): string => {
    const before = texts.get(it);
    if (before !== undefined) return before;
    texts.set(it, whole(it));
    return it;
  };
  const sharedSource = (source: ErrorSource): ErrorSource => {
    const before = shared.get(source);
    if (before) return before;
    const alike = known.get(source.key) ?? [];
    // Two figures may have an error by one key and evaluate it in different words.
    const found = alike.find((it) => equal(it, source)) ?? source;
    if (found === source) known.set(source.key, [...alike, source]);
    shared.set(source, found);
    return found;
  };
  const compactBudget = (budget: BudgetComponent[]): BudgetComponent[] => {
    const before = budgets.get(budget);
    if (before) return before;
    for (const component of budget) component.source = sharedSource(component.source);
    // A list that has grown has room for more; a copy has not.
    const own = budget.slice();
    budgets.set(budget, own).set(own, own);
    return own;
  };
  const compact = (figure: Figure): void => {
    figure.budget = compactBudget(figure.budget);
    if (figure.notes.length === 0) figure.notes = NONE;
    if (figure.flags.length === 0) figure.flags = NONE;
    if (figure.unassessed.length === 0) figure.unassessed = NONE;
    figure.id = text(figure.id);
    figure.inputs = figure.inputs.map(text);
    // No other figure has the same.
    if (typeof figure.calculation === 'string') whole(figure.calculation);
  };
  const compactAny = (it: FigureOrGap | null | undefined): void => {
    if (it && isFigure(it)) compact(it);
  };

  for (const it of figures.values()) compactAny(it);
  for (const session of sessions) {
    for (const it of session.figures.values()) compactAny(it);
    for (const { figures: own } of session.made.values()) for (const it of own) compactAny(it);
    for (const { figure } of session.limits) compactAny(figure);
    for (const { measured } of session.claims) compactAny(measured);
    compactAny(session.change);
  }
  for (const { figure, perWatt } of prices) {
    compactAny(figure);
    compactAny(perWatt);
  }
}
