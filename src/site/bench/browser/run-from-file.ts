/** A session of a content file as a run, each of its readings an entry. */
import { isBlock, valueAt } from '../../../content/schema/block.ts';
import { isGap } from '../../../content/schema/gap.ts';
import { fieldPath } from '../../../content/schema/problem.ts';
import { sessionsIn } from '../../../content/templates/add-session.ts';
import type { RawSession } from '../../../content/templates/new-session.ts';
import { fromNotes, type KeptReading } from './kept-notes.ts';
import { isPlace, isSetting } from './places.ts';
import type { Entry, Run, RunPanel } from './run.ts';

/** Fields of a session that a run has in places of their own. */
const OWN = ['date', 'methodVersion', 'instruments', 'carried', 'draft', 'hotSpots', 'photos', 'notes'];
const USUAL_INSET = '1 in';

/**
 * The session of a day as a run; undefined where the file has none.
 *
 * @param text of the panel's file
 * @param file its name
 */
export function runFromFile(
  text: string,
  file: string,
  { id, date, panel }: { id: string; date: string; panel: RunPanel },
): Run | undefined {
  const session = sessionsIn(text, file).find((it) => String(it.date) === date);
  return session && runFromSession(session, { id, panel });
}

/** The same from a session whose values are texts, as they were typed. */
export function runFromSession(session: RawSession, { id, panel }: { id: string; panel: RunPanel }): Run {
  const leaves = leavesOf(Object.fromEntries(Object.entries(session).filter(([key]) => !OWN.includes(key))), []);
  const { notes, kept } = fromNotes(textAt(session, ['notes']) ?? '');
  const hotSpots = textAt(session, ['hotSpots']);
  const rows = valueAt(session, ['grid', 'rows']);
  return {
    id,
    panel,
    date: String(session.date),
    methodVersion: Number(session.methodVersion),
    instruments: textsOf(session.instruments),
    grid: {
      rows: Array.isArray(rows) ? rows.length : 3,
      columns: Array.isArray(rows) && Array.isArray(rows[0]) ? rows[0].length : 3,
      inset: textAt(session, ['grid', 'inset']) ?? USUAL_INSET,
    },
    settings: Object.fromEntries(leaves.flatMap(({ path, written }) => (isSetting(path) ? [[path, written]] : []))),
    carried: textsOf(session.carried),
    entries: entriesOf(
      leaves.filter((it) => isPlace(it.path)),
      kept,
    ),
    texts: { ...(notes && { notes }), ...(hotSpots && { hotSpots }) },
    photos: photosOf(session.photos),
    isFinished: session.draft !== true,
  };
}

/** Fields of a session that no run knows of, as the file has them: names of its own, at its top. */
export function unknownFields(session: RawSession): string[] {
  return Object.keys(session).filter((key) => {
    if (OWN.includes(key)) return false;
    const leaves = leavesOf({ [key]: session[key] }, []);
    return !leaves.some(({ path }) => isPlace(path) || isSetting(path) || path === 'grid.inset');
  });
}

interface Leaf {
  path: string;
  written: string;
  struck?: string;
}

/** Values with their places; repeats have one place, and gaps none. */
function leavesOf(value: unknown, path: readonly PropertyKey[]): Leaf[] {
  if (typeof value === 'string') return isGap(value) || value === '' ? [] : [{ path: fieldPath(path), written: value }];
  const here = fieldPath(path);
  if (isBlock(value) && typeof value.struck === 'string') {
    return [{ path: here, written: String(value.value), struck: value.struck }];
  }
  if (Array.isArray(value)) {
    // Of a place that takes several readings.
    const isRepeats = isPlace(here);
    return value.flatMap((it, i) => leavesOf(it, isRepeats ? path : [...path, i]));
  }
  return isBlock(value) ? Object.entries(value).flatMap(([key, it]) => leavesOf(it, [...path, key])) : [];
}

function entriesOf(leaves: readonly Leaf[], kept: readonly KeptReading[]): Entry[] {
  const accepted = kept.filter((it) => it.kind === 'accepted');
  const besides = kept
    .filter((it) => it.kind !== 'accepted')
    .map(({ path, written, kind, reason }) => ({
      path,
      written,
      ...(kind === 'struck' ? { struck: reason } : reason !== '' && { accepted: reason }),
    }));
  const counted = leaves.map((it) => {
    const at = accepted.findIndex(({ path, written }) => path === it.path && written === it.written);
    if (at < 0 || it.struck !== undefined) return it;
    return { ...it, accepted: accepted.splice(at, 1)[0]?.reason ?? '' };
  });
  return [...besides, ...counted].map((it, i) => ({ id: i + 1, at: '', ...it }));
}

function textAt(session: RawSession, path: readonly PropertyKey[]): string | undefined {
  const value = valueAt(session, path);
  return typeof value === 'string' ? value : undefined;
}

const textsOf = (block: unknown): Record<string, string> =>
  isBlock(block) ? Object.fromEntries(Object.entries(block).map(([key, it]) => [key, String(it)])) : {};

const photosOf = (list: unknown) =>
  (Array.isArray(list) ? list : []).filter(isBlock).map(({ file, shows, by }) => ({
    file: String(file),
    shows: String(shows),
    ...(typeof by === 'string' && { by }),
  }));
