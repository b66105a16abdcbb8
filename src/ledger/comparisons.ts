import { createHash } from 'node:crypto';
import type { Figure } from '../measure/figure.ts';
import { type Contender, type Rank, rankByPricePerWatt } from '../measure/money/ranking.ts';
import { type StepUps, stepUps } from '../measure/money/step-ups.ts';

/** What is made of several panels at once. */
export interface Comparisons {
  /** Ranks of panels that are ranked together. */
  ranks(group: readonly Contender[]): Rank[];
  /** What a panel steps up to among those that were measured like it. */
  stepUps(from: Contender, others: readonly Contender[]): StepUps;
}

/** Each worked out when it is asked for. */
export const COMPARISONS: Comparisons = { ranks: rankByPricePerWatt, stepUps };

/** What has come of comparisons, by what stands for all that went in. */
export type ComparisonResults = ReadonlyMap<string, Rank[] | StepUps>;

/** Comparisons from one working out of the ledger to the next. */
export interface KeptComparisons extends Comparisons {
  /** Before a ledger is worked out: what the last one did not ask for is let go. */
  start(): void;
  /** What the last one asked for. */
  results(): ComparisonResults;
}

/**
 * Keeps ranks and step-ups as long as the names, prices and powers of all that were compared stay the same, with their
 * budgets; the thousands of draws behind a rank are then not made again for a word in a panel's notes.
 *
 * @param earlier what an earlier process has kept
 */
export function keptComparisons(earlier: ComparisonResults = new Map()): KeptComparisons {
  let before: ComparisonResults = new Map();
  let now = new Map(earlier);
  const marks = new WeakMap<Figure, string>();
  const groups = new WeakMap<readonly Contender[], string>();

  /** Stands for everything that a power says. */
  function markOf(power: Figure): string {
    const mark = marks.get(power) ?? createHash('sha256').update(JSON.stringify(power, inFull)).digest('base64url');
    marks.set(power, mark);
    return mark;
  }
  function groupOf(contenders: readonly Contender[]): string {
    const group =
      groups.get(contenders) ??
      createHash('sha256')
        .update(contenders.map((it) => `${it.panel} ${it.price} ${markOf(it.power)}`).join('\n'))
        .digest('base64url');
    groups.set(contenders, group);
    return group;
  }
  function kept<T extends Rank[] | StepUps>(key: string, make: () => T): T {
    const known = (now.get(key) ?? before.get(key)) as T | undefined;
    const result = known ?? make();
    now.set(key, result);
    return result;
  }
  return {
    start() {
      [before, now] = [now, new Map()];
    },
    results: () => now,
    ranks: (group) => kept(`ranks ${groupOf(group)}`, () => rankByPricePerWatt(group)),
    stepUps: (from, others) => kept(`step-ups ${from.panel} ${groupOf(others)}`, () => stepUps(from, others)),
  };
}

/** JSON would say null of an infinite number, as of none. */
const inFull = (_key: string, it: unknown): unknown =>
  typeof it === 'number' && !Number.isFinite(it) ? `number ${it}` : it;
