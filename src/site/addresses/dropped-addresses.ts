import type { Problem } from '../../content/schema/problem.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { movedFiles, movedPages } from '../moved/moved-pages.ts';
import { panelAddress } from '../shared/panel-address.ts';
import type { AddressList, KeptAddress } from './address-list.ts';
import { guideAddresses } from './guide-addresses.ts';
import { isOfWithdrawn, sessionAddress, withdrawnAddresses } from './withdrawn.ts';

/** A slug of a panel in one of its addresses. */
const OF_PANEL = /^\/(?:panels|data\/compare)\/([^/]+?)(?:\.json)?(?:\/|$)/;
/** Addresses or parts that a problem names; the rest is counted. */
const MOST_NAMED = 3;

/**
 * What a build would drop of the addresses that are kept: a problem for each panel, page, session or part, with what
 * keeps it. Nothing where each is there, leads on, or is withdrawn with a reason.
 *
 * @param file what problems call the list
 */
export function droppedAddresses(kept: AddressList, ledger: Ledger, file: string): Problem[] {
  const live = guideAddresses(ledger);
  const moved = new Map([...movedPages(ledger), ...movedFiles(ledger)].map(({ from, to }) => [from, to]));
  const withdrawn = withdrawnAddresses(ledger.guide);
  const isWithdrawn = (address: string) => withdrawn.has(address);
  const gone: Array<[address: string, entry: KeptAddress]> = [];
  const problems: Problem[] = [];
  for (const [address, entry] of kept) {
    if (isWithdrawn(address)) continue;
    const now = moved.get(address) ?? address;
    const there = live.get(now);
    if (!there) {
      gone.push([address, entry]);
      continue;
    }
    const told = { file, line: entry.line, field: '' };
    const parts = [...entry.parts].filter((it) => !there.parts.has(it) && !isOfWithdrawn(it, ledger.guide));
    if (parts.length > 0) problems.push({ ...told, ...lostParts(address, parts) });
    for (const [day, metrics] of entry.sessions) {
      if ([address, now].some((it) => isWithdrawn(sessionAddress(it, day)))) continue;
      const own = there.sessions.get(day);
      // Told on the calculation page already.
      if (!own && now.endsWith('/files/') && !live.get(now.replace(/files\/$/, 'methodology/'))?.sessions.has(day))
        continue;
      const lost = [...metrics].filter((it) => !own?.has(it)).map((it) => `${it}-${day}`);
      if (lost.length === 0) continue;
      problems.push({ ...told, ...(own ? lostParts(now, lost) : lostSession(now, day, [...there.sessions.keys()])) });
    }
  }
  const groups = Map.groupBy(gone, ([address]) => OF_PANEL.exec(address)?.[1] ?? address);
  for (const [name, them] of groups) {
    const line = Math.min(...them.map(([, it]) => it.line));
    const addresses = them.map(([address]) => address);
    const isPanel = addresses.includes(panelAddress(name));
    const days = them.flatMap(([, it]) => [...it.sessions.keys()]);
    problems.push({
      ...{ file, line, field: '', found: `${named(addresses)}, which this build would drop` },
      ...(isPanel
        ? panelGone(name, likelyNames(days, kept, ledger))
        : { wanted: WANTED, hint: hintFor(addresses[0] ?? '') }),
    });
  }
  return problems.toSorted((a, b) => (a.line ?? 0) - (b.line ?? 0));
}

type Told = Pick<Problem, 'found' | 'wanted' | 'hint'>;

const WANTED = 'a page or file that is there, leads on, or says that it was withdrawn';
const entry = (address: string) => `\`{ address: "${address}", date: …, reason: … }\``;
const hintFor = (address: string) => `if it has to go, put ${entry(address)} under \`withdrawn\` in guide.yaml`;

function panelGone(slug: string, likely: readonly string[]): Omit<Told, 'found'> {
  const [name] = likely;
  const other =
    likely.length === 1
      ? `panels/${name} has the same sessions: if it is that panel, add \`formerly: [${slug}]\` there`
      : `if it has another name now, add \`formerly: [${slug}]\` to it (the command \`rename\` does)`;
  return {
    wanted: WANTED,
    hint: `${other}; if it is no longer ranked, keep its folder with \`status: withdrawn\`; if all of it has to go, put ${entry(panelAddress(slug))} under \`withdrawn\` in guide.yaml`,
  };
}

/** Panels without a kept address that were read on a day of the one that is gone. */
function likelyNames(days: readonly string[], kept: AddressList, { panels }: Ledger): string[] {
  return [...panels.values()]
    .filter(({ slug, data }) => data.status !== 'draft' && !kept.has(panelAddress(slug)))
    .filter(({ sessions }) => sessions.some((it) => days.includes(it.date)))
    .map((it) => it.slug);
}

function lostSession(page: string, day: string, others: readonly string[]): Told {
  const had = others.length > 0 ? `; its sessions are of ${others.join(', ')}` : '';
  return {
    found: `the session of ${day} on ${page}, with the parts #…-${day}, which this build would drop`,
    wanted: `a session of that day${had}`,
    hint: `write its day as it was; if it has to go, put ${entry(sessionAddress(page, day))} under \`withdrawn\` in guide.yaml: its page then says so`,
  };
}

function lostParts(page: string, parts: readonly string[]): Told {
  return {
    found: `${named(parts.map((it) => `${page}#${it}`))}, which this build would drop`,
    wanted: 'a page that has these parts',
    hint: `${lostHint(page)}; taking them out of this file gives them up`,
  };
}

function lostHint(page: string): string {
  if (page === '/changes/')
    return 'corrections stay in corrections.yaml, each with the day and figure it was written with';
  if (page.endsWith('/files/')) return 'they come of the files that the session named: name these again';
  return 'ids of metrics and versions of methods belong to the program: see what its update says';
}

function named(addresses: readonly string[]): string {
  const more = addresses.length - MOST_NAMED;
  const shown = addresses.slice(0, MOST_NAMED).join(', ');
  return more > 0 ? `${shown} and ${more} more` : shown;
}
