import { linksIn } from '../content/read/body-links.ts';
import { takesInFiles } from '../content/read/needs-astro.ts';
import type { Loaded } from '../ledger/load-ledger.ts';

/**
 * Pages whose text shows pictures of its own. Astro makes these, smaller or in another format, while it renders the page,
 * so such a page is rendered in every build, and by Astro. Photos of panels are none of these: a list in their file names them.
 */
export function picturedPages({ content }: Loaded): ReadonlySet<string> {
  const pages = new Set<string>();
  for (const [slug, { source }] of content.panels) {
    if (takesInFiles(source)) pages.add(`/panels/${slug}/`);
  }
  for (const [id, { source }] of content.methods) {
    if (linksIn(source).some((it) => it.kind === 'image')) pages.add(`/methods/${id}/`);
  }
  return pages;
}
