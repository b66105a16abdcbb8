/**
 * What a session's fields have no room for, in its notes, so that nothing is dropped: readings that were struck or read
 * again where a field takes one, and the reasons for which an odd one was kept. It is read back from there.
 */

/** One reading of which the notes tell. */
export interface KeptReading {
  path: string;
  written: string;
  kind: 'struck' | 'earlier' | 'accepted' | 'no field';
  /** Empty for a reading that was only taken before another. */
  reason: string;
}

const HEADS: Readonly<Record<KeptReading['kind'], string>> = {
  struck: 'Not counted',
  earlier: 'Read before',
  accepted: 'Looked odd, and counts',
  'no field': 'Read, and no field for it',
};
const KINDS = Object.keys(HEADS) as Array<KeptReading['kind']>;

/** `peak.red = 412 (a digit too many)`; what would end an entry is spelt out. */
const entryText = ({ path, written, reason }: KeptReading) =>
  `${path} = ${escaped(written)}${reason === '' ? '' : ` (${escaped(reason)})`}`;

const escaped = (text: string) => text.replace(/\s+/g, ' ').replace(/[\\;()=]/g, (it) => `\\${it}`);
const plain = (text: string) => text.replace(/\\(.)/g, '$1');

/** The notes with a line for each kind of what was kept. */
export function notesWith(notes: string | undefined, kept: readonly KeptReading[]): string | undefined {
  const lines = KINDS.flatMap((kind) => {
    const own = kept.filter((it) => it.kind === kind);
    return own.length > 0 ? [`${HEADS[kind]}: ${own.map(entryText).join('; ')}.`] : [];
  });
  const all = [...(notes?.trim() ? [notes.trim()] : []), ...lines];
  return all.length > 0 ? all.join('\n') : undefined;
}

/** Takes notes apart again. */
export function fromNotes(text: string): { notes: string; kept: KeptReading[] } {
  const kept: KeptReading[] = [];
  const own = text.split('\n').filter((line) => {
    const kind = KINDS.find((it) => line.startsWith(`${HEADS[it]}: `) && line.endsWith('.'));
    const entries = kind && readEntries(line.slice(HEADS[kind].length + 2, -1), kind);
    if (!entries) return true;
    kept.push(...entries);
    return false;
  });
  return { notes: own.join('\n').trim(), kept };
}

const TEXT = String.raw`(?:\\.|[^\\;()=])*?`;
const ENTRY = new RegExp(String.raw`^(?<path>[\w.[\]]+) = (?<written>${TEXT})(?: \((?<reason>${TEXT})\))?$`);

function readEntries(text: string, kind: KeptReading['kind']): KeptReading[] | undefined {
  const parts = text.match(/(?:\\.|[^\\;])+/g) ?? [];
  const entries = parts.map((it) => ENTRY.exec(it.trim())?.groups);
  if (entries.some((it) => it === undefined)) return undefined;
  return entries.map((it) => ({
    path: it?.path ?? '',
    written: plain(it?.written ?? ''),
    kind,
    reason: plain(it?.reason ?? ''),
  }));
}
