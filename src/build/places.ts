import { ContentError } from '../content/read/problem-list.ts';
import { loadLedger } from '../ledger/load-ledger.ts';
import { sitePath } from '../site/shared/site-address.ts';

/** What builds keep to themselves; one at a time has it. */
export const OWN = '.build';

/** Where a build grows before it takes the place of `dist/`. */
export const GROWING = `${OWN}/site`;

/** What stays from build to build; under the same lock. */
export const KEPT = `${OWN}/kept`;

/** Astro's folder for what the bundler writes, below the site. */
export const ASSETS = '_astro';

/** Where the guide lies on its host; its top where the content has problems, which the build tells of next. */
export function publishedPath(): string {
  try {
    return sitePath(loadLedger().ledger.guide.site);
  } catch (error) {
    if (error instanceof ContentError) return '/';
    throw error;
  }
}
