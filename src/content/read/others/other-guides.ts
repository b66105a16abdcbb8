import { join } from 'node:path';
import type { OtherGuide } from './other-guide.ts';
import { folderFiles } from './package-files.ts';
import { readPackage } from './read-package.ts';

/** Where data packages of other testers lie in the content folder. */
export const OTHERS = 'others';

/**
 * The other guides whose agreement is published, in the tester's order.
 *
 * @param names folders that `rules/others-readable.ts` has found nothing wrong with
 */
export function otherGuides(folder: string, names: readonly string[]): OtherGuide[] {
  return names.flatMap((name) => readPackage(folderFiles(join(folder, OTHERS, name)), name).guide ?? []);
}
