import { linksIn } from './body-links.ts';
import type { Source } from './source.ts';

/** True of a text that is more than Markdown: the bundler compiles MDX, and makes pictures that a text shows smaller. */
export const needsAstro = (source: Source): boolean =>
  source.file.endsWith('.mdx') || linksIn(source).some((it) => it.kind !== 'link');
