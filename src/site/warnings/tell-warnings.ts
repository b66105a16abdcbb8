import type { Ledger } from '../../ledger/ledger.ts';
import type { Loaded } from '../../ledger/load-ledger.ts';
import type { Warning } from './warning.ts';
import { warningCount, warningList } from './warning-list.ts';
import { warningsOf } from './warnings.ts';

/** On the global object, as the ledger is: the command and Astro's hooks may be two copies of this module. */
const shared = globalThis as { panelLedgerTold?: WeakSet<Ledger> };

/**
 * Prints what is impossible or doubtful in a ledger, once each ledger; notes stand on the pages, and in `check`.
 *
 * @returns what was found, whether or not it was printed before
 */
export function tellWarnings(loaded: Loaded, print: (text: string) => void = console.warn): Warning[] {
  const warnings = warningsOf(loaded, 'doubt');
  shared.panelLedgerTold ??= new WeakSet();
  if (warnings.length === 0 || shared.panelLedgerTold.has(loaded.ledger)) return warnings;
  shared.panelLedgerTold.add(loaded.ledger);
  print(`${warningList(warnings)}\n\n${warningCount(warnings)}; notes are listed by check.`);
  return warnings;
}
