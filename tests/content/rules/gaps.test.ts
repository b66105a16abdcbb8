/** What is still to be filled in is no problem in a draft, and one where readers would miss it. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readContent } from '../../../src/content/read/read-content.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';
import { expectProblems } from './expect-problems.ts';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const PLOVER = 'panels/plover/index.md';
const draft = () => content.edit(PLOVER, 'status: published', 'status: draft');
const read = () => readContent({ folder: content.folder, today: TODAY, drafts: true });

test('a session that is still being read may have gaps, in a panel that readers see too', () => {
  const session = (draft: string) =>
    `\n  - { date: 2026-11-20, methodVersion: 1, ${draft}peak: { red: TODO, combined: 31 } }`;
  const end = '\n---\n\nNotes';
  content.edit(PLOVER, end, session('draft: true, ') + end);
  const { content: all, problems } = read();
  expect(problems).toEqual([]);
  expect(all?.panels.get('plover')?.data.sessions.at(-1)).toMatchObject({ peak: { combined: { value: 31 } } });
  content.edit(PLOVER, 'draft: true, ', '');
  expect(content.problems().map((it) => it.field)).toEqual(['sessions[1].peak.red']);
});

describe('a draft with gaps', () => {
  test('is read without them, and its gaps are known by their lines', () => {
    draft();
    content.edit(PLOVER, 'weight: 9 lb', 'weight: TODO');
    content.edit(PLOVER, '    paid: 240', '    paid: TODO');
    const { content: all, problems } = read();
    expect(problems).toEqual([]);
    expect(all?.panels.get('plover')?.data).toMatchObject({ model: 'Plover', prices: [{ list: 300 }, { paid: 200 }] });
    expect(all?.panels.get('plover')?.data.weight).toBeUndefined();
    expect(all?.unfinished.map((it) => it.unfinished?.gaps)).toEqual([
      [
        { path: ['prices', 0, 'paid'], line: content.lineOf(PLOVER, 'paid: TODO') },
        { path: ['weight'], line: content.lineOf(PLOVER, 'weight: TODO') },
      ],
    ]);
  });

  test('that lacks its maker or model has no page yet, and no problem', () => {
    draft();
    content.edit(PLOVER, 'maker: wrackline', 'maker: TODO');
    const { content: all, problems } = read();
    expect(problems).toEqual([]);
    expect([...(all?.panels.keys() ?? [])]).toEqual(['teasel']);
    expect(all?.unfinished).toHaveLength(1);
  });

  test('has its problems all the same, at their lines and places in the file', () => {
    draft();
    content.edit(PLOVER, '  - date: 2026-08-01', '  - date: TODO');
    content.edit(PLOVER, 'paid: 200', 'paid: -200');
    content.edit(PLOVER, 'weight: 9 lb', 'wieght: TODO');
    expectProblems(
      content.problems(),
      {
        file: PLOVER,
        line: content.lineOf(PLOVER, 'paid: -200'),
        field: 'prices[1].paid',
        found: '-200',
        wanted: /^a number above 0 \(What a buyer really pays/,
      },
      {
        file: PLOVER,
        line: content.lineOf(PLOVER, 'wieght'),
        field: 'wieght',
        found: 'an unknown field, "wieght"',
        wanted: /^one of: maker/,
        hint: 'did you mean "weight"?',
      },
    );
  });
});

describe('a gap where readers would miss it', () => {
  test('in a published panel, one problem a line', () => {
    content.edit(PLOVER, 'verdict: A panel for the tests.', 'verdict: TODO');
    content.edit(PLOVER, 'red: { peak: 661, fwhm: 17.5 }', 'red: { peak: TODO, fwhm: TODO }');
    expectProblems(
      content.problems(),
      {
        file: PLOVER,
        line: 5,
        field: 'verdict',
        found: 'a gap that is still to be filled in',
        wanted: 'verdict (The tester’s verdict in one or two sentences)',
        hint: 'leave out what was not read',
      },
      {
        file: PLOVER,
        line: content.lineOf(PLOVER, 'red: { peak: TODO'),
        field: 'sessions[0].wavelengths.red',
        found: '2 gaps still to be filled in',
        wanted: 'peak (Peak wavelength); fwhm (Full width at half maximum)',
        hint: 'fill it in, or write status: draft until it is',
      },
    );
  });

  test('in a maker’s file and in the guide’s', () => {
    content.edit('makers/wrackline.yaml', 'name: Wrackline', 'name: TODO');
    content.edit('guide.yaml', 'publisher: The test suite', 'publisher: TODO');
    expect(content.problems().map((it) => [it.file, it.field, it.found])).toEqual([
      ['content/guide.yaml', 'publisher', 'a gap that is still to be filled in'],
      ['content/makers/wrackline.yaml', 'name', 'a gap that is still to be filled in'],
    ]);
  });

  test('in an instrument that a published panel names', () => {
    content.edit('instruments/coil.yaml', 'resolution: 0.1', 'resolution: TODO');
    expectProblems(content.problems(), {
      file: PLOVER,
      line: content.lineOf(PLOVER, 'magnetic: coil'),
      field: 'sessions[0].instruments.magnetic',
      found: '"coil"',
      wanted: 'an instrument whose file is filled in; content/instruments/coil.yaml has 1 gap',
      hint: 'the first is resolution, in line 6',
    });
    draft();
    expect(content.problems()).toEqual([]);
  });
});
