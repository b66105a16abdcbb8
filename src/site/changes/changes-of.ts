import type { Loaded } from '../../ledger/load-ledger.ts';
import type { Changes } from './changes.ts';
import { compareStates } from './compare-states.ts';
import { publishedSide } from './published-side.ts';
import { stateOfLedger } from './state-of-ledger.ts';

/** Changes with what they were found against. */
export interface ChangesFound {
  against: string;
  changes: Changes;
}

/**
 * What a build of the content as it is would change for readers.
 *
 * @param against as `publishedSide` takes it
 * @param options.folder the content folder
 * @throws UsageError where there is nothing to hold it against
 */
export async function changesOf(
  against: string,
  { folder, loaded }: { folder: string; loaded: Loaded },
): Promise<ChangesFound> {
  const { name, state } = await publishedSide(against, { folder, loaded });
  return { against: name, changes: compareStates(state, stateOfLedger(loaded.ledger)) };
}
