import { existsSync, globSync, readFileSync, statSync } from 'node:fs';
import { join, sep } from 'node:path';
import { problemList } from '../../content/read/problem-list.ts';
import { readContent } from '../../content/read/read-content.ts';
import { UsageError } from '../../content/read/usage-error.ts';
import { buildLedger } from '../../ledger/build-ledger.ts';
import type { Loaded } from '../../ledger/load-ledger.ts';
import { keepResults } from '../../ledger/result-store.ts';
import { withContentAt } from './content-at-revision.ts';
import type { GuideState } from './guide-state.ts';
import { stateOfData } from './state-of-data.ts';
import { stateOfLedger } from './state-of-ledger.ts';

/** What the content is held against. */
export interface PublishedSide {
  /** What messages call it: `dist/data/panels.json`, `the revision v3`. */
  name: string;
  state: GuideState;
}

/** Where the data file lies in a built guide. */
const DATA = 'data/panels.json';

/** s; a server that takes longer has no answer. */
const LONGEST_FETCH = 30;

/**
 * What was published last, to hold the content against.
 *
 * @param against a built folder, a `panels.json`, the http address of either, or a git revision of the content
 * @param options.folder the content folder, whose repository is asked for revisions
 * @throws UsageError where it is none of these, or can't be read
 */
export async function publishedSide(
  against: string,
  { folder, loaded }: { folder: string; loaded: Loaded },
): Promise<PublishedSide> {
  if (/^https?:\/\//i.test(against)) return fetchedSide(against);
  if (existsSync(against)) return statSync(against).isDirectory() ? folderSide(against) : fileSide(against);
  return revisionSide(against, folder, loaded.ledger.today);
}

/** What is compared with where nobody says what: the guide that was built last, or else the newest revision. */
export function usualAgainst(site: string): string {
  return existsSync(join(site, DATA)) ? site : 'HEAD';
}

function fileSide(file: string): PublishedSide {
  return { name: file, state: stateOfData(readFileSync(file, 'utf8'), file) };
}

/** A built folder tells all of its pages besides. */
function folderSide(folder: string): PublishedSide {
  const file = [join(folder, DATA), join(folder, 'panels.json')].find((it) => existsSync(it));
  if (!file) throw new UsageError(`${folder} is no built guide: it has no ${DATA}.`);
  const { state } = fileSide(file);
  if (!existsSync(join(folder, 'index.html'))) return { name: file, state };
  const pages = globSync('**/index.html', { cwd: folder }).map((it) => {
    const address = it.split(sep).slice(0, -1).join('/');
    return address === '' ? '/' : `/${address}/`;
  });
  return { name: file, state: { ...state, pages: new Set(pages), knowsAllPages: true } };
}

async function fetchedSide(address: string): Promise<PublishedSide> {
  const url = new URL(address);
  if (!url.pathname.endsWith('.json')) url.pathname = `${url.pathname.replace(/\/*$/, '/')}${DATA}`;
  let text: string;
  try {
    const response = await fetch(url, { signal: AbortSignal.timeout(LONGEST_FETCH * 1000) });
    if (!response.ok) throw new UsageError(`${url} answers with ${response.status} ${response.statusText}.`);
    text = await response.text();
  } catch (error) {
    if (error instanceof UsageError) throw error;
    const { cause, message } = error as Error;
    throw new UsageError(`${url} can't be fetched: ${cause instanceof Error ? cause.message : message}.`);
  }
  return { name: String(url), state: stateOfData(text, String(url)) };
}

/** Worked out for the same day and by the same code as the content is, so that what differs is what was written. */
function revisionSide(revision: string, folder: string, today: string): PublishedSide {
  const shownAs = `${folder} in the revision "${revision}"`;
  const state = withContentAt(folder, revision, (laid) => {
    const { content, problems } = readContent({ folder: laid, today, shownAs: `${revision}:${folder}` });
    if (!content) {
      throw new UsageError(
        `${problemList(problems).replace(/; nothing was built\.$/, '')}.\n\n${shownAs} can’t be worked out by today's rules. Compare with a built folder or a panels.json instead.`,
      );
    }
    const ledger = buildLedger(content, { today });
    keepResults();
    return stateOfLedger(ledger);
  });
  return { name: shownAs, state };
}
