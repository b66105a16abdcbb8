import { existsSync, globSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Content } from '../content/read/content.ts';
import { FILE_READERS } from '../content/read/files/readers.ts';
import { type KeptFiles, keptFiles } from '../content/read/kept-files.ts';
import { ContentError } from '../content/read/problem-list.ts';
import { textsFolder } from '../content/read/product-texts.ts';
import { readContent } from '../content/read/read-content.ts';
import { buildLedger, type KeptWork } from './build-ledger.ts';
import { type KeptComparisons, keptComparisons } from './comparisons.ts';
import type { Ledger } from './ledger.ts';
import { keepResults, releaseResults } from './result-store.ts';
import { todayFrom } from './today.ts';
import { keptPanels } from './worked-panels.ts';

export interface LoadOptions {
  /** The content folder; `LEDGER_CONTENT` or `content` where left out. */
  folder?: string;
  /** Work out drafts too. */
  drafts?: boolean;
  /** Look again whether files have changed, as the development server must. */
  watch?: boolean;
  /** Told before the content is read, and before figures are worked out of it; either can take its time. */
  onStage?: (stage: 'read' | 'work') => void;
  /** What is known of the files from an earlier process; without `watch` alone. */
  files?: KeptFiles;
  /** The same of what panels were compared for. */
  comparisons?: KeptComparisons;
}

export interface Loaded {
  content: Content;
  ledger: Ledger;
}

/**
 * Kept on the global object: the build's own code and the pages that Astro bundles are two copies of this
 * module in one process, and should not each read the content.
 */
const shared = globalThis as {
  panelLedger?: { key: string; loaded: Loaded };
  panelLedgerGood?: { folder: string; loaded: Loaded };
  panelLedgerKept?: { folder: string; files: KeptFiles; work: KeptWork };
};

/** The content folder that this process works on. */
export function contentFolder(): string {
  return contentIn(process.env.LEDGER_CONTENT ?? 'content');
}

/** The content folder that a name means: a folder with guide.yaml, or the folder of a guide, in which that one lies. */
export function contentIn(folder: string): string {
  const inner = join(folder, 'content');
  return !existsSync(join(folder, 'guide.yaml')) && existsSync(join(inner, 'guide.yaml')) ? inner : folder;
}

/**
 * The ledger of the content folder, worked out once a process; with `watch`, again whenever a file has
 * changed.
 *
 * @throws ContentError with every problem, where the content has any
 */
export function loadLedger({
  folder = contentFolder(),
  drafts = false,
  watch = false,
  onStage,
  files,
  comparisons,
}: LoadOptions = {}): Loaded {
  const today = todayFrom(process.env, new Date());
  const key = [folder, drafts, today, watch ? stamp(folder) : ''].join('\n');
  if (shared.panelLedger?.key === key) return shared.panelLedger.loaded;
  const kept = watch ? keptOf(folder) : undefined;
  onStage?.('read');
  const { content, problems } = readContent({
    folder,
    today,
    shownAs: folder,
    drafts,
    ...((kept?.files ?? files) && { kept: kept?.files ?? files }),
  });
  if (!content) throw new ContentError(problems);
  onStage?.('work');
  const loaded = {
    content,
    ledger: buildLedger(content, { today, drafts, kept: kept?.work ?? (comparisons ? { comparisons } : {}) }),
  };
  keepResults();
  if (!watch) releaseResults();
  shared.panelLedger = { key, loaded };
  if (watch) shared.panelLedgerGood = { folder, loaded };
  return loaded;
}

/**
 * The ledger that the development server makes pages of, drafts included: of the content as it is, or as it was before
 * it had a problem.
 *
 * @throws ContentError where it has had problems from the start
 */
export function liveLedger(): Loaded {
  try {
    return loadLedger({ drafts: true, watch: true });
  } catch (error) {
    const good = shared.panelLedgerGood;
    if (error instanceof ContentError && good?.folder === contentFolder()) return good.loaded;
    throw error;
  }
}

/** What is known of a folder that is read again and again. */
function keptOf(folder: string) {
  if (shared.panelLedgerKept?.folder !== folder) {
    const work = { panels: keptPanels(), comparisons: keptComparisons() };
    shared.panelLedgerKept = { folder, files: keptFiles(), work };
  }
  return shared.panelLedgerKept;
}

/** Endings of all that content may be made of. */
const CONTENT_ENDINGS = new Set([
  ...['yaml', 'md', 'mdx', 'avif', 'gif', 'jpeg', 'jpg', 'png', 'svg', 'tiff', 'webp'],
  ...FILE_READERS.flatMap((it) => it.endings).map((it) => it.slice(1)),
]);

function stamp(folder: string): string {
  // Pictures too, since a body may name them, and what meters write.
  const changes = (place: string) =>
    globSync(`**/*.{${[...CONTENT_ENDINGS].join()}}`, { cwd: place })
      .map((path) => `${path} ${statSync(join(place, path)).mtimeMs}`)
      .toSorted();
  return [folder, textsFolder()].flatMap(changes).join('\n');
}
