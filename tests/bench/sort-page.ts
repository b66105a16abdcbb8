import { dice } from '../support/draw-panel.ts';
import type { BuiltPage } from './built-page.ts';

const SEED = 1;

/**
 * The built guide's own page with one ranking table in it, of as many rows as wanted: the rows of its tables
 * over and over, under new names and with other numbers to sort by.
 *
 * @param script whether the guide's own scripts come along
 * @throws where the page has no ranking table
 */
export function sortPage({ html }: BuiltPage, rows: number, script: boolean): string {
  const tables = html.match(/<table class="ranking"[\s\S]*?<\/table>/g) ?? [];
  const [head = ''] = /^[\s\S]*?<\/thead>/.exec(tables[0] ?? '') ?? [];
  const models = tables.flatMap(
    (table) => /<tbody>([\s\S]*)<\/tbody>/.exec(table)?.[1]?.match(/<tr[\s\S]*?<\/tr>/g) ?? [],
  );
  if (!head || models.length === 0) throw new Error('the built guide has no ranking table');
  const draw = dice(SEED);
  const body = Array.from({ length: rows }, (_, i) =>
    (models[i % models.length] as string)
      // The link of a dagger has a class; the plain one is the panel's name.
      .replace(/(<a href="[^"]*">)[^<]*(<\/a>)/, `$1Model ${1 + Math.floor(draw.between([0, 10 * rows]))}$2`)
      .replace(/data-v="([^"]*)"/g, (_, value) => `data-v="${Number(value) * draw.between([0.5, 2])}"`),
  );
  const scripts = script ? (html.match(/<script\b[^>]*\bsrc="[^"]+"[^>]*><\/script>/g) ?? []).join('') : '';
  // The frame that scrolls sideways stays around the table.
  const [frame = '<div>'] = /<div class="sheet wide"[^>]*>/.exec(html) ?? [];
  // The tools come along, so that sorting does all that it does for a reader, and filters can be timed.
  const [tools = ''] = (script && /<form id="guide-tools"[\s\S]*?<\/form>/.exec(html)) || [];
  const main = `<main id="main"><h1>${rows} rows</h1>${tools}${frame}${head}<tbody>${body.join('')}</tbody></table></div></main>`;
  const bare = html.replace(/<script\b[^>]*>[\s\S]*?<\/script>/g, '').replace(/<main\b[\s\S]*<\/main>/, () => main);
  return bare.replace('</body>', () => `${scripts}</body>`);
}
