/** Addresses in bodies, and the ids of headings held against the plugin that the pages' renderer makes them with. */
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { satteriHeadingIdsPlugin } from '@astrojs/markdown-satteri';
import { markdownToHtml, mdxToJs } from 'satteri';
import { describe, expect, test } from 'vitest';
import { idsIn, linksIn } from '../../../src/content/read/body-links.ts';
import { textsFolder } from '../../../src/content/read/product-texts.ts';
import type { Source } from '../../../src/content/read/source.ts';
import { DEMO_FOLDER } from '../../support/demo-folder.ts';

const source = (body: string, file = 'a.md', bodyLine = 1): Source => ({
  ...{ file, path: file, body, bodyLine, data: {}, yaml: '', yamlLine: 1 },
  lineOf: () => 1,
});

describe('addresses', () => {
  test('of Markdown: links, images, definitions, and elements written as such', () => {
    const body = [
      'A [link](/a/ "title"), an ![image](./b.png), <https://auto.example/>, a [reference][r].',
      '',
      'Code is none: `[x](/x/)`. ![Pictured][p] and <img src="c.png" alt="">.',
      '',
      '<div>',
      '<a href="/d/">block</a>',
      '</div>',
      '',
      '[r]: /e/',
      '[p]: f.png',
      '',
      '    [indented](/code/)',
    ].join('\n');
    expect(linksIn(source(body, 'a.md', 11)).map((it) => [it.line, it.kind, it.address])).toEqual([
      [11, 'link', '/a/'],
      [11, 'image', './b.png'],
      [11, 'link', 'https://auto.example/'],
      [13, 'link', 'c.png'],
      [16, 'link', '/d/'],
      [19, 'link', '/e/'],
      [20, 'image', 'f.png'],
    ]);
  });

  test('of MDX: imports, and what elements and components name', () => {
    const body = [
      "import Note from './Note.astro';",
      "import { a } from 'package';",
      '',
      '<Note src="./a.png">[inner](/a/)</Note>',
      '',
      'Text with <a href="/b/">an element</a> and {1 + 1}.',
    ].join('\n');
    expect(linksIn(source(body, 'a.mdx')).map((it) => [it.line, it.kind, it.address])).toEqual([
      [1, 'import', './Note.astro'],
      [2, 'import', 'package'],
      [4, 'link', './a.png'],
      [4, 'link', '/a/'],
      [6, 'link', '/b/'],
    ]);
  });

  test('a body that cannot be parsed has none; another message tells of it', () => {
    expect(linksIn(source('{ [a](/b/)', 'a.mdx'))).toEqual([]);
    expect(idsIn(source('# A\n\n{', 'a.mdx'))).toBeInstanceOf(Array);
  });
});

describe('ids', () => {
  const rendered = (body: string, file: string) => {
    const astro = {
      frontmatter: {},
      headings: [],
      localImagePaths: new Set<string>(),
      remoteImagePaths: new Set<string>(),
    };
    const options = {
      ...{ hastPlugins: [satteriHeadingIdsPlugin()], data: { astro } },
      features: { gfm: true, smartPunctuation: true, frontmatter: false },
    };
    if (file.endsWith('.mdx')) mdxToJs(body, options);
    else markdownToHtml(body, options);
    return (astro.headings as Array<{ slug: string }>).map((it) => it.slug);
  };

  test.each([
    ['a.md', "## The `x` -- panel's *Big* §1\n\n## a\n\n## a\n\n### Ünï & more...\n"],
    ['a.mdx', '## A {1 + 1} b\n\n<div>\n\n## c\n\n</div>\n\n# c\n'],
  ])('of headings in %s are those of the renderer', (file, body) => {
    expect(idsIn(source(body, file))).toEqual(rendered(body, file));
  });

  test('of every demo body are those of the renderer', () => {
    const files = [textsFolder(), DEMO_FOLDER].flatMap((folder) =>
      globSync('{cautions.mdx,methods/*.mdx,panels/*/index.md*}', { cwd: folder }).map((it) => join(folder, it)),
    );
    expect(files.length).toBeGreaterThan(40);
    for (const file of files) {
      const body = readFileSync(file, 'utf8').split(/^---$/m).slice(2).join('---');
      expect(idsIn(source(body, file)), file).toEqual(rendered(body, file));
    }
  });

  test('of elements count as well', () => {
    expect(idsIn(source('<a id="b">x</a>\n\n<div id="c">y</div>\n'))).toEqual(['b', 'c']);
    expect(idsIn(source('<A id="b" />\n', 'a.mdx'))).toEqual(['b']);
  });
});
