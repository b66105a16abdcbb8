import { existsSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Where what was worked out is kept from one run to the next: with the packages of the guide's folder, as is the habit,
 * or beside its builds where it has none.
 */
export function cacheFolder(): string {
  return existsSync('node_modules') ? join('node_modules', '.cache', 'panel-ledger') : join('.build', 'cache');
}
