import { resolve, sep } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { ContentError, problemList } from '../../content/read/problem-list.ts';
import type { Problem } from '../../content/schema/problem.ts';
import { contentFolder, type Loaded, loadLedger } from '../../ledger/load-ledger.ts';
import type { Warning } from '../../site/warnings/warning.ts';
import { warningList } from '../../site/warnings/warning-list.ts';
import { warningsOf } from '../../site/warnings/warnings.ts';

/** ms; files that are saved together, as by a switch of branches, are followed together. */
const TOGETHER = 20;

/** Askings for notes, and ms between them. */
const MOST_TRIES = 50;
const BETWEEN_TRIES = 100;

/** What open pages are told by. */
export const PROBLEMS_EVENT = 'panel-ledger:problems';

/** What of the development server is needed here. */
export interface LiveServer {
  watcher: {
    add(path: string): unknown;
    on(event: 'all', listener: (event: string, path: string) => void): unknown;
  };
  /** Tells all open pages. */
  send(message: { type: 'full-reload' } | { type: 'custom'; event: string; data: unknown }): void;
  /** Renders the notes that have changed anew, which may be refused for a moment. */
  refreshNotes(): Promise<void>;
  /** True where that has been done for this content. */
  areRendered(loaded: Loaded): boolean;
  print(text: string): void;
}

/** How the content stands. */
export interface LiveState {
  /** Another one whenever pages are to be loaded again. */
  version: string;
  /** What is wrong; nothing while all is well. */
  problems: readonly Problem[];
}

/**
 * Follows the content while the tester writes: works it out as soon as a file is saved, and has open pages load again
 * only once that is done. A problem is told in the pages, which stay as they were, and once in the terminal.
 *
 * @returns how it stands right now
 */
export function liveContent(server: LiveServer): () => LiveState {
  const folder = resolve(contentFolder());
  const told = new Set<string>();
  let problems: readonly Problem[] = [];
  let notes: ReadonlyMap<string, string> | undefined;
  let version = 1;
  let waiting: NodeJS.Timeout | undefined;

  /** Notes changed, came or went since they were rendered. */
  function areNotesNew(loaded: Loaded): boolean {
    const now = notesOf(loaded);
    const before = notes;
    notes = now;
    return before?.size !== now.size || [...now].some(([slug, body]) => before.get(slug) !== body);
  }

  function tellProblems(found: readonly Problem[]): void {
    const isSame = JSON.stringify(found) === JSON.stringify(problems);
    problems = found;
    if (isSame) return;
    if (found.length > 0) server.print(`\n${problemList(found, 'pages stay as they were until that is mended')}`);
    else server.print('Mended: the pages follow again.');
    server.send({ type: 'custom', event: PROBLEMS_EVENT, data: found });
  }

  function tellWarnings(loaded: Loaded): void {
    const key = ({ file, check, text }: Warning) => `${file}\n${check}\n${text}`;
    const fresh = warningsOf(loaded, 'doubt').filter((it) => !told.has(key(it)));
    for (const it of fresh) told.add(key(it));
    if (fresh.length > 0) server.print(`\n${warningList(fresh)}`);
  }

  /** @returns undefined where there is a problem, which has been told */
  function workOut(): Loaded | undefined {
    try {
      const loaded = loadLedger({ drafts: true, watch: true });
      tellProblems([]);
      tellWarnings(loaded);
      return loaded;
    } catch (error) {
      if (!(error instanceof ContentError)) throw error;
      tellProblems(error.problems);
      return undefined;
    }
  }

  /** Astro does nothing while it looks at its configuration, and does not say so. */
  async function renderNotes(loaded: Loaded): Promise<void> {
    for (let tries = 0; tries < MOST_TRIES; tries++) {
      await server.refreshNotes();
      if (server.areRendered(loaded)) return;
      await sleep(BETWEEN_TRIES);
    }
    server.print('The notes could not be rendered anew: start again with dev.');
  }

  async function follow(): Promise<void> {
    const loaded = workOut();
    if (!loaded) return;
    if (areNotesNew(loaded)) await renderNotes(loaded);
    // A page that was asked for before now may have notes of before.
    version++;
    server.send({ type: 'full-reload' });
  }

  const first = workOut();
  if (first) notes = notesOf(first);
  server.watcher.add(folder);
  server.watcher.on('all', (event, path) => {
    if (!resolve(path).startsWith(folder + sep) || event === 'addDir') return;
    clearTimeout(waiting);
    waiting = setTimeout(() => {
      follow().catch((error: unknown) => server.print(String(error)));
    }, TOGETHER);
  });
  return () => ({ version: String(version), problems });
}

/** What stands on pages by way of Astro: bodies, and from which file. */
function notesOf({ content }: Loaded): Map<string, string> {
  return new Map([...content.panels].map(([slug, { source }]) => [slug, `${source.file}\n${source.body}`]));
}
