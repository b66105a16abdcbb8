import type { Said } from '../../measure/statement.ts';
import { IMPOSSIBLE_MARK } from '../marks.ts';
import { nameOf } from '../names.ts';
import type { WordsOf } from '../speaker.ts';

/** What putting the ledger together may say; `say` puts what stands within into words. */
export const ledgerWords = (
  say: (it: Said) => string,
): WordsOf<
  | 'still-a-draft'
  | 'withdrawn'
  | 'size-class-not-known'
  | 'range-not-known'
  | 'impossible-as-it-stands'
  | 'input-not-measured'
> => ({
  'still-a-draft': () => 'still a draft',
  withdrawn: () => 'withdrawn from the guide',
  'size-class-not-known': () => 'its size class is not known',
  'range-not-known': ({ because }) => `its range is not known: ${say(because)}`,
  'impossible-as-it-stands': ({ finding }) =>
    `${IMPOSSIBLE_MARK} impossible as it stands. ${say(finding).replace(/\.$/, '')}`,
  'input-not-measured': ({ metric }) => `${nameOf(metric)} was not measured`,
});
