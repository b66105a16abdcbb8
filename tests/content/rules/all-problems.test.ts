/** All problems of all files come in one list, and nothing that is written in a file stops the check. */
import { Buffer } from 'node:buffer';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { keptFiles } from '../../../src/content/read/kept-files.ts';
import { ContentError, problemList } from '../../../src/content/read/problem-list.ts';
import { readContent } from '../../../src/content/read/read-content.ts';
import type { Problem } from '../../../src/content/schema/problem.ts';
import { buildLedger } from '../../../src/ledger/build-ledger.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import { RUNS } from '../../measure/make.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';

let content: ContentFolder;

describe('a folder in which much is wrong', () => {
  beforeAll(() => {
    content = tinyContent();
    content.lay('bad-content');
  });
  afterAll(() => content.delete());

  test('gives these messages', async () => {
    // To renew after a change of the wording: vitest run -u on this file, and read the difference.
    await expect(`${problemList(content.problems())}\n`).toMatchFileSnapshot('../../fixtures/bad-content.txt');
  });

  test('has a problem in every one of its files', () => {
    const files = new Set(content.problems().map((it) => it.file));
    for (const file of [
      'README.md',
      'cautions.mdx',
      'guide.yaml',
      'instruments/coil.yml',
      'instruments/sound-meter.yaml',
      'instruments/wattmeter.yaml',
      'makers/knotgrass.yaml',
      'makers/wrackline.yaml',
      'methods/frontiers.mdx',
      'panels/Grey Plover',
      'panels/plover/index.md',
      'panels/plover/index.mdx',
      'panels/whimbrel/index.md',
    ]) {
      expect(files).toContain(`content/${file}`);
    }
  });

  test('lists files by name, and problems of a file by line', () => {
    const problems = content.problems();
    const places = problems.map((it) => [it.file, it.line ?? 0] as const);
    const sorted = places.toSorted((a, b) => a[0].localeCompare(b[0], 'en') || a[1] - b[1]);
    expect(places).toEqual(sorted);
  });

  test('says the same each time', () => {
    expect(content.problems()).toEqual(content.problems());
  });

  test('gives no content', () => {
    expect(readContent({ folder: content.folder, today: TODAY }).content).toBeUndefined();
  });
});

describe('six bad files', () => {
  afterEach(() => content.delete());

  test('give the problems of all six in one list, whatever is wrong with the others', () => {
    content = tinyContent();
    const slips: Array<[string, string, string]> = [
      ['guide.yaml', 'price: 0.3', 'price: nothing'],
      ['cautions.mdx', 'standing: practice', 'standing: hearsay'],
      ['instruments/coil.yaml', 'unit: mG', 'unit: kg'],
      ['makers/knotgrass.yaml', 'name: Knotgrass', 'nmae: Knotgrass'],
      ['panels/plover/index.md', 'width: 20 cm', 'width: 20 kg'],
      ['panels/teasel/index.md', 'date: 2026-10-02', 'date: 2027-10-02'],
    ];
    const alone = slips.flatMap(([file, from, to]) => {
      content.edit(file, from, to);
      const problems = content.problems();
      content.edit(file, to, from);
      expect(problems.length).toBeGreaterThan(0);
      expect(new Set(problems.map((it) => it.file))).toEqual(new Set([`content/${file}`]));
      return problems;
    });
    for (const [file, from, to] of slips) content.edit(file, from, to);
    const together = content.problems();
    const key = (it: Problem) => JSON.stringify(it);
    expect(together.map(key).toSorted()).toEqual(alone.map(key).toSorted());
  });
});

describe('problemList', () => {
  const one: Problem = { file: 'content/guide.yaml', line: 3, field: 'site', found: '5', wanted: 'an address' };

  test('a block each, and the count', () => {
    expect(problemList([one])).toBe(
      'content/guide.yaml:3  site\n  found   5\n  wanted  an address\n\n1 problem in 1 file; nothing was built.',
    );
  });

  test('a hint where there is one; no line where the whole file is concerned', () => {
    const other = {
      file: 'content/cautions.mdx',
      field: '',
      found: 'no such file',
      wanted: 'the page',
      hint: 'write it',
    };
    expect(problemList([one, other, other])).toContain(
      '\n\ncontent/cautions.mdx\n  found   no such file\n  wanted  the page\n  hint    write it\n\n',
    );
    expect(problemList([one, other, other])).toMatch(/\n\n3 problems in 2 files; nothing was built\.$/);
  });

  test('an error carries the whole list, and no trace of the program', () => {
    const error = new ContentError([one]);
    expect(error.problems).toEqual([one]);
    expect(error.message).toContain(problemList([one]));
    expect(error.stack).not.toContain('.ts:');
    expect(error).toBeInstanceOf(Error);
  });
});

describe('whatever is written in a file', () => {
  /** What happens to a file at a hand: each is done at a place between its start and its end. */
  type Slip = {
    kind: 'drop' | 'double' | 'swap' | 'bytes' | 'cut' | 'indent';
    at: number;
    to: number;
    bytes: Uint8Array;
  };
  const slip: fc.Arbitrary<Slip> = fc.record({
    kind: fc.constantFrom('drop', 'double', 'swap', 'bytes', 'bytes', 'cut', 'indent'),
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    to: fc.double({ min: 0, max: 1, noNaN: true }),
    bytes: fc.oneof(
      fc.uint8Array({ minLength: 1, maxLength: 4 }),
      fc
        .constantFrom(
          '-',
          ':',
          ': ',
          ' #',
          '*',
          '&a ',
          '!',
          '|',
          '>',
          '"',
          "'",
          '{',
          '}',
          '[',
          ']',
          ',',
          '? ',
          '%',
          '@',
          '`',
          '\t',
          '\n',
          '\n---\n',
          '0',
          '9',
          'e9',
          '.',
          '<',
          ' kg',
          '!!binary ',
          '<<: ',
          '\u0000',
          '\ufeff',
          '𝄞',
          'constructor: ',
          '__proto__: ',
          '.nan',
          '.inf',
          '0x',
          'null',
          '~',
          'true',
        )
        .map((text) => new TextEncoder().encode(text)),
    ),
  });

  function slipped(file: Buffer, { kind, at, to, bytes }: Slip): Buffer {
    const place = Math.floor(at * file.length);
    if (kind === 'bytes') return Buffer.concat([file.subarray(0, place), bytes, file.subarray(place)]);
    if (kind === 'cut') return file.subarray(0, place);
    if (kind === 'swap') {
      const other = Math.min(file.length - 1, Math.floor(to * file.length));
      const copy = Buffer.from(file);
      copy[place] = file[other] ?? 0;
      copy[other] = file[place] ?? 0;
      return copy;
    }
    const lines = file.toString('latin1').split('\n');
    const line = Math.floor(at * lines.length);
    const text = lines[line] ?? '';
    const put = { drop: [], double: [text, text], indent: [to < 0.5 ? ` ${text}` : text.slice(1)] }[kind];
    return Buffer.from(lines.toSpliced(line, 1, ...put).join('\n'), 'latin1');
  }

  const FILES = [
    'panels/plover/index.md',
    'panels/plover/index.md',
    'panels/plover/index.md',
    'guide.yaml',
    'instruments/thermopile.yaml',
    'makers/wrackline.yaml',
    'methods/rank.mdx',
    'cautions.mdx',
  ];

  beforeAll(() => {
    content = tinyContent();
  });
  afterAll(() => content.delete());

  test('the check ends with content, or with problems that lead to the place', () => {
    const kept = keptFiles();
    const original = new Map(FILES.map((file) => [file, readFileSync(join(content.folder, file))]));
    let read = 0;
    fc.assert(
      fc
        .property(fc.constantFrom(...FILES), fc.array(slip, { minLength: 1, maxLength: 3 }), (file, slips) => {
          const bytes = slips.reduce(slipped, original.get(file) as Buffer);
          content.write(file, bytes);
          const result = readContent({ folder: content.folder, today: TODAY, kept });
          if (result.content) {
            expect(result.problems).toEqual([]);
            read++;
            expectFinite(result.content);
            return;
          }
          expect(result.problems.length).toBeGreaterThan(0);
          const lines = bytes.toString('latin1').split('\n').length;
          for (const problem of result.problems) expectReadable(problem, file, lines);
        })
        .afterEach(() => {
          for (const [file, bytes] of original) content.write(file, bytes);
        }),
      { ...RUNS, numRuns: 200 },
    );
    // Some slips have to be harmless, or nothing of the ledger was tried.
    expect(read).toBeGreaterThan(10);
    expect(readdirSync(content.folder)).toContain('guide.yaml');
  });

  function expectReadable(problem: Problem, file: string, lines: number): void {
    if (problem.file === `content/${file}` && problem.line !== undefined) {
      expect(problem.line).toBeGreaterThanOrEqual(1);
      expect(problem.line).toBeLessThanOrEqual(lines);
    }
    for (const text of [problem.found, problem.wanted, problem.hint ?? 'none']) {
      expect(text.trim()).not.toBe('');
      expect(text).not.toContain('\n');
      expect(text).not.toMatch(/undefined|\[object |NaN is/);
    }
  }

  function expectFinite(of: NonNullable<ReturnType<typeof readContent>['content']>): void {
    const ledger = buildLedger(of, { today: TODAY, drafts: true });
    for (const panel of ledger.panels.values()) {
      for (const it of panel.figures.values()) {
        if (isFigure(it)) expect(Number.isFinite(it.value), it.id).toBe(true);
        else expect(it.reason).not.toBe('');
      }
    }
  }
});
