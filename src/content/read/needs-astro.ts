import { linksIn } from './body-links.ts';
import type { Source } from './source.ts';

/** True of a text that takes in files: pictures, which Astro makes smaller, or modules. */
export const takesInFiles = (source: Source): boolean => linksIn(source).some((it) => it.kind !== 'link');

/** True of a text that is more than Markdown: the bundler compiles MDX, and what a text takes in. */
export const needsAstro = (source: Source): boolean => source.file.endsWith('.mdx') || takesInFiles(source);
