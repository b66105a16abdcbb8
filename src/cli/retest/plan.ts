import { UsageError } from '../../content/read/usage-error.ts';
import { CARRIED_NAMES, type CarriedName, carriedBlock } from '../../content/schema/carried.ts';
import { nearest } from '../../content/schema/suggest.ts';
import { addSession, sessionsIn } from '../../content/templates/add-session.ts';
import { lastRead, newSession, type RawSession } from '../../content/templates/new-session.ts';
import type { FileChange } from '../files/changes.ts';
import type { PanelFile } from '../files/panel-files.ts';

/** Which blocks are not read again: those named, all but those named, or all but the light. */
export type Carry = { only: readonly CarriedName[] } | { allBut: readonly CarriedName[] };

/** A new session, and the file that it goes into. */
export interface RetestPlan {
  files: readonly FileChange[];
  /** The session as it will stand, its lines with the place of the first in the file. */
  text: string;
  line: number;
  carried: ReadonlyMap<CarriedName, string>;
}

/**
 * Works out a new session of a panel, in the style of its file: at the side of the list on which the newest one stands.
 *
 * @throws UsageError where there is a session of that day, or nothing to be carried over
 */
export function planRetest(
  { path, text }: PanelFile,
  { date, carry, methodVersion }: { date: string; carry: Carry; methodVersion: number },
): RetestPlan {
  const sessions = sessionsIn(text, path);
  const days = sessions.map((it) => String(it.date));
  if (days.includes(date)) {
    throw new UsageError(`${path} has a session of ${date} already. Nothing was written; --date names another day.`);
  }
  const earlier = sessions.filter((it) => String(it.date) < date);
  const carried = carriedFrom(earlier, carry, date);
  const after = addSession(text, path, newSession({ date, methodVersion, earlier, carried }));
  return { files: [{ path, before: text, after }], ...added(text, after), carried };
}

/** The day on which each block that is carried over was read. */
function carriedFrom(earlier: readonly RawSession[], carry: Carry, date: string): Map<CarriedName, string> {
  const wanted = 'only' in carry ? carry.only : CARRIED_NAMES.filter((it) => !carry.allBut.includes(it));
  const found = new Map<CarriedName, string>();
  for (const name of CARRIED_NAMES.filter((it) => wanted.includes(it))) {
    const session = lastRead(earlier, name);
    if (session) found.set(name, String(session.date));
    else if ('only' in carry) {
      throw new UsageError(
        `No finished session before ${date} has read the ${carriedBlock(name).name}, so that it can't be carried over. Nothing was written.`,
      );
    }
  }
  return found;
}

/** The lines that a text has more than another, which is the same before and after them. */
function added(before: string, after: string): { text: string; line: number } {
  const [old, now] = [before.split('\n'), after.split('\n')];
  const first = now.findIndex((it, i) => it !== old[i]);
  const more = now.length - old.length;
  const lines = now.slice(first, first + more);
  const start = lines.findIndex((it) => it.trim() !== '');
  return { text: lines.slice(Math.max(0, start)).join('\n').trimEnd(), line: first + Math.max(0, start) + 1 };
}

/**
 * The blocks that an option names, with commas.
 *
 * @throws UsageError for a name that is none
 */
export function blockNames(option: string): (value: string) => CarriedName[] {
  return (value) =>
    value.split(',').map((part) => {
      const name = CARRIED_NAMES.find((it) => it.toLowerCase() === part.trim().toLowerCase());
      if (name) return name;
      const inLight = carriedBlock('light').fields.includes(part.trim());
      const near = inLight ? 'light' : nearest(part.trim(), CARRIED_NAMES);
      throw new UsageError(
        `${option} ${part.trim()}: there is no such block${near ? `; did you mean ${near}?` : '.'} One of: ${CARRIED_NAMES.join(', ')}. Nothing was written.`,
      );
    });
}
