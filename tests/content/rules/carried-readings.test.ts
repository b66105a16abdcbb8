/** What a session may carry over of earlier ones. */
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type ContentFolder, tinyContent } from '../../support/content-folder.ts';
import { expectProblems } from './expect-problems.ts';

const PLOVER = 'panels/plover/index.md';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

/** Adds sessions to the Plover, whose first is of 2026-10-01. */
function add(...sessions: string[]): void {
  content.edit(PLOVER, 'sessions:\n', `sessions:\n${sessions.map((it) => `  - ${it}\n`).join('')}`);
}

const LATER = '{ date: 2026-11-20, methodVersion: 1, carried: { mains: 2026-10-01, sound: 2026-10-01 } }';

test('blocks that were read then, and were not read again, are no problem', () => {
  add(LATER);
  expect(content.problems()).toEqual([]);
});

test('an unknown day is one, and the days that are there are named', () => {
  add('{ date: 2026-11-20, methodVersion: 1, carried: { mains: 2026-10-02 } }');
  expectProblems(content.problems(), {
    file: PLOVER,
    line: content.lineOf(PLOVER, '2026-10-02'),
    field: 'sessions[0].carried.mains',
    found: '"2026-10-02"',
    wanted: 'the day of an earlier session of this panel in which mains draw was read: 2026-10-01',
    hint: 'did you mean "2026-10-01"?',
  });
});

test('so is a block that was not read in that session', () => {
  add('{ date: 2026-11-20, methodVersion: 1, carried: { flicker: 2026-10-01 } }');
  content.edit(PLOVER, '    flicker:', '    old:');
  const problems = content.problems().filter((it) => it.field.includes('carried'));
  expect(problems).toMatchObject([
    {
      wanted: 'the day of an earlier session of this panel in which flicker was read: there is none',
      hint: 'it was not read in that session',
    },
  ]);
});

test('a chain names the day on which it was read', () => {
  add(LATER, '{ date: 2026-11-22, methodVersion: 1, carried: { mains: 2026-11-20 } }');
  expectProblems(content.problems(), {
    file: PLOVER,
    line: content.lineOf(PLOVER, '2026-11-22'),
    field: 'sessions[1].carried.mains',
    found: '"2026-11-20"',
    wanted: /: 2026-10-01$/,
    hint: 'that session carried it over itself: name the day on which it was read, 2026-10-01',
  });
});

test.each([
  ['itself', '2026-11-20', 'a session does not carry over from itself'],
  ['a later session', '2026-11-21', 'that session is the later one'],
  ['a draft', '2026-11-19', 'that session is a draft'],
])('nothing comes from %s', (_what, from, hint) => {
  add(
    `{ date: 2026-11-20, methodVersion: 1, carried: { sound: ${from} } }`,
    '{ date: 2026-11-21, methodVersion: 1, sound: { on: 40, off: 30 } }',
    '{ date: 2026-11-19, methodVersion: 1, draft: true, sound: { on: 40, off: 30 } }',
  );
  expect(content.problems()).toMatchObject([{ field: 'sessions[0].carried.sound', hint }]);
});

test('a block is read or carried over, not both', () => {
  add('{ date: 2026-11-20, methodVersion: 1, carried: { mains: 2026-10-01 }, mains: { combined: 90 } }');
  expect(content.problems()).toMatchObject([
    {
      field: 'sessions[0].carried.mains',
      wanted: 'mains draw either read in this session or carried over: mains stands in it as well',
      hint: 'take out carried.mains, or the readings',
    },
  ]);
});

test('light belongs together', () => {
  add('{ date: 2026-11-20, methodVersion: 1, carried: { light: 2026-10-01 }, peak: { combined: 50 } }');
  expect(content.problems()).toMatchObject([
    {
      field: 'sessions[0].carried.light',
      hint: 'readings of light belong together: take them all again, or none of them',
    },
  ]);
});

test('a part of it is named by the name of the whole', () => {
  add('{ date: 2026-11-20, methodVersion: 1, carried: { peak: 2026-10-01 } }');
  expect(content.problems()).toMatchObject([{ field: 'sessions[0].carried.peak', hint: 'did you mean "light"?' }]);
});

test('light that is carried over was read from the same distance', () => {
  add('{ date: 2026-11-20, methodVersion: 1, distance: 30 cm, carried: { light: 2026-10-01 }, sound: { on: 40 } }');
  expect(content.problems()).toMatchObject([
    {
      field: 'sessions[0].distance',
      found: '"30 cm"',
      wanted: /^the distance at which the light was read on 2026-10-01/,
    },
  ]);
});

test('no meter stands for what was not read', () => {
  add('{ date: 2026-11-20, methodVersion: 1, instruments: { mains: wattmeter }, carried: { mains: 2026-10-01 } }');
  expectProblems(content.problems(), {
    file: PLOVER,
    line: content.lineOf(PLOVER, '2026-11-20'),
    field: 'sessions[0].instruments.mains',
    found: '"wattmeter"',
    wanted: 'no meter for what was not read: mains draw is carried over, with its meter, from 2026-10-01',
    hint: 'take out instruments.mains',
  });
});

test('version 2 asks a session that carries its light over, or is a draft, for no readings past the edges', () => {
  add('{ date: 2026-11-20, methodVersion: 2, carried: { light: 2026-10-01 }, sound: { on: 40, off: 30 } }');
  add('{ date: 2026-11-21, methodVersion: 2, draft: true }');
  expect(content.problems()).toEqual([]);
});
