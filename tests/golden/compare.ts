import type { Golden, GoldenFigure } from './golden.ts';

/** A figure that is no longer what it was. */
export interface Moved {
  id: string;
  /** Undefined: it was not there. */
  before: GoldenFigure | undefined;
  /** Undefined: it is gone. */
  after: GoldenFigure | undefined;
  /**
   * Why it may have moved: other readings, and the methods with another version that it rests on. Empty: nothing
   * that was declared accounts for it.
   */
  causes: string[];
}

/** Relative differences up to this are those of another machine's arithmetic. */
const SAME = 1e-9;

/** The method under which budgets are put together: a new version of it may move any interval. */
const BUDGETS = 'uncertainty';

/** The version of a method that no figure carries itself: read from the registry. */
export type VersionOf = (id: string) => number;

/**
 * Everything that differs between two states of a guide, by id. A value, interval or unit that moved is put down to
 * other readings of its panel, or to methods, its own or of any figure that it rests on, whose version went up.
 *
 * @param budgetVersions version of the method of uncertainty in the two states
 */
export function movedFigures(before: Golden, after: Golden, budgetVersions: readonly [number, number]): Moved[] {
  const ids = [...new Set([...before.figures.keys(), ...after.figures.keys()])].toSorted();
  return ids.flatMap((id): Moved[] => {
    const [old, now] = [before.figures.get(id), after.figures.get(id)];
    const isValueSame = old !== undefined && now !== undefined && isNear(old.value, now.value) && old.unit === now.unit;
    if (isValueSame && isSameInterval(old.interval, now.interval)) return [];
    const slug = id.split('/')[0] as string;
    const causes = [
      ...(before.panels.get(slug) === after.panels.get(slug) ? [] : ['other readings']),
      ...raisedMethods(id, before, after),
    ];
    if (isValueSame && budgetVersions[1] > budgetVersions[0]) {
      causes.push(`${BUDGETS}@${budgetVersions[0]} to ${budgetVersions[1]}`);
    }
    return [{ id, before: old, after: now, causes }];
  });
}

/** Methods with a higher version than before, of a figure and of all that it rests on, in either state. */
function raisedMethods(id: string, before: Golden, after: Golden): string[] {
  const raised = new Set<string>();
  const seen = new Set<string>();
  const open = [id];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (seen.has(next)) continue;
    seen.add(next);
    const [old, now] = [before.figures.get(next), after.figures.get(next)];
    open.push(...(old?.inputs ?? []), ...(now?.inputs ?? []));
    // A figure that is new or gone is accounted for by its method's version too.
    const versions = [old, now].map((it) => it && methodAndVersion(it.method));
    const [was, is] = versions;
    if (was && is && (was.method !== is.method || is.version > was.version)) raised.add(`${now?.method}`);
    else if (!was !== !is && (was ?? is) && isRaised((was ?? is)?.method as string, before, after)) {
      raised.add(`${(now ?? old)?.method}`);
    }
  }
  return [...raised].toSorted();
}

/** Whether any figure of a method has a higher version now than every one had before. */
function isRaised(method: string, before: Golden, after: Golden): boolean {
  const newest = (golden: Golden) =>
    Math.max(
      0,
      ...[...golden.figures.values()]
        .map((it) => methodAndVersion(it.method))
        .flatMap((it) => (it.method === method ? [it.version] : [])),
    );
  return newest(after) > newest(before);
}

function methodAndVersion(reference: string): { method: string; version: number } {
  const [method = '', version = ''] = reference.split('@');
  return { method, version: Number(version) };
}

function isSameInterval(a: GoldenFigure['interval'], b: GoldenFigure['interval']): boolean {
  if (a === null || b === null) return a === b;
  return isNear(a[0], b[0]) && isNear(a[1], b[1]);
}

function isNear(a: number, b: number): boolean {
  return Math.abs(a - b) <= SAME * Math.max(Math.abs(a), Math.abs(b));
}

/** A list for people, as a table in Markdown: figure, old, new, cause. */
export function movedTable(moved: readonly Moved[]): string {
  const told = (it: GoldenFigure | undefined) =>
    it === undefined
      ? 'none'
      : `${short(it.value)}${it.interval ? ` (${short(it.interval[0])} to ${short(it.interval[1])})` : ''} ${it.unit}`;
  return [
    '| figure | before | now | cause |',
    '|---|---|---|---|',
    ...moved.map((it) => `| ${it.id} | ${told(it.before)} | ${told(it.after)} | ${it.causes.join(', ') || 'none'} |`),
  ].join('\n');
}

const short = (value: number) => String(Number(value.toPrecision(5)));
