import { rmSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Loaded } from '../ledger/load-ledger.ts';
import { releaseBuildLock } from './build-lock.ts';
import { finishSite } from './finish-site.ts';
import { keptPages } from './kept-pages.ts';
import { keptProgram } from './kept-program.ts';
import { outputFault } from './output-fault.ts';
import { GROWING, KEPT, OWN, publishedPath } from './places.ts';
import { siteFolder } from './site-folder.ts';

/**
 * Builds the guide with the program that Astro made of the same code and texts in a build before, under a build's lock.
 * What it writes is, byte for byte, what Astro's build would write.
 *
 * @returns false where there is no such program, or none that can be used in this way: Astro's build is to do it
 * @throws where the output can't be written
 */
export async function buildFromKept(loaded: Loaded): Promise<boolean> {
  if (process.env.LEDGER_FRESH) return false;
  const kept = keptProgram(resolve(KEPT));
  const program = kept.open(loaded);
  if (!program) return false;
  const [grown, target, base] = [resolve(GROWING), resolve(siteFolder()), publishedPath()];
  rmSync(grown, { recursive: true, force: true });
  const pages = keptPages(resolve(KEPT));
  pages.open(loaded, false);
  try {
    const { renderKept } = await import('./render-kept.ts');
    await renderKept(program, { pages, grown, base });
  } catch (error) {
    if (outputFault(error, [target, resolve(OWN)])) throw error;
    // Astro's build tells of what is wrong with a page better, or has come to make its program in another way.
    kept.forget();
    return false;
  }
  await finishSite(loaded, pages, { grown, target, base });
  releaseBuildLock(resolve(OWN));
  return true;
}
