import { satteri } from '@astrojs/markdown-satteri';
import { wideTables } from '../site/methods/wide-tables.ts';

/** How the tester's Markdown becomes HTML, in Astro's hands and in ours. */
export const MARKDOWN = { syntaxHighlight: false, processor: satteri({ hastPlugins: [wideTables] }) } as const;

let renderer: ReturnType<typeof MARKDOWN.processor.createRenderer> | undefined;

/**
 * Renders Markdown as Astro would.
 *
 * @param body without front matter
 * @returns HTML
 */
export async function markdownHtml(body: string): Promise<string> {
  renderer ??= MARKDOWN.processor.createRenderer({ syntaxHighlight: MARKDOWN.syntaxHighlight });
  // With an empty front matter of its own: a body may begin with a rule, which looks like one.
  return (await (await renderer).render(`---\n---\n${body}`)).code;
}
