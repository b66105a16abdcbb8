import { dice } from '../support/draw-panel.ts';
import type { BuiltPage } from './built-page.ts';

const SEED = 1;

/**
 * The built guide's own page with its ranking grown to as many rows as wanted, over the same size classes: the rows of each
 * over and over, under new names and with other numbers.
 *
 * @param script whether the guide's own scripts come along
 * @throws where the page has no ranking
 */
export function sortPage({ html }: BuiltPage, rows: number, script: boolean): string {
  const [table = ''] = html.match(/<table class="ranking"[\s\S]*?<\/table>/) ?? [];
  const [head = ''] = /^[\s\S]*?<\/thead>/.exec(table) ?? [];
  const bodies = (table.match(/<tbody[\s\S]*?<\/tbody>/g) ?? []).map((body) => ({
    start: /^<tbody[\s\S]*?<\/tr>/.exec(body)?.[0] ?? '',
    models: body.match(/<tr role="row" data-f[\s\S]*?<\/tr>/g) ?? [],
  }));
  const count = bodies.reduce((sum, it) => sum + it.models.length, 0);
  if (!head || count === 0) throw new Error('the built guide has no ranking');
  const draw = dice(SEED);
  /** Figures as they are shown, which is what is sorted by. */
  const scrambled = (text: string) =>
    text.replace(/[\d,]*\.?\d+/, (it) => {
      const value = Number(it.replaceAll(',', '')) * draw.between([0.5, 2]);
      return value.toFixed(it.split('.')[1]?.length ?? 0);
    });
  const row = (model: string) =>
    model
      .replace(/(<th[^>]*><a href="[^"]*">)[^<]*/, `$1Model ${1 + Math.floor(draw.between([0, 10 * rows]))}`)
      .replace(
        /(<td role="cell" (?:class="watt"|data-l="[^"]*")>(?:<a[^>]*>)?<span[^>]*>)([^<]*)/g,
        (_, tags, text) => tags + scrambled(text),
      );
  let left = rows;
  const grown = bodies.map(({ start, models }, i) => {
    const own = i === bodies.length - 1 ? left : Math.round((rows * models.length) / count);
    left -= own;
    return `${start}${Array.from({ length: own }, (_, k) => row(models[k % models.length] as string)).join('')}</tbody>`;
  });
  const scripts = script ? (html.match(/<script\b[^>]*\bsrc="[^"]+"[^>]*><\/script>/g) ?? []).join('') : '';
  // The tools come along, so that sorting does all that it does for a reader, and filters can be timed.
  const [tools = ''] = (script && /<form id="guide-tools"[\s\S]*?<\/form>/.exec(html)) || [];
  const main = `<main id="main"><h1>${rows} rows</h1>${tools}${head}${grown.join('')}</table></main>`;
  const bare = html.replace(/<script\b[^>]*>[\s\S]*?<\/script>/g, '').replace(/<main\b[\s\S]*<\/main>/, () => main);
  return bare.replace('</body>', () => `${scripts}</body>`);
}
