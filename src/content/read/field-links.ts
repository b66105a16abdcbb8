import { isBlock } from '../schema/block.ts';
import type { Source } from './source.ts';

/** An address that stands in a text of the front matter, or of a YAML file. */
export interface FieldLink {
  address: string;
  path: readonly PropertyKey[];
}

/** A link as Markdown writes it. */
const WRITTEN = /\]\(([^()\s]+)\)/g;
/** An address of the guide that stands as it is. */
const BARE =
  /(?<![\w/.:(#-])\/(?:agreement|bench|cards|cautions|changes|compare|data|emitted|frame|instruments|methods|panels|plan|plots|search)\/[^\s"'“”‘’<>(),;]*/g;

/** Addresses in the texts of a file's fields, in their order; those of other sites are left out. */
export function fieldLinks(source: Pick<Source, 'data'>, site: string | undefined): FieldLink[] {
  return textsIn(source.data).flatMap(({ path, text }) => {
    const written = [...text.matchAll(WRITTEN)].flatMap((it) => it[1] ?? []);
    const rest = text.replaceAll(WRITTEN, ' ');
    const bare = [...rest.matchAll(BARE)].map(([it]) => it);
    const full = site === undefined ? [] : rest.split(/[\s"“”<>(),;]+/).filter((it) => it.startsWith(`${site}/`));
    return [...written.filter((it) => !isOutside(it, site)), ...bare, ...full].map((it) => ({
      address: it.replace(/[.:!?]+$/, ''),
      path,
    }));
  });
}

const isOutside = (address: string, site: string | undefined) =>
  /^[a-z][a-z0-9+.-]*:/i.test(address) && !(site !== undefined && address.startsWith(`${site}/`));

function textsIn(
  data: unknown,
  path: readonly PropertyKey[] = [],
): Array<{ path: readonly PropertyKey[]; text: string }> {
  if (typeof data === 'string') return data.includes('/') ? [{ path, text: data }] : [];
  if (Array.isArray(data)) return data.flatMap((it, i) => textsIn(it, [...path, i]));
  return isBlock(data) ? Object.entries(data).flatMap(([key, it]) => textsIn(it, [...path, key])) : [];
}
