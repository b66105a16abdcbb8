import type { PanelEntry, SessionEntry, SessionFile } from '../../ledger/ledger.ts';
import { FILE_KINDS, fileOf, sizeText } from '../../words/file-words.ts';
import { showDate } from '../../words/format.ts';
import { say } from '../../words/say.ts';
import { calculationView, type SessionCalculation } from '../calculation/calculation-view.ts';
import { fileAddress, fileAnchor } from '../shared/file-addresses.ts';
import { type FileFinding, fileFindings } from './file-findings.ts';
import { logViews } from './log-views.ts';

/** A file as the table of a session's files has it. */
export interface FileRow {
  anchor: string;
  name: string;
  /** `Spectrum, red alone` */
  what: string;
  size: string;
  sha256: string;
  address: string;
  /** What was converted when it was read, as sentences. */
  notes: string;
  /** The day that it is from, where that is an earlier session's. */
  from: string | undefined;
}

/** A session with files. */
export interface FilesSession {
  session: SessionEntry;
  shownDate: string;
  isCurrent: boolean;
  files: FileRow[];
  /** What they have brought to light, the weightiest first. */
  findings: FileFinding[];
  /** The parts of the page, in their order. */
  parts: Array<{ anchor: string; name: string }>;
  /** How its figures from files are worked out. */
  calculation: SessionCalculation;
}

/** Sessions of a panel that rest on files, the newest first. */
export function filesView(panel: PanelEntry, currency: string): FilesSession[] {
  const calculations = new Map(calculationView(panel, currency, 'files').map((it) => [it.date, it]));
  return panel.sessions.flatMap((session) => {
    const calculation = calculations.get(session.date);
    if (session.files.length === 0 || !calculation) return [];
    return [
      {
        session,
        shownDate: showDate(session.date),
        isCurrent: session === panel.current,
        files: session.files.map((it) => fileRow(panel.slug, it, session.date)),
        findings: fileFindings(session),
        parts: partsOf(session, calculation),
        calculation,
      },
    ];
  });
}

function partsOf(session: SessionEntry, { figures, gaps }: SessionCalculation): FilesSession['parts'] {
  const { made, date } = session;
  return [
    ...(made.has('spectra') ? [{ anchor: `spectra-${date}`, name: 'spectrum' }] : []),
    ...logViews(session).map(({ id, short }) => ({ anchor: id, name: short })),
    ...(made.has('wallPhoto') ? [{ anchor: `wall-${date}`, name: 'wall' }] : []),
    ...(made.has('soundClips') ? [{ anchor: `clips-${date}`, name: 'sound' }] : []),
    { anchor: `files-${date}`, name: 'files' },
    ...(figures.length + gaps.length > 0 ? [{ anchor: `figures-${date}`, name: 'figures' }] : []),
  ];
}

function fileRow(slug: string, file: SessionFile, date: string): FileRow {
  const { name, kind, field, entry, bytes, sha256, notes } = file;
  const of = fileOf(field);
  const shows = 'shows' in entry && typeof entry.shows === 'string' ? `: ${entry.shows}` : '';
  return {
    anchor: fileAnchor(file),
    name,
    what: `${FILE_KINDS[kind]}${of && `, ${of}`}${shows}`,
    size: sizeText(bytes),
    sha256,
    address: fileAddress(slug, file),
    notes: notes.map((it) => `${capital(say(it))}.`).join(' '),
    from: file.date === date ? undefined : showDate(file.date),
  };
}

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
