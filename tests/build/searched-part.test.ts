import { expect, test } from 'vitest';
import { searchedPart } from '../../src/build/searched-part.ts';

const page = (main: string, body: string) =>
  `<!DOCTYPE html><html lang="en"><head><title>Gannet – A guide</title><meta name="description" content="left out"></head><body><header>left out</header>${main}${body}</main><footer>left out</footer></body></html>`;

/** A filter with brackets in what is quoted. */
const MAIN = '<main id="main" data-maker="A > B <main>" data-pagefind-filter="maker[data-maker]">';

test('of a page that marks what is found, that is left, in its order, with title, language and filters', () => {
  const found = '<h1 data-pagefind-body>Gannet</h1>';
  const notes =
    '<section data-pagefind-body><h2>Notes</h2><section title="</section>"><p>Of section</p></section><img alt="a > b" src="/a.png"></section>';
  const html = page(MAIN, `<p>left out</p>${found}<section>left out</section>${notes}<p>data left out</p>`);
  expect(searchedPart(html)).toBe(
    `<!DOCTYPE html><html lang="en"><head><title>Gannet – A guide</title></head><body>${MAIN}${found}${notes}</main></body></html>`,
  );
});

test('what only looks like a mark adds to what the indexer leaves out, and takes nothing away', () => {
  const found = '<h1 data-pagefind-body>Gannet</h1>';
  const html = page(MAIN, `<p>Of data-pagefind-body</p><i title="data-pagefind-body">x</i>${found}`);
  expect(searchedPart(html)).toContain(found);
});

test.each([
  ['is searched whole', page('<main data-pagefind-body>', '<p>All of it</p>')],
  [
    'has no main part',
    '<!DOCTYPE html><html lang="en"><head><title>A</title></head><body><p data-pagefind-body>B</p></body></html>',
  ],
  ['has no title', page(MAIN, '<h1 data-pagefind-body>A</h1>').replace(/<title>.*<\/title>/, '')],
  ['has an element without an end', page(MAIN, '<h1 data-pagefind-body>A')],
])('a page that %s stays as it is', (_, html) => {
  expect(searchedPart(html)).toBe(html);
});
