import { resolve } from 'node:path';
import { productFolder } from './product-folder.ts';

/** How the tester calls the program: by the script of a checkout, or as a package's command from a folder of one's own. */
export function calledAs(): string {
  return resolve('.') === productFolder() ? 'npm run ledger --' : 'npx panel-ledger';
}
