import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { sitePath } from '../../site/shared/site-address.ts';

/**
 * The path for which the guide in a folder was built, told by its own data package; the host's top where there is none
 * to ask.
 */
export function builtPath(folder: string): string {
  try {
    const { homepage }: { homepage: string } = JSON.parse(
      readFileSync(join(folder, 'data', 'datapackage.json'), 'utf8'),
    );
    return sitePath(homepage);
  } catch {
    return '/';
  }
}
