import { describe, expect, test } from 'vitest';
import { lightHtml } from '../../src/build/light-html.ts';

const page = (body: string) =>
  `<!DOCTYPE html><html lang="en"><head><title>A</title></head><body>${body}</body></html>`;
const light = (body: string) => lightHtml(page(body)).slice(page('').indexOf('</body>'), -'</body></html>'.length);

describe('a light page', () => {
  test('has no quotes around plain values', () => {
    expect(light('<a href="/methods/rank/" class="more">Ranks</a>')).toBe(
      '<a href=/methods/rank/ class=more>Ranks</a>',
    );
  });

  test.each([
    '<p class="small soft">a</p>',
    '<p title="">a</p>',
    '<a href="/?with=a">a</a>',
    `<p title="it's">a</p>`,
    '<p title="a>b">a</p>',
    '<svg><path d="M1 2"/><br/></svg>',
    '<input value="`">',
    '<p hidden>a</p>',
    'x = "y" in a text',
  ])('keeps what means something: %s', (body) => {
    expect(light(body)).toBe(body);
  });

  test('keeps the slash of what ends where it begins apart from a value', () => {
    expect(light('<rect class="a" x="1"/>')).toBe('<rect class=a x=1 />');
    expect(light('<rect class="a b" />')).toBe('<rect class="a b"/>');
  });

  test('leaves out ends and blanks within tables, and none around or in what their cells say', () => {
    expect(
      light(
        'a <table> <caption>b c</caption> <thead> <tr> <th scope="col">d</th> <td> e <b>f</b> </td> </tr> </thead> <tbody><tr><td></td></tr></tbody> </table> g',
      ),
    ).toBe('a <table><caption>b c</caption><thead><tr><th scope=col>d<td> e <b>f</b> <tbody><tr><td></table> g');
  });

  test('leaves out ends of list items and paragraphs where the next tag tells them', () => {
    expect(light('<ul><li>a</li> <li>b</li></ul><div><p>c</p><p>d</p></div><p>e</p>f<p>g</p><a href="x">h</a>')).toBe(
      '<ul><li>a<li>b</ul><div><p>c<p>d</div><p>e</p>f<p>g</p><a href=x>h</a>',
    );
  });

  test('keeps those where the indexer reads, which takes no end for told', () => {
    expect(light('<main data-pagefind-body><ul><li>a</li></ul><p class="b">c</p></main>')).toBe(
      '<main data-pagefind-body><ul><li>a</li></ul><p class=b>c</p></main>',
    );
  });

  test.each([
    '<pre class="a"> <td> "b" </td> </pre>',
    '<script type="module">"<td> </td>"</script>',
    '<!-- <td a="b"> -->',
  ])('leaves %s alone', (body) => {
    expect(light(body)).toBe(body);
  });

  test('keeps its head as it is', () => {
    expect(lightHtml(page(''))).toBe(page(''));
  });
});
