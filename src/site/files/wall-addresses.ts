import type { SessionFile } from '../../ledger/ledger.ts';
import { filesAddress } from '../shared/file-addresses.ts';

/** Addresses of what the build draws of a photo of the wall: of one photo and one marking, so that none is kept too long. */
export function wallAddresses(slug: string, { sha256, entry }: SessionFile): { photo: string; map: string } {
  const marked = 'corners' in entry ? entry.corners.flat().join('-') : '';
  const name = `${filesAddress(slug)}wall/${sha256.slice(0, 12)}-${marked}`;
  return { photo: `${name}.jpg`, map: `${name}-map.png` };
}
