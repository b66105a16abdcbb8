import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { editContent } from '../../content/edit/edit-content.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import { type Correction, correctionsSchema, NO_FIGURE, type Stated } from '../../content/schema/corrections.ts';
import { nearest } from '../../content/schema/suggest.ts';
import { fileText } from '../../content/templates/file-text.ts';
import { jsonSchemaOf } from '../../content/templates/json-schema.ts';
import { isMetricId } from '../../measure/metrics.ts';
import type { Changes, FigureChange } from '../../site/changes/changes.ts';
import { type FigureState, isNumber } from '../../site/changes/guide-state.ts';
import { isMoney } from '../../site/changes/moved.ts';
import { type FileChange, readText } from '../files/changes.ts';

/** The list of corrections, in the content folder. */
export const CORRECTIONS_FILE = 'corrections.yaml';

/** Significant digits that an entry states a figure with; none is known to more. */
const DIGITS = 5;

/** What the tester says of a correction besides what moved. */
export interface Told {
  date: string;
  why: string;
  /** Of this panel alone. */
  panel?: string | undefined;
  /** The figure that was wrong; the others moved with it. */
  metric?: string | undefined;
}

/** A figure that moved though nothing was read or priced anew, with the day of its session. */
export interface Moved extends FigureChange {
  session: string;
}

/**
 * Figures that a correction can be of: those that moved within a session that both have. What moved with a new price, a new
 * session or a new version of its method is no correction.
 *
 * @param newest day of each panel's current session, by slug
 */
export function correctable(changes: Changes, newest: ReadonlyMap<string, string>): Moved[] {
  const reread = new Set([...changes.newSessions, ...changes.goneSessions].map((it) => it.slug));
  return changes.figures.flatMap((it): Moved[] => {
    const session = it.session ?? newest.get(it.slug);
    if (session === undefined || isMoney(it.metric) || (it.session === null && reread.has(it.slug))) return [];
    const { was, now } = it;
    if (isNumber(was) && isNumber(now) && (was.method !== now.method || was.version !== now.version)) return [];
    return [{ ...it, session }];
  });
}

/**
 * Entries for figures that moved, one for each panel and session.
 *
 * @throws UsageError where nothing moved, or what was asked for did not
 */
export function correctionsOf(moved: readonly Moved[], { date, why, panel, metric }: Told): Correction[] {
  const slugs = [...new Set(moved.map((it) => it.slug))];
  if (panel !== undefined && !slugs.includes(panel)) throw new UsageError(notMoved('panel', panel, slugs));
  const wanted = moved.filter((it) => panel === undefined || it.slug === panel);
  const metrics = [...new Set(wanted.map((it) => it.metric))];
  if (metric !== undefined && !metrics.includes(metric)) throw new UsageError(notMoved('figure', metric, metrics));
  return [...Map.groupBy(wanted, (it) => `${it.slug} ${it.session}`).values()].flatMap((group): Correction[] => {
    const main = group.find((it) => it.metric === metric) ?? usualMain(group);
    if (!main) return [];
    const rest = group.filter((it) => it !== main);
    return [
      {
        date,
        panel: main.slug,
        session: main.session,
        ...movedOf(main),
        why,
        ...(rest.length > 0 && { alsoMoved: rest.map(movedOf) }),
      },
    ];
  });
}

/** What was read comes before what was made of it; of several the one that moved most. */
function usualMain(group: readonly Moved[]): Moved | undefined {
  return group.find(({ now, was }) => [now, was].some((it) => isNumber(it) && it.basis === 'measured')) ?? group[0];
}

function movedOf({ metric, was, now }: Moved) {
  if (!isMetricId(metric)) throw new Error(`no figure is called ${metric}`);
  return { metric, from: statedOf(was), to: statedOf(now) };
}

function statedOf(it: FigureState): Stated {
  if (!isNumber(it)) return NO_FIGURE;
  const value = short(it.value);
  return it.interval95 ? { value, low: short(it.interval95[0]), high: short(it.interval95[1]) } : value;
}

const short = (it: number) => Number(it.toPrecision(DIGITS));

function notMoved(what: string, name: string, known: readonly string[]): string {
  const near = nearest(name, known);
  const rest = near ? `did you mean ${near}?` : `What moved: ${known.join(', ')}.`;
  return `The ${what} ${name} has not moved within a session; ${rest} Nothing was written.`;
}

/** The change of the file: entries at its end; a file that is not there yet is begun. */
export function correctionsChange(folder: string, entries: readonly Correction[]): FileChange {
  const path = CORRECTIONS_FILE;
  if (!existsSync(join(folder, path))) {
    return { path, before: undefined, after: newCorrectionsText(entries) };
  }
  const before = readText(folder, path);
  const after = editContent(
    before,
    path,
    entries.map((item) => ({ do: 'insert', list: ['corrections'], item })),
  );
  return { path, before, after };
}

/** The text of a new list of corrections, each field explained. */
export function newCorrectionsText(entries: readonly Correction[]): string {
  const line = '# yaml-language-server: $schema=../.astro/collections/corrections.schema.json\n';
  return line + fileText(jsonSchemaOf(correctionsSchema), { values: { corrections: entries } });
}
