/** Plain notes become the HTML that Astro's own loader would make of them. */
import { expect, test } from 'vitest';
import { markdownHtml } from '../../src/layouts/markdown.ts';

test('typographic marks, ids of headings that don’t collide, tables that scroll in a frame of their own', async () => {
  const html = await markdownHtml(
    '# Noise\n\n# Noise\n\n"Loud" -- it\'s the fan.\n\n| dB | Fan |\n|--|--|\n| 40 | on |\n',
  );
  expect(html).toContain('<h1 id="noise">Noise</h1>\n<h1 id="noise-1">Noise</h1>');
  expect(html).toContain('“Loud” – it’s the fan.');
  expect(html).toMatch(/<div class="sheet" role="group" tabindex="0" aria-label="Table: dB"><table>/);
});

test('a body that begins with a rule keeps all of its text', async () => {
  expect(await markdownHtml('---\n\nBelow the rule.\n\n---\n')).toBe('<hr>\n<p>Below the rule.</p>\n<hr>\n');
});

test('markup is the tester’s own, code is not coloured', async () => {
  expect(await markdownHtml('```js\nlet a = 1;\n```\n')).toBe(
    '<pre><code class="language-js">let a = 1;\n</code></pre>\n',
  );
});
