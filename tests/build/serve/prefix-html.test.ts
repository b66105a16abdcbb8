/** Addresses of a page get the guide's path; nothing else in it moves. */
import { describe, expect, test } from 'vitest';
import { prefixHtml } from '../../../src/build/serve/prefix-html.ts';

const prefixed = (html: string, base = '/some/path/') => prefixHtml(html, base, [`${base}_astro/`]);

test.each([
  ['<a href="/">x</a>', '<a href="/some/path/">x</a>'],
  ['<A HREF=/panels/>x</A>', '<A HREF=/some/path/panels/>x</A>'],
  ["<img src='/a.webp' alt='/b'>", "<img src='/some/path/a.webp' alt='/b'>"],
  ['<a href=" /a?b=/c#/d">', '<a href=" /some/path/a?b=/c#/d">'],
  ['<a href="/compare/?with=a&amp;b">', '<a href="/some/path/compare/?with=a&amp;b">'],
  ['<form action="/" data-compare="/compare/?with=">', '<form action="/some/path/" data-compare="/compare/?with=">'],
  [
    '<source srcset="/photos/a-320.avif 320w, /photos/a-640.avif 640w">',
    '<source srcset="/some/path/photos/a-320.avif 320w, /some/path/photos/a-640.avif 640w">',
  ],
  [
    '<meta http-equiv="refresh" content="0; url=/panels/b/">',
    '<meta http-equiv="refresh" content="0; url=/some/path/panels/b/">',
  ],
  [
    '<svg><a xlink:href="/x"><use href="#y"/></a></svg>',
    '<svg><a xlink:href="/some/path/x"><use href="#y"/></a></svg>',
  ],
])('%s', (html, wanted) => expect(prefixed(html)).toBe(wanted));

describe('what stays as it is', () => {
  test.each([
    '<a href="//other.example/">',
    '<a href="https://other.example/a">',
    '<a href="#part"><a href="relative/"><a href="">',
    '<link href="/some/path/_astro/Page.css">',
    '<meta name="description" content="/panels/ are listed">',
    '<p>href="/panels/" <code>&lt;a href="/panels/"></code></p>',
    '<!-- <a href="/panels/"> -->',
    '<script type="application/ld+json">{"a":"<a href=\\"/panels/\\">"}</script>',
    '<td title="/a" data-href="/b">',
  ])('%s', (html) => expect(prefixed(html)).toBe(html));
});

test('a path that is the name of one of the guide’s folders is none of them', () => {
  expect(prefixed('<a href="/panels/a/"><link href="/panels/_astro/a.css">', '/panels/')).toBe(
    '<a href="/panels/panels/a/"><link href="/panels/_astro/a.css">',
  );
});
