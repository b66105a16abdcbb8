import { FIXED_FILES, FIXED_PAGES } from '../../content/rules/site-addresses.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { isFigure } from '../../measure/figure.ts';
import { METHODS } from '../../measure/methods.ts';
import { METRICS, type Metric } from '../../measure/metrics.ts';
import { CARDS_PAGE } from '../cards/card-files.ts';
import { publicCorrections } from '../export/corrections-data.ts';
import { movedFiles, movedPages } from '../moved/moved-pages.ts';
import { filesAddress, hasFiles } from '../shared/file-addresses.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { type AddressList, entryOf } from './address-list.ts';
import { withdrawnAddresses } from './withdrawn.ts';

/** Adds addresses that a guide has to a list. */
type AddressSource = (ledger: Ledger, list: AddressList) => void;

/**
 * Where the addresses come from that a guide keeps for good. What publishes pages or files of its own adds itself here;
 * a test holds the list against a build.
 */
const SOURCES: readonly AddressSource[] = [
  fixedAddresses,
  correctionAddresses,
  methodAddresses,
  panelAddresses,
  formerAddresses,
];

/** All addresses of a guide as it is published: of drafts, panels and sessions, there is nothing in it. */
export function guideAddresses(ledger: Ledger): AddressList {
  const list: AddressList = new Map();
  for (const add of SOURCES) add(ledger, list);
  return list;
}

function fixedAddresses({ guide }: Ledger, list: AddressList): void {
  for (const it of [...FIXED_PAGES, ...FIXED_FILES]) entryOf(list, it);
  if (guide.agreement.length > 0) entryOf(list, '/agreement/');
  if (guide.cards.show || guide.cards.badges) entryOf(list, CARDS_PAGE);
}

/** A correction stays where it was published. */
function correctionAddresses(ledger: Ledger, list: AddressList): void {
  const { parts } = entryOf(list, '/changes/');
  for (const { id } of publicCorrections(ledger)) parts.add(id);
}

/** A method keeps a part of its page for every version that it has had. */
function methodAddresses(_ledger: Ledger, list: AddressList): void {
  for (const { id, version } of METHODS) {
    const { parts } = entryOf(list, `/methods/${id}/`);
    for (let it = 1; it <= version; it++) parts.add(`version-${it}`);
  }
}

/** Pages and file of each panel, and the account of every figure and gap of every session. */
function panelAddresses({ panels }: Ledger, list: AddressList): void {
  for (const panel of panels.values()) {
    const { slug, data, sessions } = panel;
    if (data.status === 'draft') continue;
    entryOf(list, panelAddress(slug));
    entryOf(list, `/data/compare/${slug}.json`);
    const calculation = entryOf(list, `${panelAddress(slug)}methodology/`);
    const files = hasFiles(panel) ? entryOf(list, filesAddress(slug)) : undefined;
    for (const { date, figures, readings, files: own } of sessions) {
      if (readings.draft) continue;
      const idsOf = (isWanted: (it: Metric) => boolean) => new Set(METRICS.filter(isWanted).map((it) => it.id));
      const told = idsOf(({ id, isOfFiles }) => figures.has(id) && !isOfFiles);
      calculation.sessions.set(date, told);
      // The page of files has no gaps.
      const inFiles = METRICS.filter(({ id, isOfFiles }) => isFigure(figures.get(id)) && isOfFiles === true);
      const ofFiles = new Set(inFiles.flatMap(({ id, formerly }) => (formerly ? [id, formerly] : [id])));
      if (own.length > 0) files?.sessions.set(date, ofFiles);
    }
  }
}

/** Addresses that lead on, and those that say what was there, are kept too: whoever takes one out is told. */
function formerAddresses(ledger: Ledger, list: AddressList): void {
  for (const { from } of [...movedPages(ledger), ...movedFiles(ledger)]) entryOf(list, from);
  for (const address of withdrawnAddresses(ledger.guide).keys()) if (!address.includes('#')) entryOf(list, address);
}
