import { FIXED_PAGES } from '../../content/rules/site-addresses.ts';
import { sitePath } from '../shared/site-address.ts';
import { HEADERS, HEADERS_BY_FOLDER } from './serving-rules.ts';

type Rule = readonly [path: string, headers: ReadonlyArray<readonly [name: string, value: string]>];

/**
 * `_headers`, which many static hosts read: a path to a line, `*` for whatever follows, and the headers of all that it
 * fits, indented. Such hosts put together what several paths say, so a header stands under paths of which no two fit one
 * address. They look for the file at the top of the host.
 */
export function headersFile(site: string): string {
  const top = sitePath(site).slice(0, -1);
  const rules: Rule[] = [
    ['/*', HEADERS],
    ...folders().map((path): Rule => {
      const headers = HEADERS_BY_FOLDER.map(
        ({ name, otherwise, folders: own, value }) =>
          [name, own.some((it) => path === `${it}*`) ? value : otherwise] as const,
      );
      return [path, headers.filter(([, value]) => value !== '')];
    }),
  ];
  return rules
    .map(([path, headers]) => `${top}${path}\n${headers.map(([name, value]) => `  ${name}: ${value}\n`).join('')}`)
    .join('\n');
}

/** The guide's folders, none within another, and its first page. */
function folders(): string[] {
  const pages = FIXED_PAGES.map((it) => `/${it.split('/')[1] ?? ''}`).map((it) => (it === '/' ? '/' : `${it}/*`));
  const others = [
    '/agreement/*',
    '/404.html',
    ...HEADERS_BY_FOLDER.flatMap((it) => it.folders.map((one) => `${one}*`)),
  ];
  return [...new Set([...pages, ...others])].toSorted();
}
