import { nameOf } from '../../words/names.ts';

/** One line of a printed uncertainty budget. */
export interface PrintedComponent {
  /** Names the error wherever it turns up. */
  key: string;
  /** What it is called in short; the session's tables say the rest. */
  name: string;
  type: 'A' | 'B';
  /** In the figure's unit. */
  u: string;
  /** Of the figure, %. */
  relative: string;
}

/** A figure of the page whose budget others may refer to. */
export interface Referable {
  anchor: string;
  name: string;
  metric: string;
  budget: readonly PrintedComponent[];
}

/** A budget in short: whose lines it has too, what it has that is not theirs or differs, what of theirs it lacks. */
export interface ShortBudget {
  as: Array<{ anchor: string; short: string }>;
  lines: PrintedComponent[];
  without: string[];
}

/** What has fewer lines than this is no longer than a reference to another budget. */
const WORTH_REFERRING = 3;

/**
 * Says once what budgets share: a figure made of others has their errors, mostly in the same shares, and a reading has
 * those of its like.
 *
 * @param inputs the figures that it is made of
 * @param alikes figures read in the same way, the nearest of kin first
 */
export function shortBudget(
  budget: readonly PrintedComponent[],
  inputs: readonly Referable[],
  alikes: readonly Referable[],
): ShortBudget {
  const byKey = new Map(budget.map((it) => [it.key, it]));
  const covered = new Set<string>();
  const as: ShortBudget['as'] = [];
  for (const it of inputs) {
    const isWhole = it.budget.every(({ key }) => byKey.has(key));
    const same = it.budget.filter(({ key, relative }) => !covered.has(key) && byKey.get(key)?.relative === relative);
    if (!isWhole || same.length < WORTH_REFERRING || same.length * 2 < it.budget.length) continue;
    as.push(reference(it));
    for (const { key } of same) covered.add(key);
  }
  const own = { as, lines: budget.filter(({ key }) => !covered.has(key)), without: [] };
  const others = alikes.flatMap((it) => likeAnother(budget, it) ?? []);
  return [own, ...others].reduce((best, it) => (lengthOf(it) < lengthOf(best) ? it : best));
}

/** How much there is to read. */
const lengthOf = ({ as, lines, without }: ShortBudget) => as.length + lines.length + without.length;

const reference = ({ anchor, metric }: Referable) => ({ anchor, short: nameOf(metric).replace(/, (.*)$/, ' ($1)') });

function likeAnother(budget: readonly PrintedComponent[], other: Referable): ShortBudget | undefined {
  const theirs = new Map(other.budget.map((it) => [it.name, it.relative]));
  const lines = budget.filter((it) => theirs.get(it.name) !== it.relative);
  const names = new Set(budget.map((it) => it.name));
  const without = other.budget.map((it) => it.name).filter((it) => !names.has(it));
  const same = budget.length - lines.length;
  if (same < 2 || same <= lines.length / 2 + without.length) return undefined;
  return { as: [reference(other)], lines, without };
}
