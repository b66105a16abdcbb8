import { rmSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Loaded } from '../ledger/load-ledger.ts';
import { astroSettings } from './astro-settings.ts';
import { releaseBuildLock } from './build-lock.ts';
import { type BegunCards, beginCards } from './cards/card-store.ts';
import { finishSite } from './finish-site.ts';
import { keptPages } from './kept-pages.ts';
import { outputFault } from './output-fault.ts';
import { picturedPages } from './pictured-pages.ts';
import { GROWING, KEPT, OWN, publishedPath } from './places.ts';
import { compiledInto } from './program/compiled-into.ts';
import { forgetProgram, keptProgram, type Program } from './program/kept-programs.ts';
import { makeProgram } from './program/make-program.ts';
import { PageFault } from './program/page-fault.ts';
import { programKey } from './program/program-key.ts';
import { siteFolder } from './site-folder.ts';

/**
 * Builds the guide, under a build's lock: with the program that Astro made of the same code and texts once, or makes now.
 * Where Astro has to make pictures as well, or the program can't be had, the build is Astro's. What is written is, byte
 * for byte, the same.
 *
 * @throws PageFault where a page can't be rendered
 * @throws where the output can't be written
 */
export async function buildGuide(loaded: Loaded): Promise<void> {
  if (await isBuiltByProgram(loaded)) return;
  // Loaded here alone: what does without it is faster for that.
  const { build } = await import('astro');
  await build({ ...astroSettings(), logLevel: 'warn' });
}

async function isBuiltByProgram(loaded: Loaded): Promise<boolean> {
  if (picturedPages(loaded).size > 0) return false;
  const isFresh = Boolean(process.env.LEDGER_FRESH);
  const base = publishedPath();
  const key = programKey(loaded, base);
  // Drawn beside all that comes, the making of a program too: both are made anew where the code is another one.
  const cards = beginCards(loaded.ledger);
  try {
    const program = (isFresh ? undefined : keptProgram(key)) ?? (await makeProgram(loaded, key, base));
    return program !== undefined && (await isWritten(program, key, { loaded, base, isFresh, cards }));
  } finally {
    // What is not laid into the output by now is wanted by nobody.
    cards.stop();
  }
}

/** False where the program is none that can be used in this way. */
async function isWritten(
  program: Program,
  key: string,
  { loaded, base, isFresh, cards }: { loaded: Loaded; base: string; isFresh: boolean; cards: BegunCards },
): Promise<boolean> {
  const [grown, target] = [resolve(GROWING), resolve(siteFolder())];
  rmSync(grown, { recursive: true, force: true });
  const pages = keptPages(resolve(KEPT));
  pages.open(loaded, isFresh);
  let indexed: Promise<void>;
  try {
    const { renderPages } = await import('./program/render-pages.ts');
    ({ indexed } = await renderPages(program, { pages, grown, base, textOf: (page) => compiledInto(page, loaded) }));
  } catch (error) {
    if (error instanceof PageFault || outputFault(error, [target, resolve(OWN)])) throw error;
    // Astro has come to make its program in another way.
    forgetProgram(key);
    return false;
  }
  await finishSite(loaded, pages, { grown, target, base, indexed, cards });
  releaseBuildLock(resolve(OWN));
  return true;
}
