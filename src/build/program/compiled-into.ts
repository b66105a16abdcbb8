import { needsAstro } from '../../content/read/needs-astro.ts';
import type { Source } from '../../content/read/source.ts';
import type { Loaded } from '../../ledger/load-ledger.ts';

const OF_PANEL = /^\/panels\/([^/]+)\/$/;
const OF_METHOD = /^\/methods\/([^/]+)\/$/;

/**
 * The tester's own file that is compiled into a page, as messages name it; undefined for pages of the product's alone.
 *
 * @param page its address below the guide's top
 */
export function compiledInto(page: string, { content }: Pick<Loaded, 'content'>): string | undefined {
  const source: Source | undefined =
    content.panels.get(OF_PANEL.exec(page)?.[1] ?? '')?.source ??
    content.methods.get(OF_METHOD.exec(page)?.[1] ?? '')?.source;
  return source && !source.isProducts && needsAstro(source) ? source.file : undefined;
}
