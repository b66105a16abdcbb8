/** Where something in the content file of a run stands in the run. */
import type { Source } from '../../../content/read/source.ts';
import { valueAt } from '../../../content/schema/block.ts';
import { fieldPath } from '../../../content/schema/problem.ts';
import { isOfPanel, keysOf } from './places.ts';
import type { Run } from './run.ts';
import { sessionData } from './session-data.ts';

/**
 * The path of an entry or a setting, from that of a field of the panel's file: `sessions[0].peak.red` is `peak.red`. A repeat
 * is at its point's path.
 */
export function runPath(
  field: string,
  run: Run,
  source: Pick<Source, 'data' | 'unfinished'> | undefined,
): string | undefined {
  const keys = keysOf(field);
  const [list, place, ...rest] = keys;
  if (list !== 'sessions' || typeof place !== 'number')
    return isOfPanel(field) || field === 'field' ? field : undefined;
  const file = source?.unfinished?.kept ?? source?.data;
  if (valueAt(file, ['sessions', place, 'date']) !== run.date) return undefined;
  return pathInRun(rest, run);
}

/** The same from the keys within the session. */
export function pathInRun(keys: ReadonlyArray<string | number>, run: Run): string {
  const [block, place, ...rest] = keys;
  if ((block === 'beyond' || block === 'distances') && typeof place === 'number') {
    const own = sessionData(run).places[block][place] ?? place;
    const [field] = rest;
    return fieldPath(field === undefined ? [block, own] : [block, own, field]);
  }
  // A point's repeats and what they hold are all the point's.
  return fieldPath(block === 'grid' ? keys.slice(0, 4) : keys);
}
