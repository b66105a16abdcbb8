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
import { type Calibration, type InstrumentFile, instrumentSchema } from '../../content/schema/instrument.ts';
import { nearest } from '../../content/schema/suggest.ts';
import { type FileChange, readText } from '../files/changes.ts';
import { panelFiles } from '../files/panel-files.ts';
import type { NewCalibration } from './calibration-input.ts';

/** An instrument's file, as it can be read by itself. */
export interface InstrumentRead {
  id: string;
  path: string;
  text: string;
  data: InstrumentFile;
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

/** @throws UsageError where there is no such instrument, or its file has a problem */
export function readInstrument(folder: string, id: string): InstrumentRead {
  const paths = globSync(COLLECTIONS.instruments.pattern, { cwd: folder }).map((it) => it.split(sep).join('/'));
  const path = paths.find((it) => entryId(it) === id);
  if (!path) {
    const near = nearest(id, paths.map(entryId));
    const known = paths.map(entryId).toSorted().join(', ');
    throw new UsageError(`There is no instrument "${id}"${near ? `; did you mean ${near}?` : `. One of: ${known}.`}`);
  }
  const text = readText(folder, path);
  const read = instrumentSchema.safeParse(dataOf(text, path));
  if (!read.success) throw new UsageError(`${path} has a problem; npm run check says which. Nothing was changed.`);
  return { id, path, text, data: read.data };
}

/**
 * Works out what a new calibration does: the edit of the instrument's file, and which sessions it is of.
 *
 * @throws UsageError where there is one of that day
 * @throws EditError where the file can't be edited
 */
export function planCalibration(
  folder: string,
  { id, path, text, data }: InstrumentRead,
  calibration: NewCalibration,
): CalibrationPlan {
  const { date } = calibration;
  const byDay = data.calibrations.toSorted((a, b) => a.date.localeCompare(b.date));
  if (byDay.some((it) => it.date === date)) {
    throw new UsageError(`${path} has a calibration of ${date} already; change that one by hand. Nothing was changed.`);
  }
  const after = byDay.find((it) => it.date > date);
  const dates = data.calibrations.map((it) => it.date);
  const edited = editContent(text, path, [
    { do: 'insert', list: ['calibrations'], item: calibration, at: placeByDate(dates, date) },
  ]);
  const uses = sessionsWith(folder, id);
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

/** Every session that names an instrument, by day; drafts and withdrawn panels too. */
function sessionsWith(folder: string, id: string): SessionUse[] {
  return panelFiles(folder)
    .flatMap(({ name, text, path }) =>
      fields(dataOf(text, path), ['sessions', '*']).flatMap(({ value }) => {
        if (!isBlock(value) || !isBlock(value.instruments)) return [];
        const isUsed = Object.values(value.instruments).includes(id);
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
