import { globSync } from 'node:fs';
import { sep } from 'node:path';
import { parse } from 'yaml';
import { placeByDate } from '../../content/edit/by-date.ts';
import { openContent } from '../../content/edit/content-text.ts';
import { editContent } from '../../content/edit/edit-content.ts';
import { EditError } from '../../content/edit/edit-error.ts';
import { fields } from '../../content/read/fields.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import { isBlock } from '../../content/schema/block.ts';
import { COLLECTIONS, entryId } from '../../content/schema/collections.ts';
import { type Calibration, type InstrumentQuantity, instrumentSchema } from '../../content/schema/instrument.ts';
import type { InstrumentKind } from '../../content/schema/instrument-kinds.ts';
import { nearest } from '../../content/schema/suggest.ts';
import { type FileChange, readText } from '../files/changes.ts';
import { panelFiles } from '../files/panel-files.ts';
import type { NewCalibration } from './calibration-input.ts';

/** An instrument's file, as it can be read by itself. */
export interface InstrumentRead {
  id: string;
  path: string;
  text: string;
  /** What is calibrated: one of its quantities, which stands for all that share its calibrations. */
  quantity: InstrumentQuantity;
  /** All of them. */
  kinds: readonly InstrumentKind[];
  /** Where its file has their calibrations. */
  list: readonly string[];
}

/** A session that names an instrument. */
export interface SessionUse {
  panel: string;
  /** `YYYY-MM-DD` */
  date: string;
}

/** What a new calibration does. */
export interface CalibrationPlan {
  change: FileChange;
  /** The newest one before it; undefined for the first. */
  before: Calibration | undefined;
  /** The newest of all that are there. */
  newest: Calibration | undefined;
  /** The one after it, if it comes late; it keeps its sessions. */
  after: Calibration | undefined;
  /** Sessions that rest on it from now on. */
  concerned: SessionUse[];
  /** Sessions that keep another one. */
  kept: SessionUse[];
}

/**
 * @param kind the quantity that is calibrated; it may be left out where all of the instrument's share their calibrations
 * @throws UsageError where there is no such instrument or quantity, or its file has a problem
 */
export function readInstrument(folder: string, id: string, kind: string | undefined): InstrumentRead {
  const paths = globSync(COLLECTIONS.instruments.pattern, { cwd: folder }).map((it) => it.split(sep).join('/'));
  const path = paths.find((it) => entryId(it) === id);
  if (!path) {
    const near = nearest(id, paths.map(entryId));
    const known = paths.map(entryId).toSorted().join(', ');
    throw new UsageError(`There is no instrument "${id}"${near ? `; did you mean ${near}?` : `. One of: ${known}.`}`);
  }
  const text = readText(folder, path);
  const written = dataOf(text, path);
  const read = instrumentSchema.safeParse(written);
  if (!read.success) throw new UsageError(`${path} has a problem; npm run check says which. Nothing was changed.`);
  return { id, path, text, ...calibrated(read.data.quantities, written, path, kind) };
}

/** What a calibration of an instrument is of, and where it stands. */
function calibrated(
  quantities: readonly InstrumentQuantity[],
  written: unknown,
  path: string,
  kind: string | undefined,
): Pick<InstrumentRead, 'quantity' | 'kinds' | 'list'> {
  const listOf = (it: InstrumentKind) => ['quantities', it, 'calibrations'];
  const hasOwn = (it: InstrumentKind) => fields(written, listOf(it)).length > 0;
  const known = quantities.map((it) => it.measures);
  const shared = known.filter((it) => !hasOwn(it));
  const isClear = known.length === 1 || shared.length === known.length;
  const quantity = quantities.find((it) => (kind === undefined ? isClear : it.measures === kind));
  if (!quantity) {
    const found = kind === undefined ? `${path} reads several quantities` : `${path} does not read "${kind}"`;
    throw new UsageError(`${found}: say which is calibrated, --quantity ${known.join(' or ')}. Nothing was changed.`);
  }
  const { measures } = quantity;
  return hasOwn(measures)
    ? { quantity, kinds: [measures], list: listOf(measures) }
    : { quantity, kinds: shared, list: ['calibrations'] };
}

/**
 * Works out what a new calibration does: the edit of the instrument's file, and which sessions it is of.
 *
 * @throws UsageError where there is one of that day
 * @throws EditError where the file can't be edited
 */
export function planCalibration(
  folder: string,
  { id, path, text, quantity, kinds, list }: InstrumentRead,
  calibration: NewCalibration,
): CalibrationPlan {
  const { date } = calibration;
  const byDay = quantity.calibrations.toSorted((a, b) => a.date.localeCompare(b.date));
  if (byDay.some((it) => it.date === date)) {
    throw new UsageError(`${path} has a calibration of ${date} already; change that one by hand. Nothing was changed.`);
  }
  const after = byDay.find((it) => it.date > date);
  const dates = quantity.calibrations.map((it) => it.date);
  const edited = editContent(text, path, [
    { do: 'insert', list: [...list], item: calibration, at: placeByDate(dates, date) },
  ]);
  const uses = sessionsWith(folder, id, kinds);
  const isConcerned = (it: SessionUse) => it.date >= date && (!after || it.date < after.date);
  return {
    change: { path, before: text, after: edited },
    before: byDay.findLast((it) => it.date < date),
    newest: byDay.at(-1),
    after,
    concerned: uses.filter(isConcerned),
    kept: uses.filter((it) => !isConcerned(it)),
  };
}

/** Every session that names an instrument for what is calibrated, by day; drafts and withdrawn panels too. */
function sessionsWith(folder: string, id: string, kinds: readonly string[]): SessionUse[] {
  return panelFiles(folder)
    .flatMap(({ name, text, path }) =>
      fields(dataOf(text, path), ['sessions', '*']).flatMap(({ value }) => {
        if (!isBlock(value) || !isBlock(value.instruments)) return [];
        const isUsed = Object.entries(value.instruments).some(([kind, it]) => it === id && kinds.includes(kind));
        return isUsed && typeof value.date === 'string' ? [{ panel: name, date: value.date }] : [];
      }),
    )
    .toSorted((a, b) => b.date.localeCompare(a.date));
}

/** A panel whose file can't be read has no sessions that anybody could tell. */
function dataOf(text: string, path: string): unknown {
  try {
    return parse(openContent(text, path).yaml, { logLevel: 'silent' });
  } catch (error) {
    if (error instanceof EditError || (error as Error).name === 'YAMLParseError') return undefined;
    throw error;
  }
}
