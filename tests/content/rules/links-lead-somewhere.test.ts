/** Links that lead nowhere and pictures that are not there are problems with file and line, before anything is built. */
import { globSync, readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readContent } from '../../../src/content/read/read-content.ts';
import { CAUTION_IDS, FIXED_FILES, FIXED_PAGES, METHOD_IDS } from '../../../src/content/rules/site-addresses.ts';
import { buildLedger } from '../../../src/ledger/build-ledger.ts';
import { publishedFiles } from '../../../src/site/export/published-files.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';
import { expectProblems } from './expect-problems.ts';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const PLOVER = 'panels/plover/index.md';
const NOTES = 'Notes of the tester.';
const PAGE = 'a page of the guide, or a file in public/';
const BESIDE = 'a file that is there, beside this one';

const PNG = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

const write = (text: string) => content.edit(PLOVER, NOTES, text);

describe('what is right stays silent', () => {
  test.each([
    ['a page', '[a](/methods/rank/)'],
    ['a part of a page', '[a](/methods/rank/#history), [b](/methods/rank/#version-1), [c](/cautions/#sources)'],
    ['another panel', '[a](/panels/teasel/) and [b](/panels/teasel/methodology/#optical-power)'],
    ['a relative address', '[a](../teasel/), [b](./methodology/), [c](#notes), [d](?x=1)'],
    ['a tool with its state', '[a](/compare/?with=plover,teasel) [b](/#small)'],
    ['data', '[a](/data/panels.csv) [b](/data/compare/plover.json)'],
    ['a meter', '[a](/instruments/#thermopile)'],
    ['addresses elsewhere', '[a](https://a.example/b?c#d), <mailto:a@b.example>, [t](tel:+123)'],
    ['a file in public', '![a](/icon.svg) [b](/icon.svg)'],
  ])('%s', (_name, text) => {
    write(text);
    expectProblems(content.problems());
  });

  test('a picture beside the text, its name spelt in signs', () => {
    content.write('panels/plover/the wall.PNG', PNG);
    content.write('panels/plover/raw/b.svg', '<?xml version="1.0"?>\n<svg xmlns="http://www.w3.org/2000/svg"/>');
    write('![a](the%20wall.PNG) ![b](./raw/b.svg)');
    expectProblems(content.problems());
  });

  test('an import that is there, with its ending left out as scripts may', () => {
    content.write(
      'methods/rank.mdx',
      content.read('methods/rank.mdx').replace('One line.', "import { a } from '/src/ledger/today';\n\nOne line."),
    );
    expectProblems(content.problems());
  });
});

describe('links', () => {
  test.each([
    ['a misspelt page', '[a](/methods/rnak/)', '/methods/rnak/', 'did you mean "/methods/rank/"?'],
    [
      'a page without its slash',
      '[a](/methods/rank)',
      '/methods/rank',
      'write "/methods/rank/": pages end with a slash',
    ],
    ['a panel that is none', '[a](/panels/ploverr/)', '/panels/ploverr/', 'did you mean "/panels/plover/"?'],
    ['nothing like it', '[a](/nowhere/at/all/)', '/nowhere/at/all/', undefined],
    [
      'the file of a panel',
      '[a](../teasel/index.md)',
      '../teasel/index.md',
      'write "/panels/teasel/", the address of its page',
    ],
    [
      'the file of a method',
      '[a](../../methods/rank.mdx)',
      '../../methods/rank.mdx',
      'write "/methods/rank/", the address of its page',
    ],
    ['an element', 'x <a href="/plots">y</a>', '/plots', 'write "/plots/": pages end with a slash'],
    ['a picture as an element', '<img src="./wall.jpg" alt="">', './wall.jpg', undefined],
  ])('%s', (_name, text, address, hint) => {
    write(`One line.\n\n${text}`);
    const line = content.lineOf(PLOVER, text);
    expectProblems(content.problems(), {
      file: PLOVER,
      line,
      found: `a link to "${address}"`,
      wanted: PAGE,
      ...(hint && { hint }),
    });
  });

  test('by a definition: the definition is the place', () => {
    write('A [link][r].\n\n[r]: /methods/rnak/');
    expectProblems(content.problems(), {
      ...{
        file: PLOVER,
        line: content.lineOf(PLOVER, '[r]: '),
        found: 'a link to "/methods/rnak/"',
        wanted: PAGE,
      },
      hint: 'did you mean "/methods/rank/"?',
    });
  });

  test('a part that a page has not', () => {
    content.write('cautions.mdx', `${content.read('cautions.mdx')}\n## Eyes and lids\n`);
    write('[a](/cautions/#eyes-and-lid)');
    expectProblems(content.problems(), {
      ...{ file: PLOVER, line: content.lineOf(PLOVER, '[a]'), found: 'a link to "/cautions/#eyes-and-lid"' },
      wanted: /^a part that \/cautions\/ has: #main, #sources, .*#eyes-and-lids/,
      hint: 'did you mean "/cautions/#eyes-and-lids"?',
    });
  });

  test('a file beside the text is not published', () => {
    content.write('panels/plover/sweep.csv', 'a,b');
    write('[a](sweep.csv)');
    expectProblems(content.problems(), {
      ...{ file: PLOVER, line: content.lineOf(PLOVER, '[a]'), found: 'a link to "sweep.csv"', wanted: PAGE },
      hint: 'a file beside the text is not published: put it into public/ and link to it with a slash before its name',
    });
  });

  test.each([
    ['[a](www.a.example)', 'a web address', 'write https://www.a.example'],
    ['[a](javascript:alert(1))', /^an address that starts with https:\/\//, undefined],
    ['[a](ftp://a.example/b)', /^an address that starts with https:\/\//, undefined],
  ])('%s', (text, wanted, hint) => {
    write(text);
    const found = `a link to "${text.slice(4, -1)}"`;
    expectProblems(content.problems(), {
      file: PLOVER,
      line: content.lineOf(PLOVER, text),
      found,
      wanted,
      ...(hint && { hint }),
    });
  });

  test('to a draft: none in the published guide; one while it is written, and from another draft', () => {
    content.write(
      'panels/lapwing/index.md',
      '---\nmaker: wrackline\nmodel: Lapwing\nstatus: draft\n---\n\n[own](/panels/lapwing/)\n',
    );
    expectProblems(content.problems());
    write('[a](/panels/lapwing/)');
    expectProblems(content.problems(), {
      ...{
        file: PLOVER,
        line: content.lineOf(PLOVER, '[a]'),
        found: 'a link to "/panels/lapwing/"',
        wanted: PAGE,
      },
      hint: 'that panel is a draft: it has no page until it is published',
    });
    expect(readContent({ folder: content.folder, today: TODAY, drafts: true }).problems).toEqual([]);
  });

  test('to a panel whose file cannot be read are no problem more', () => {
    write('[a](/panels/teasel/)');
    content.write('panels/teasel/index.md', 'nothing of use');
    expect(content.problems().map((it) => it.file)).toEqual(['content/panels/teasel/index.md']);
  });
});

describe('pictures', () => {
  test('that are not there: the nearest name is offered', () => {
    content.write('panels/plover/wall.jpg', 'x');
    write('One.\n\n![a](./wal.jpg)');
    expectProblems(content.problems(), {
      ...{ file: PLOVER, line: content.lineOf(PLOVER, '![a]'), found: 'an image "./wal.jpg"', wanted: BESIDE },
      hint: 'did you mean "./wall.jpg"?',
    });
  });

  test.each([
    ['![a](no/such/folder.png)', BESIDE, undefined],
    ['![a](/wall.jpg)', /^a file in public/, undefined],
    [
      '![a](https://a.example/b.png)',
      /pages load nothing from elsewhere$/,
      'save it here, if its terms allow, and write its name',
    ],
  ])('%s', (text, wanted, hint) => {
    write(text);
    const found = `an image "${text.slice(5, -1)}"`;
    expectProblems(content.problems(), {
      file: PLOVER,
      line: content.lineOf(PLOVER, text),
      found,
      wanted,
      ...(hint && { hint }),
    });
  });

  test('of a kind that the build cannot take in', () => {
    content.write('panels/plover/wall.heic', 'x');
    write('![a](wall.heic)');
    const [problem, ...more] = content.problems();
    expect(more).toEqual([]);
    expect(problem?.wanted).toContain('.jpg');
  });
});

/** First bytes as the formats' own documents have them: PNG (W3C), JPEG (ITU-T T.81), GIF89a, WebP, TIFF 6.0; AVIF from memory. */
describe('what a picture’s file holds', () => {
  const bytes = (...it: number[]) => Uint8Array.from([...it, ...Array(16).fill(0)]);
  const text = (it: string) => new TextEncoder().encode(it);
  test.each([
    ['a.png', PNG],
    ['a.jpg', bytes(0xff, 0xd8, 0xff, 0xe0)],
    ['a.gif', text('GIF89a\u0001')],
    ['a.webp', text('RIFF\u0010\u0000\u0000\u0000WEBPVP8 ')],
    ['a.tiff', bytes(0x49, 0x49, 0x2a, 0)],
    ['a.avif', text('\u0000\u0000\u0000\u001cftypavif')],
  ])('%s is one', (name, held) => {
    content.write(`panels/plover/${name}`, held);
    write(`![a](${name})`);
    expectProblems(content.problems());
  });

  test.each([
    ['nothing', ''],
    ['a text', 'not found'],
    ['another kind, of a telephone', '\u0000\u0000\u0000\u001cftypheic'],
  ])('%s under the name of a picture', (_name, held) => {
    content.write('panels/plover/wall.jpg', held);
    write('![a](wall.jpg)');
    expectProblems(content.problems(), {
      ...{ file: PLOVER, line: content.lineOf(PLOVER, '![a]'), found: 'an image "wall.jpg"' },
      wanted: 'a picture: this file does not start like any of .avif, .gif, .jpeg, .jpg, .png, .svg, .tiff, .webp',
      hint: 'export it anew as JPEG or PNG; another ending does not change what it is',
    });
  });
});

describe('parts of pages', () => {
  const day = () => /- date: (\S+)\n\s+methodVersion/.exec(content.read(PLOVER))?.[1];

  test.each([
    '/panels/plover/#limits',
    '/panels/plover/methodology/#optical-power',
    '/panels/#maker-knotgrass',
    '/data/#whole',
    '/#small',
    '/#table-small',
    '/frame/#table-small-30-5-cm-v1',
    '/?spend=600#answers',
    '/emitted/#ranking',
  ])('%s is there', (address) => {
    write(`[a](${address})`);
    expectProblems(content.problems());
  });

  test('a figure of a session is there, one of another day is not', () => {
    write(`[a](/panels/plover/methodology/#led-area-${day()})`);
    expectProblems(content.problems());
    content.edit(PLOVER, `#led-area-${day()}`, '#led-area-2020-01-01');
    const [problem, ...more] = content.problems();
    expect(more).toEqual([]);
    expect(problem?.hint).toBe(`did you mean "/panels/plover/methodology/#led-area-${day()}"?`);
    expect(problem?.wanted).toBe('a part that /panels/plover/methodology/ has');
  });

  test.each([
    ['/panels/plover/#limit', 'did you mean "/panels/plover/#limits"?'],
    ['/panels/#maker-knotgras', 'did you mean "/panels/#maker-knotgrass"?'],
    ['/plan/#your', undefined],
    ['/#smal', 'did you mean "/#small"?'],
    ['/frame/#table-smal', 'did you mean "/frame/#table-small"?'],
    // The answer to a sum stands on the guide's own page alone.
    ['/emitted/#spend', undefined],
    ['/emitted/#table-tiny-30-cm-v1', undefined],
  ])('%s is not', (address, hint) => {
    write(`[a](${address})`);
    const [problem, ...more] = content.problems();
    expect(more).toEqual([]);
    expect(problem?.found).toBe(`a link to "${address}"`);
    if (hint) expect(problem?.hint).toBe(hint);
  });
});

describe('texts of fields', () => {
  const about = (text: string) => {
    content.edit('makers/knotgrass.yaml', 'name:', `note: '${text}'\nname:`);
    return content
      .problems()
      .map(({ file, line, field, found }) => [file.split('/').slice(-2).join('/'), line, field, found]);
  };

  test.each([
    'See [the Plover](/panels/plover/#limits), /methods/rank/ and https://knotgrass.example/panels/x.',
    'In W/m2 and mW/cm2, and/or so; 1/2 in.',
  ])('%s leads nowhere wrong', (text) => {
    expect(about(text)).toEqual([]);
  });

  test('what leads nowhere is named with its line and field, in Markdown, bare, and in full', () => {
    const site = /^site: (\S+)$/m.exec(content.read('guide.yaml'))?.[1]?.replace(/\/$/, '');
    const text = `[a](/panels/plovr/), then /methods/rnk/. And ${site}/cautions/#eye`;
    const at = ['makers/knotgrass.yaml', 1, 'note'];
    expect(about(text)).toEqual([
      [...at, 'a link to "/panels/plovr/"'],
      [...at, 'a link to "/methods/rnk/"'],
      [...at, `a link to "${site}/cautions/#eye"`],
    ]);
  });
});

test('imports of nothing', () => {
  content.write('cautions.mdx', `${content.read('cautions.mdx')}\nimport A from './A.astro';\n\n<A />\n`);
  expectProblems(content.problems(), {
    ...{ file: 'cautions.mdx', line: content.lineOf('cautions.mdx', 'import A') },
    ...{ found: 'an import of "./A.astro"', wanted: 'a file that is there' },
  });
});

describe('the addresses are the guide’s own', () => {
  const page = (file: string) => readFileSync(`src/pages/${file}`, 'utf8');
  const idsOf = (template: string) => [...template.matchAll(/\sid="([^"]+)"/g)].map((it) => it[1]);

  test('pages', () => {
    const files = globSync('**/*.astro', { cwd: 'src/pages' }).filter((it) => !/\[|404|^_/.test(it));
    const made = files.map((it) => `/${it.replace(/\.astro$/, '/').replace(/(^|\/)index\/$/, '$1')}`);
    expect(made.toSorted()).toEqual([...FIXED_PAGES].toSorted());
  });

  test('data files', () => {
    const all = content.content();
    const ledger = buildLedger(all, { today: TODAY, drafts: false });
    const made = publishedFiles({ content: all, ledger }, { code: '', isTester: false }).map((it) => `/${it.path}`);
    expect(made.filter((it) => !/^\/(data\/(compare|bench)\/|_headers$)/.test(it)).toSorted()).toEqual(
      [...FIXED_FILES].toSorted(),
    );
  });

  test('parts of the pages of methods and of cautions', () => {
    expect([...idsOf(page('methods/[metric].astro')), 'main'].toSorted()).toEqual([...METHOD_IDS].toSorted());
    expect([...idsOf(page('cautions.astro')), 'main'].toSorted()).toEqual([...CAUTION_IDS].toSorted());
    expect(page('methods/[metric].astro')).toMatch(/: `version-\$\{it\.version\}`\}/);
    expect(page('instruments.astro')).toContain('<h2 id={id}>');
  });
});
