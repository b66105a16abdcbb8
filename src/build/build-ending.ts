import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { calledAs } from '../content/read/called-as.ts';
import { counted } from '../content/read/problem-list.ts';
import { UsageError } from '../content/read/usage-error.ts';
import type { Loaded } from '../ledger/load-ledger.ts';
import { type RankedGuide, rankChanges } from '../site/changes/compare-ranks.ts';
import { rankRows, tieRows } from '../site/changes/rank-rows.ts';
import { ranksOfData } from '../site/changes/state-of-data.ts';
import { ranksOfLedger } from '../site/changes/state-of-ledger.ts';
import type { Row } from '../site/shared/told.ts';
import type { Warning } from '../site/warnings/warning.ts';
import { warningCount } from '../site/warnings/warning-list.ts';
import { showDate } from '../words/format.ts';
import type { AddressState } from './address-record.ts';

/** The places in the guide that a build takes the place of; why they are not known, or undefined where there was none. */
export type EarlierRanks = (RankedGuide & { builtFor: string }) | { unread: string } | undefined;

/** Changes in rank that an ending lists; the rest is counted. Our own choice. */
const MOST_CHANGES = 6;

/** Reads the places of the guide that lies in a folder, before a build takes its place. */
export function earlierRanks(folder: string): EarlierRanks {
  const file = join(folder, 'data', 'panels.json');
  if (!existsSync(file)) return undefined;
  try {
    return ranksOfData(readFileSync(file, 'utf8'), file);
  } catch (error) {
    if (!(error instanceof UsageError)) throw error;
    return { unread: error.message };
  }
}

/** What there is to say of the list of published addresses; nothing where it has all. */
export function addressLine({ file, fresh, state }: AddressState): string[] {
  const record = `\`${calledAs()} build --record\``;
  const addresses = fresh === 1 ? '1 address is' : `${fresh} addresses are`;
  const what = fresh > 0 ? addresses : 'Parts of pages are';
  if (state === 'whole') return [];
  if (state === 'written') return [`${what} kept in ${file} from now on; put it under version control.`];
  if (state === 'behind') return [`${what} new and not kept in ${file} yet: ${record} when this is published.`];
  return [`No published address is kept: ${record} writes ${file}, and no later build drops one unseen.`];
}

/** What a build has to say at its end: lines for people, and rows of what changed in the rankings. */
export interface BuildEnding {
  lines: string[];
  changes: Row[];
}

/**
 * Day, panels, drafts left out, warnings, what changed in rank, time and folder.
 *
 * @param seconds that it took
 */
export function buildEnding(
  { content, ledger }: Loaded,
  {
    earlier,
    warnings,
    folder,
    seconds,
  }: {
    earlier: EarlierRanks;
    warnings: readonly Warning[];
    folder: string;
    seconds: number;
  },
): BuildEnding {
  const drafts = [...content.panels.values()].filter((it) => it.data.status === 'draft').length;
  const withdrawn = [...ledger.panels.values()].filter((it) => it.data.status === 'withdrawn').length;
  const apart = [
    ...(withdrawn > 0 ? [`${withdrawn} of them withdrawn`] : []),
    ...(drafts > 0 ? [`${counted(drafts, 'draft')} left out`] : []),
  ];
  const files = readdirSync(folder, { recursive: true, withFileTypes: true });
  const pages = files.filter((it) => it.name.endsWith('.html')).length;
  const rows = earlier && 'panels' in earlier ? changedRows(earlier, { content, ledger }) : [];
  const changes =
    rows.length > MOST_CHANGES
      ? [...rows.slice(0, MOST_CHANGES - 1), { name: '', text: `and ${rows.length - MOST_CHANGES + 1} more` }]
      : rows;
  return {
    lines: [
      `Built for ${showDate(ledger.today)} in ${seconds.toFixed(1)} s: ${counted(ledger.panels.size, 'panel')}${apart.length > 0 ? ` (${apart.join(', ')})` : ''}, ${counted(pages, 'page')}, in ${folder}.`,
      `${warningCount(warnings)}; notes are listed by check.`,
      sinceWords(earlier, rows.length),
    ],
    changes,
  };
}

function changedRows(earlier: RankedGuide, { ledger }: Loaded): Row[] {
  const now = ranksOfLedger(ledger);
  const changes = rankChanges(earlier, now);
  const gone = [...earlier.panels.values()].filter((it) => !now.panels.has(it.slug));
  return [
    ...changes.newPanels.map(({ name }) => ({ name, text: 'new' })),
    ...gone.map(({ name, slug }) => ({
      name,
      text: ledger.panels.has(slug) ? 'withdrawn' : 'gone',
    })),
    ...rankRows(changes, ledger.guide),
    ...tieRows(changes).map(({ name, text }) => ({ name: `tie ${name}`, text })),
  ];
}

function sinceWords(earlier: EarlierRanks, count: number): string {
  if (!earlier) return 'No guide lay there before.';
  if ('unread' in earlier) return `Ranks are not compared with the guide that lay there: ${earlier.unread}`;
  const since = `Since the guide that lay there, for ${showDate(earlier.builtFor)}`;
  return count === 0 ? `${since}, no rank has changed.` : `${since}:`;
}
