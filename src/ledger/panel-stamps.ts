import { createHash } from 'node:crypto';
import { globSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileHash } from '../content/read/files/file-hash.ts';
import { isFigure } from '../measure/figure.ts';
import type { PanelEntry } from './ledger.ts';
import type { Loaded } from './load-ledger.ts';
import { STANDING } from './standing.ts';

/** What stands for all that a page may say, so that pages of which nothing has changed can be kept. */
export interface Stamps {
  /** Of everything that any page rests on and that is no panel's: guide, makers, instruments, methods, cautions, the day. */
  shared: string;
  /** Of a panel by its slug: its files, its figures and its flags. */
  panels: ReadonlyMap<string, string>;
  /** Of where it stands among the others: its ranks, and what it steps up to. */
  standings: ReadonlyMap<string, string>;
}

/** Stamps of a loaded ledger; the same ones for the same content and day. */
export function stampsOf({ content, ledger }: Loaded, folder: string): Stamps {
  const own = filesByPanel(folder);
  const panels = new Map<string, string>();
  const standings = new Map<string, string>();
  for (const [slug, panel] of ledger.panels) {
    const { file = '' } = content.panels.get(slug)?.source ?? {};
    const hash = createHash('sha256');
    // A panel's file lies in a folder of its own name, with the pictures that it shows.
    for (const path of own.get(basename(dirname(file))) ?? []) addFile(hash, folder, path);
    addFigures(hash, panel);
    hash.update(JSON.stringify(flagged(panel)));
    panels.set(slug, hash.digest('base64url'));
    standings.set(slug, hashOf(JSON.stringify(STANDING.map((it) => panel[it]))));
  }
  return { shared: sharedStamp(folder, ledger.today, content), panels, standings };
}

/** What its own files do not tell: others have to do with its flags. */
function flagged({ name, flags, sessions }: PanelEntry) {
  return { name, flags, sessions: sessions.map((session) => [session.flags, session.change]) };
}

const hashOf = (text: string) => createHash('sha256').update(text).digest('base64url');

type Hash = ReturnType<typeof createHash>;

/** Of a figure: value, standard uncertainty, both ends of the interval, how many flags. */
const NUMBERS_EACH = 5;
const NUMBER_BYTES = Float64Array.BYTES_PER_ELEMENT;

/** All numbers of a panel's figures, number for number. */
function addFigures(hash: Hash, { figures, sessions, prices }: PanelEntry): void {
  const maps = [figures, ...sessions.map((it) => it.figures)];
  const most = maps.reduce((sum, it) => sum + it.size, prices.length);
  const numbers = new Float64Array(NUMBERS_EACH * most);
  let at = 0;
  for (const map of maps) {
    for (const it of map.values()) {
      if (!isFigure(it)) continue;
      numbers[at++] = it.value;
      numbers[at++] = it.standardUncertainty ?? Number.NaN;
      numbers[at++] = it.interval95?.[0] ?? Number.NaN;
      numbers[at++] = it.interval95?.[1] ?? Number.NaN;
      numbers[at++] = it.flags.length;
    }
  }
  for (const { figure } of prices) numbers[at++] = figure.value;
  hash.update(new Uint8Array(numbers.buffer, 0, NUMBER_BYTES * at));
}

/** Files below `panels/`, by the folder that they lie in. */
function filesByPanel(folder: string): Map<string, string[]> {
  const files = globSync('panels/**/*', { cwd: folder }).toSorted();
  return Map.groupBy(files, (path) => path.split(/[/\\]/)[1] ?? '');
}

function sharedStamp(folder: string, today: string, content: Loaded['content']): string {
  const hash = createHash('sha256').update(today);
  for (const path of globSync('**/*', { cwd: folder, exclude: (it) => it === 'panels' }).toSorted()) {
    addFile(hash, folder, path);
  }
  // What notes bring in of their own may change the styles and scripts of all pages of their kind.
  for (const { source } of content.panels.values()) {
    if (source.file.endsWith('.mdx')) hash.update((source.body.match(/^(import|export)\b.*$/gm) ?? []).join('\n'));
  }
  return hash.digest('base64url');
}

function addFile(hash: Hash, folder: string, path: string): void {
  const file = join(folder, path);
  if (!statSync(file).isFile()) return;
  // Logs of the bench are long: what stands for their bytes is known already.
  hash.update(`${path}\n`).update(fileHash(file));
}
