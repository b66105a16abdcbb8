import type { PanelEntry, SessionFile } from '../../ledger/ledger.ts';
import { panelAddress } from './panel-address.ts';

/** Anchor of a file on the page of a panel's files. */
export function fileAnchor({ name }: Pick<SessionFile, 'name'>): string {
  return `file-${name.replace(/[^\p{L}\p{N}-]+/gu, '-')}`;
}

/** The page of a panel's files. */
export function filesAddress(slug: string): string {
  return `${panelAddress(slug)}files/`;
}

/** Where a file can be downloaded, as it lay on the bench. */
export function fileAddress(slug: string, { name }: Pick<SessionFile, 'name'>): string {
  return `${filesAddress(slug)}${encodeURIComponent(name)}`;
}

/** True where a panel has a page of its files. */
export function hasFiles({ sessions }: PanelEntry): boolean {
  return sessions.some((it) => it.files.length > 0);
}
