/** Files that can't be read at all: bytes, YAML, front matter, MDX, and files that lie where nothing reads them. */
import { Buffer } from 'node:buffer';
import { mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readContent } from '../../../src/content/read/read-content.ts';
import { METHODS } from '../../../src/measure/methods.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';
import { expectProblems } from './expect-problems.ts';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const PLOVER = 'panels/plover/index.md';
const YAML = 'YAML that can be read';

describe('YAML', () => {
  interface Slip {
    name: string;
    file?: string;
    from: string;
    to: string;
    /** Text on the line that is named; the replacement's first line where left out. */
    at?: string;
    found: string;
    hint: string | RegExp;
  }
  const SLIPS: Slip[] = [
    {
      name: 'a field that stands twice',
      from: 'model: Plover',
      to: 'model: Plover\nmodel: Lapwing',
      at: 'model: Lapwing',
      found: '"model: Lapwing"',
      hint: 'the same field stands twice in one block; keep one',
    },
    {
      name: 'a field that stands twice in an entry of a list',
      from: '    warmUp: 40 min',
      to: '    warmUp: 40 min\n    warmUp: 20 min',
      at: 'warmUp: 20 min',
      found: '"warmUp: 20 min"',
      hint: 'the same field stands twice in one block; keep one',
    },
    {
      name: 'semicolons between fields',
      from: 'red: { peak: 661, fwhm: 17.5 }',
      to: 'red: { peak: 661; fwhm: 17.5 }',
      found: '"red: { peak: 661; fwhm: 17.5 }"',
      hint: /^between \{ \} and \[ \] commas part the entries/,
    },
    {
      name: 'a dash for what was not read',
      from: 'off: <0.2 mG, on: 4.3 mG',
      to: 'off: -, on: 4.3 mG',
      found: '"magnetic: { distance: 6 in, off: -, on: 4.3 mG }"',
      hint: /a dash alone is no value: what was not read is left out$/,
    },
    {
      name: 'nothing between two commas',
      from: '[40.1, 50.0, 39.9]',
      to: '[40.1, , 39.9]',
      found: '"- [40.1, , 39.9]"',
      hint: 'a value is missing before a comma; TODO holds its place',
    },
    {
      name: 'a quote within quotes',
      from: 'verdict: A panel for the tests.',
      to: 'verdict: "A "panel" for the tests."',
      found: '"verdict: "A "panel" for the tests.""',
      hint: 'a quote within a text ends it: put the text between quotes of the other kind',
    },
    {
      name: 'a text with a colon and a space',
      from: 'verdict: A panel for the tests.',
      to: 'verdict: A panel: for the tests.',
      found: '"verdict: A panel: for the tests."',
      hint: /a text with ": " in it needs quotes/,
    },
    {
      name: 'a bracket that is not closed',
      file: 'instruments/coil.yaml',
      from: 'range: { from: 0.2, to: 2000 }',
      to: 'range: { from: 0.2, to: 2000',
      found: '"range: { from: 0.2, to: 2000"',
      hint: 'a closing } is missing',
    },
    {
      name: 'a text that starts with an at sign',
      from: 'model: Plover',
      to: 'model: @Plover',
      found: '"model: @Plover"',
      hint: /./,
    },
    {
      name: 'two documents in one file',
      file: 'guide.yaml',
      from: 'tariff:',
      to: '---\ntariff:',
      found: '"---"',
      hint: /./,
    },
    {
      name: 'a text that starts with an asterisk',
      from: 'verdict: A panel for the tests.',
      to: 'verdict: *Plover',
      found: '"verdict: *Plover"',
      hint: 'a text that starts with * or & needs quotes',
    },
  ];
  test.each(SLIPS.map((slip) => [slip.name, slip] as const))('%s', (_name, slip) => {
    const { file = PLOVER, from, to, at = to.split('\n')[0] as string, found, hint } = slip;
    content.edit(file, from, to);
    expectProblems(content.problems(), { file, line: content.lineOf(file, at), found, wanted: YAML, hint });
  });

  /** Where the reader notices the slip only later, or more than once, the one message has to lead there. */
  test.each([
    [
      'a tab for an indentation',
      '  how: bought',
      '\thow: bought',
      'how: bought',
      /^indent with spaces, not with tabs$/,
    ],
    [
      'a line indented too far',
      '  paidBy: The library',
      '    paidBy: The library',
      'paidBy: The library',
      /^take 2 spaces away at the start of this line$/,
    ],
    [
      'a line indented too little',
      '    methodVersion: 1',
      '   methodVersion: 1',
      'methodVersion: 1',
      /^put one space more at the start of this line$/,
    ],
  ])('%s', (_name, from, to, at, hint) => {
    content.edit(PLOVER, from, to);
    expectProblems(content.problems(), {
      file: PLOVER,
      line: content.lineOf(PLOVER, at),
      found: `"${at}"`,
      wanted: YAML,
      hint,
    });
  });

  test('a quote that is not closed is found where it should be', () => {
    content.edit(PLOVER, 'notes: Nothing happened.', 'notes: "Nothing happened.');
    expectProblems(content.problems(), {
      file: PLOVER,
      line: content.lineOf(PLOVER, '"Nothing happened.'),
      found: '"notes: "Nothing happened."',
      wanted: YAML,
      hint: 'a closing " is missing',
    });
  });

  test('every slip of a file is named, not only the first', () => {
    content.edit(PLOVER, 'model: Plover', 'model: Plover\nmodel: Lapwing');
    content.edit(PLOVER, 'hotSpots: None seen.', 'hotSpots: None: seen.');
    expect(content.problems().map((it) => it.line)).toEqual([
      content.lineOf(PLOVER, 'model: Lapwing'),
      content.lineOf(PLOVER, 'hotSpots: None: seen.'),
    ]);
  });

  test('aliases without end are refused', () => {
    const ten = (name: string) => Array(10).fill(`*${name}`).join(', ');
    content.write(
      'makers/knotgrass.yaml',
      `name: &a Knotgrass\ncountry: &b [${ten('a')}]\nreturns: &c [${ten('b')}]\nnote: [${ten('c')}]\n`,
    );
    const problems = content.problems();
    expect(problems.length).toBeGreaterThan(0);
    expect(problems.every((it) => it.file === 'content/makers/knotgrass.yaml')).toBe(true);
  });

  test('an alias that is used as it should be is read', () => {
    content.edit('guide.yaml', 'source: Invented\ntariff:', 'source: &source Invented\ntariff:');
    content.edit('guide.yaml', '  source: Invented\nref', '  source: *source\nref');
    expect(content.content().guide.data.tariff.source).toBe('Invented');
  });

  test('a list of one in the place of its fields: the dash is too much', () => {
    content.write('makers/knotgrass.yaml', '- name: Knotgrass\n');
    expectProblems(content.problems(), {
      file: 'makers/knotgrass.yaml',
      line: 1,
      found: '"- name: Knotgrass"',
      wanted: 'YAML that says what was meant',
      hint: 'no dash is wanted here: this is no entry of a list',
    });
  });

  test.each([
    ['a text', 'Knotgrass\n', '"Knotgrass"'],
    ['a number', '12\n', '12'],
  ])('%s in the place of fields', (_name, text, found) => {
    content.write('makers/knotgrass.yaml', text);
    expectProblems(content.problems(), {
      file: 'makers/knotgrass.yaml',
      line: 1,
      found,
      wanted: 'a block of fields: name, formerly, country, website, warrantyYears, returns, note',
    });
  });

  test('an empty file lacks all that is needed', () => {
    content.write('makers/knotgrass.yaml', '');
    expectProblems(content.problems(), {
      file: 'makers/knotgrass.yaml',
      line: 1,
      field: 'name',
      found: 'nothing',
      wanted: 'a text (Name of the maker)',
    });
  });
});

describe('bytes', () => {
  test('a Latin-1 byte is found on its line, in its place', () => {
    const text = content.read(PLOVER).replace('A panel for', 'Ein Gerät für');
    content.write(PLOVER, Buffer.from(text, 'latin1'));
    expectProblems(content.problems(), {
      file: PLOVER,
      line: text.slice(0, text.indexOf('Gerät')).split('\n').length,
      found: 'byte 17 of the line, 0xE4, which is not UTF-8 (in "verdict: Ein Gerät für the tests.")',
      wanted: 'text in UTF-8',
      hint: 'save the file again with the encoding UTF-8',
    });
  });

  test.each([
    ['in the first line', 0, 1],
    ['in the last line', -1, undefined],
  ])('a wrong byte %s', (_name, at, line) => {
    const bytes = Buffer.from(content.read('guide.yaml'));
    bytes[at < 0 ? bytes.length - 2 : 0] = 0xff;
    content.write('guide.yaml', bytes);
    const [problem, ...more] = content.problems();
    expect(more).toEqual([]);
    expect(problem?.line).toBe(line ?? content.read('guide.yaml').trimEnd().split('\n').length);
    expect(problem?.found).toMatch(/^byte \d+ of the line, 0xFF, which is not UTF-8/);
  });

  test.each([
    ['cut off in the middle of a sign', [0xe2, 0x82]],
    ['spelt longer than it may be', [0xc0, 0xaf]],
    ['a lone half of a pair', [0xed, 0xa0, 0x80]],
    ['text in UTF-16', [0xff, 0xfe, 0x61, 0x00]],
  ])('%s', (_name, bytes) => {
    content.write('makers/knotgrass.yaml', Buffer.from([...Buffer.from('name: a\nnote: b'), ...bytes, 0x0a]));
    const [problem, ...more] = content.problems();
    expect(more).toEqual([]);
    expect(problem).toMatchObject({ file: 'content/makers/knotgrass.yaml', line: 2, wanted: 'text in UTF-8' });
  });

  test('valid signs before the wrong byte are counted in bytes', () => {
    content.write('makers/knotgrass.yaml', Buffer.from([...Buffer.from('name: ä🐦'), 0xe4, 0x0a]));
    expect(content.problems()[0]?.found).toMatch(/^byte 13 of the line, 0xE4/);
  });

  test('a byte order mark and line ends of another system do no harm', () => {
    for (const file of [PLOVER, 'guide.yaml', 'cautions.mdx']) {
      content.write(file, `\ufeff${content.read(file).replaceAll('\n', '\r\n')}`);
    }
    expect(content.problems()).toEqual([]);
  });

  test('lines are counted the same with line ends of another system', () => {
    content.edit(PLOVER, 'width: 20 cm', 'width: 20 kg');
    const line = content.lineOf(PLOVER, 'width: 20 kg');
    content.write(PLOVER, content.read(PLOVER).replaceAll('\n', '\r\n'));
    expect(content.problems()).toMatchObject([{ line, field: 'field.width' }]);
  });
});

describe('front matter', () => {
  const WANTED = 'front matter: a line of three hyphens, the fields, and a line of three hyphens';

  test.each([
    ['missing', 'Notes of the tester.\n', '"Notes of the tester."'],
    ['missing in an empty file', '', 'an empty line'],
    ['after an empty line', '\n---\nmaker: wrackline\n---\n', 'an empty line'],
    ['with two hyphens', '--\nmaker: wrackline\n--\n', '"--"'],
  ])('%s', (_name, text, found) => {
    content.write(PLOVER, text);
    expectProblems(content.problems(), { file: PLOVER, line: 1, found, wanted: WANTED });
  });

  test('not closed', () => {
    const text = content.read(PLOVER).replace('\n---\n\n', '\n\n');
    content.write(PLOVER, text);
    expectProblems(content.problems(), {
      file: PLOVER,
      line: text.split('\n').length,
      found: 'the end of the file',
      wanted: 'a line of three hyphens that ends the front matter',
    });
  });

  test('empty', () => {
    content.write('cautions.mdx', '---\n---\n\nWords.\n');
    expect(content.problems().map((it) => `${it.field}: ${it.found}`)).toEqual(['summary: nothing', 'title: nothing']);
  });

  test('hyphens in the body end nothing', () => {
    content.write(PLOVER, `${content.read(PLOVER)}\n---\n\nmore: [\n`);
    expect(content.problems()).toEqual([]);
  });
});

describe('MDX that does not compile', () => {
  test.each([
    ['a brace that is not closed', 'Look {into it.', 3],
    ['an element that is not closed', 'Look <b>into it.', 5],
    ['an expression that is none', 'Look {1 +} into it.', 1],
    ['an element that is closed crosswise', 'Look <b><i>into</b></i> it.', 2],
    ['an import that is none', 'import Nothing from', 0],
  ])('%s', (_name, bad, wordsBefore) => {
    const body = [...Array(wordsBefore).fill('A line of words.\n'), bad];
    content.write('cautions.mdx', `${content.read('cautions.mdx')}\n${body.join('\n')}\n`);
    const [problem, ...more] = content.problems();
    expect(more).toEqual([]);
    expect(problem).toMatchObject({
      file: 'content/cautions.mdx',
      line: content.lineOf('cautions.mdx', bad),
      field: '',
      wanted: 'a body that MDX can read',
      hint: 'write &lt; and &#123; for a plain < and {',
    });
    // The one line that counts is that of the file; the compiler counts from the start of the body.
    expect(problem?.found).not.toMatch(/\d+:\d+/);
  });

  test('a panel’s notes are MDX only where the file says so', () => {
    const text = `${content.read(PLOVER)}\nAt x < 3 {and more.\n`;
    content.write(PLOVER, text);
    expect(content.problems()).toEqual([]);
    content.remove(PLOVER);
    content.write('panels/plover/index.mdx', text);
    expect(content.problems()).toMatchObject([
      {
        file: 'content/panels/plover/index.mdx',
        line: content.lineOf('panels/plover/index.mdx', 'At x < 3'),
        wanted: 'a body that MDX can read',
      },
    ]);
  });
});

describe('names', () => {
  test('a panel that has two files', () => {
    content.write('panels/plover/index.mdx', content.read(PLOVER));
    expectProblems(content.problems(), {
      file: 'panels/plover/index.mdx',
      found: 'the name "plover", which content/panels/plover/index.md has too',
      wanted: 'one file for each name',
      hint: 'merge the two, or rename one',
    });
  });

  test('the second file of a panel is named although the first has a fault of its own', () => {
    content.write('panels/plover/index.mdx', content.read(PLOVER));
    content.edit(PLOVER, 'width: 20 cm', 'width: 20 kg');
    expect(content.problems().map((it) => it.file)).toEqual([
      'content/panels/plover/index.md',
      'content/panels/plover/index.mdx',
    ]);
  });
});

describe('files that nothing reads', () => {
  test.each([
    ['instruments/tape.yml', '"tape.yml"', 'files that end in .yaml'],
    ['makers/notes.txt', '"notes.txt"', 'files that end in .yaml'],
    ['makers/old/knotgrass.yaml', '"old"', 'files that end in .yaml'],
    ['methods/rank.md', '"rank.md"', 'files that end in .mdx'],
    ['panels/whimbrel.md', 'a file', 'a folder for each panel, with index.md in it'],
    ['panels/whimbrel/readme.md', 'a folder without index.md', 'index.md or index.mdx'],
    ['panels/whimbrel/Index.md', 'a folder without index.md', 'index.md or index.mdx'],
    [
      'README.md',
      '"README.md"',
      /^one of: guide\.yaml, corrections\.yaml, cautions\.mdx, addresses\.txt, instruments, makers, methods, others, panels, standards$/,
    ],
    ['guide.yml', '"guide.yml"', /^one of: guide\.yaml, /],
    ['instrument/tape.yaml', '"instrument"', /^one of: guide\.yaml, /],
  ] as Array<[string, string, string | RegExp]>)('%s', (path, found, wanted) => {
    content.write(path, 'name: x\n');
    const top = path.split('/');
    const file = found.startsWith('"')
      ? path.slice(0, path.indexOf(found.slice(1, -1)) + found.length - 2)
      : top.slice(0, 2).join('/');
    expectProblems(content.problems(), { file, found, wanted });
  });

  test('a file in the place of a folder is named', () => {
    content.write('standards', 'name: x\n');
    expectProblems(content.problems(), { file: 'standards', found: 'a file', wanted: 'a folder' });
  });

  test('what systems put into folders by themselves is none', () => {
    for (const path of ['Thumbs.db', 'panels/Thumbs.db', 'makers/desktop.ini', 'makers/.DS_Store']) {
      content.write(path, 'x');
    }
    expect(content.problems()).toEqual([]);
  });

  test.each(['Whimbrel', 'whim brel', 'whim--brel', '-whimbrel', 'whimbrel_2', 'wîmbrel', 'whim.brel'])(
    'a panel can’t be called "%s": its folder is part of an address',
    (name) => {
      content.write(
        `panels/${name}/index.md`,
        content.read('panels/teasel/index.md').replace('model: Teasel', 'model: Fescue'),
      );
      expectProblems(content.problems(), {
        file: `panels/${name}`,
        found: `the folder name "${name}"`,
        wanted: 'lower-case letters, digits and single hyphens: it is part of the address',
      });
    },
  );

  test.each([
    'panels/plover/spectrum.csv',
    'panels/plover/raw/sweep.txt',
    '.DS_Store',
    'instruments/.gitkeep',
    'panels/.DS_Store',
    'instruments/._coil.yaml',
    'panels/.whimbrel/index.md',
  ])('%s may lie there', (path) => {
    content.write(path, Buffer.from([0x00, 0xff]));
    expect(content.problems()).toEqual([]);
  });

  test('a folder with the name of a file is a problem, not a crash', () => {
    mkdirSync(join(content.folder, 'instruments/tape.yaml'));
    mkdirSync(join(content.folder, 'panels/whimbrel/index.md'), { recursive: true });
    expect(content.problems().map((it) => it.file)).toEqual([
      'content/instruments/tape.yaml',
      expect.stringMatching(/^content\/panels\/whimbrel/),
    ]);
  });

  test('a link that leads nowhere is a problem, not a crash', () => {
    symlinkSync(join(content.folder, 'nowhere.yaml'), join(content.folder, 'makers/tape.yaml'));
    expect(content.problems().map((it) => it.file)).toEqual(['content/makers/tape.yaml']);
  });
});

describe('what has to be there', () => {
  test('the folder itself', () => {
    const folder = join(content.folder, 'nowhere');
    expect(readContent({ folder, today: TODAY, shownAs: 'nowhere' })).toEqual({
      content: undefined,
      problems: [
        { file: 'nowhere', field: '', found: 'no such folder', wanted: 'the content folder with guide.yaml in it' },
      ],
    });
  });

  test('guide.yaml', () => {
    content.remove('guide.yaml');
    expectProblems(content.problems(), {
      file: 'guide.yaml',
      found: 'no such file',
      wanted: 'the file with title, currency, tariff and size classes',
      hint: 'start writes one: npm run ledger -- start --help',
    });
  });

  test('but no texts: those of the product stand', () => {
    content.remove('cautions.mdx');
    content.remove('methods');
    const { cautions, methods } = content.content();
    expect(cautions.source.file).toBe('src/texts/cautions.mdx');
    expect([...methods.keys()].toSorted()).toEqual(METHODS.map((it) => it.id).toSorted());
  });

  test('no panels: a guide starts without any', () => {
    content.remove('panels');
    expect(content.content().panels.size).toBe(0);
  });

  test('a file in the place of the folder', () => {
    const { content: none, problems } = readContent({ folder: join(content.folder, 'guide.yaml'), today: TODAY });
    expect(none).toBeUndefined();
    expect(problems.length).toBeGreaterThan(0);
  });
});

test('messages name the folder as they are told to', () => {
  content.edit(PLOVER, 'width: 20 cm', 'width: 20 kg');
  const { problems } = readContent({ folder: content.folder, today: TODAY, shownAs: 'bench/papers' });
  expect(problems.map((it) => it.file)).toEqual([`bench/papers/${PLOVER}`]);
});
