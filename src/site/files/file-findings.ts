import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import type { Flag } from '../../measure/figure.ts';
import { findingInShort } from '../../words/finding-words.ts';
import { filesAddress } from '../shared/file-addresses.ts';
import { logIds } from './log-views.ts';

/** What a session's files have brought to light, as few words, and where on the page of its files it is told in full. */
export interface FileFinding {
  text: string;
  /** The part of that page: `Spectrum`. */
  part: string;
  anchor: string;
  isNote: boolean;
}

/** The files of a panel in a line of its page. */
export interface FilesInShort {
  address: string;
  /** Notes; what is in doubt stands among the panel's doubts. */
  found: FileFinding[];
  /** What is said where there is no note. */
  otherwise: string;
}

/** Of the newest session. */
export function filesInShort({ slug, current }: PanelEntry): FilesInShort {
  const all = current ? fileFindings(current) : [];
  const found = all.filter((it) => it.isNote);
  return { address: filesAddress(slug), found, otherwise: all.length > 0 ? 'in doubt, see below' : 'nothing odd' };
}

/** Checks that look at files, those that say most of a panel first. */
const CHECKS = [
  'wavelength-claims',
  'grid-before-settled',
  'tone-prominent',
  'spectrum-against-reading',
  'file-against-typed',
  'spectrum-faults',
  'wall-photo-exposure',
  'clip-overdriven',
  'clip-calibration',
  'clips-alike',
  'file-says-nothing',
  'sweep-spike',
];

/** What the flags of a session say that come from its files, the weightiest first; empty where all is in order. */
export function fileFindings(session: SessionEntry): FileFinding[] {
  return session.flags
    .filter((it) => CHECKS.includes(it.check))
    .toSorted((a, b) => CHECKS.indexOf(a.check) - CHECKS.indexOf(b.check))
    .map((it) => ({ text: findingInShort(it.finding), isNote: it.severity === 'note', ...partOf(it, session) }));
}

/** The part of the page that a flag is about. */
function partOf({ check, at = [] }: Flag, { made, date }: SessionEntry): Pick<FileFinding, 'part' | 'anchor'> {
  if (check === 'wavelength-claims') return { part: 'Spectrum', anchor: `spectra-${date}` };
  const ids = logIds(made, date);
  if (check === 'grid-before-settled') return { part: 'Warm-up', anchor: ids.warmUp };
  const [, block, place] = at;
  switch (block) {
    case 'spectra':
      return { part: 'Spectrum', anchor: `spectra-${date}` };
    case 'wallPhoto':
      return { part: 'Wall', anchor: `wall-${date}` };
    case 'soundClips':
      return { part: 'Sound', anchor: `clips-${date}` };
    case 'sweeps':
      return { part: 'Sweep', anchor: ids.sweep(Number(place)) };
    case 'waveforms':
      return { part: 'Flicker', anchor: ids.waveform(String(place)) };
    default:
      return { part: 'Files', anchor: `files-${date}` };
  }
}
