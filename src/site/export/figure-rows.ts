import { type Figure, type FigureMap, type FigureOrGap, isFigure } from '../../measure/figure.ts';
import { METRICS, type Metric } from '../../measure/metrics.ts';
import { say } from '../../words/say.ts';
import type { TextRef } from '../shared/browser/text-ref.ts';
import { carriedData, dataUnit, figureNumbers, flagsData } from './data-parts.ts';
import type { FigureKind, FigureKinds } from './figure-kinds.ts';
import type { NoteTable, TextTable } from './text-table.ts';

/** What a row of a figure holds. `more` is left out where there is nothing more. */
export const FIGURE_COLUMNS = ['value', 'standard_uncertainty', 'interval95_low', 'interval95_high', 'more'] as const;

/** What there is to a figure besides its numbers, and what it has otherwise than its kind. */
interface More extends Partial<Omit<FigureKind, 'of'>> {
  id?: string;
  bound?: Figure['bound'];
  uncertainty_absent?: TextRef;
  /** A place in the panel’s `notes`. */
  notes?: number;
  flags?: ReturnType<typeof flagsData>;
  carried_over?: ReturnType<typeof carriedData>;
}

/** What rows refer to. */
interface Tables {
  texts: TextTable;
  notes: NoteTable;
}

/** A figure, or why there is none. */
export type FigureRow =
  | [value: number, uncertainty: number | null, low: number | null, high: number | null, more?: More]
  | { reason: TextRef };

/**
 * A figure as a row.
 *
 * @param id the id that a reader takes it to have
 * @param kind what a reader takes it to have besides
 */
export function figureRow(
  it: FigureOrGap,
  { id, kind, currency }: { id: string; kind: Omit<FigureKind, 'of'> | undefined; currency: string },
  { texts, notes }: Tables,
): FigureRow {
  if (!isFigure(it)) return { reason: texts.filled(say(it.reason)) };
  const { method } = it;
  const unit = dataUnit(it.unit, currency);
  const flags = flagsData(it);
  const more: More = {
    ...(it.id !== id && { id: it.id }),
    ...(unit !== kind?.unit && { unit }),
    ...(it.bound && { bound: it.bound }),
    ...(it.uncertaintyAbsent && { uncertainty_absent: texts.filled(say(it.uncertaintyAbsent)) }),
    ...(it.basis !== kind?.basis && { basis: it.basis }),
    ...(method.id !== kind?.method && { method: method.id }),
    ...(method.version !== kind?.method_version && { method_version: method.version }),
    ...(it.notes.length > 0 && { notes: notes.placeOf(it.notes.map((note) => texts.filled(say(note)))) }),
    ...(flags.length > 0 && { flags }),
    ...(it.carriedOver && { carried_over: carriedData(it.carriedOver) }),
  };
  const { value, uncertainty, interval95 } = figureNumbers(it);
  const [low, high] = interval95 ?? [null, null];
  const numbers = [value, uncertainty, low, high] as const;
  return Object.keys(more).length > 0 ? [...numbers, more] : [...numbers];
}

/** What a file could have given, had there been one: nothing is said of it. */
export function isLeftOut({ isOfFiles }: Metric, it: FigureOrGap | undefined): boolean {
  return (
    isOfFiles === true &&
    it !== undefined &&
    !isFigure(it) &&
    (it.reason.code === 'not-measured' || it.reason.code === 'no-session-yet')
  );
}

/** All figures and gaps of a session, or of a panel that had none, each with its metric. */
export function figureRows(
  figures: FigureMap,
  { slug, date, kinds, currency }: { slug: string; date?: string; kinds: FigureKinds; currency: string },
  tables: Tables,
): Array<readonly [metric: string, row: FigureRow]> {
  return METRICS.flatMap((metric) => {
    const { id } = metric;
    const it = figures.get(id);
    if (!it || isLeftOut(metric, it)) return [];
    const kind = kinds[id];
    const owner = date === undefined || kind?.of === 'panel' ? slug : `${slug}/${date}`;
    return [[id, figureRow(it, { id: `${owner}/${id}`, kind, currency }, tables)] as const];
  });
}
