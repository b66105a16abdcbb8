/** What the file of a check standard may say, and what it says of its meter. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type ContentFolder, tinyContent } from '../../support/content-folder.ts';
import { expectProblems } from './expect-problems.ts';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const LAMP = 'standards/lamp.yaml';

/** A valid file with some of its lines put in the place of others. */
function lamp(edits: Record<string, string> = {}) {
  const text = `name: Lamp
what: LEDs at a constant current.
instrument: thermopile
distance: 20 cm
limitsFrom: 5
readings:
  - { date: 2026-03-02, value: 41.2 }
  - { date: 2026-03-09, value: [41.0, 410 W/m2, { value: 39, struck: cold }] }
restarts:
  - { date: 2026-03-09, reason: The meter was adjusted. }
`;
  content.write(
    LAMP,
    Object.entries(edits).reduce((all, [from, to]) => all.replace(from, to), text),
  );
}

const lineOf = (text: string) => content.lineOf(LAMP, text);

test('a whole file has no problem', () => {
  lamp();
  expect(content.problems()).toEqual([]);
  expect(content.content().standards.get('lamp')?.data).toMatchObject({ limitsFrom: 5, nearDays: 7 });
});

describe('a meter', () => {
  test('misspelt', () => {
    lamp({ thermopile: 'thermopyle' });
    expectProblems(content.problems(), {
      file: LAMP,
      line: 3,
      field: 'instrument',
      found: '"thermopyle"',
      wanted: /^an instrument that has a file in content\/instruments: .*thermopile/,
      hint: 'did you mean "thermopile"?',
    });
  });

  test('that no file is near', () => {
    lamp({ thermopile: 'pocket-lux' });
    expectProblems(content.problems(), {
      file: LAMP,
      line: 3,
      field: 'instrument',
      found: '"pocket-lux"',
      wanted: /^an instrument/,
      hint: 'write content/instruments/pocket-lux.yaml',
    });
  });
});

describe('a reading', () => {
  test('of another quantity', () => {
    lamp({ 'value: 41.2': 'value: 41 cm' });
    expectProblems(content.problems(), {
      file: LAMP,
      line: lineOf('41 cm'),
      field: 'readings[0].value',
      found: '"41 cm"',
      wanted: /^an irradiance/,
      hint: /a unit of a length/,
    });
  });

  test.each([
    ['3000', '"3000"'],
    ['0.02', '"0.02"'],
  ])('beyond the range of the display: %s', (value) => {
    lamp({ 'value: 41.2': `value: ${value}` });
    expectProblems(content.problems(), {
      file: LAMP,
      line: lineOf(`value: ${value} }`),
      field: 'readings[0].value',
      found: value,
      wanted: 'a reading that the thermopile can show: 0.1 to 300 mW/cm2',
      hint: 'another unit, or the wrong range in content/instruments/thermopile.yaml?',
    });
  });

  test('a range that none of them is in is one problem', () => {
    lamp({});
    content.edit('instruments/thermopile.yaml', 'to: 300', 'to: 30');
    const told = content.problems().filter((it) => it.file === `content/${LAMP}`);
    expect(told).toHaveLength(1);
    expect(told[0]).toMatchObject({
      field: 'readings[0].value',
      found: expect.stringMatching(/^41.2, the first of \d+ readings outside its range$/),
    });
  });

  test('a bound can’t be charted', () => {
    lamp({ 'value: 41.2': 'value: <41' });
    expectProblems(content.problems(), {
      file: LAMP,
      line: lineOf('<41'),
      field: 'readings[0].value',
      found: '"<41"',
      wanted: /a bound/,
    });
  });

  test('with a decimal comma in a list is two readings that can’t be', () => {
    lamp({ '[41.0, 410 W/m2, ': '[41,2, ' });
    expectProblems(content.problems(), {
      file: LAMP,
      line: lineOf('41,2'),
      field: 'readings[1].value',
      found: '2 and 41 on one day',
      wanted: 'repeats of one steady thing, near one another',
      hint: 'write decimals after a point; strike a slip out as { value: …, struck: why }',
    });
  });

  test('struck out may be anything that the meter could say', () => {
    lamp({ 'value: 39, struck': 'value: 3900, struck' });
    expect(content.problems()).toEqual([]);
  });

  test('twice on a day', () => {
    lamp({ '2026-03-09, value': '2026-03-02, value', '2026-03-09, reason': '2026-03-03, reason' });
    expectProblems(content.problems(), {
      file: LAMP,
      line: lineOf('410 W/m2'),
      field: 'readings[1].date',
      found: '"2026-03-02"',
      wanted: /^one entry a day/,
      hint: 'write the repeats of a day as a list: value: [41.2, 41.4]',
    });
  });

  test('on a day to come', () => {
    lamp({ '2026-03-09, value': '2026-11-26, value' });
    expectProblems(content.problems(), {
      file: LAMP,
      line: lineOf('2026-11-26'),
      field: 'readings[1].date',
      found: '"2026-11-26"',
      wanted: 'a day that is not in the future (today is 2026-11-25)',
    });
  });
});

describe('limits', () => {
  test('from too few days', () => {
    lamp({ 'limitsFrom: 5': 'limitsFrom: 3' });
    expectProblems(content.problems(), {
      file: LAMP,
      line: 5,
      field: 'limitsFrom',
      found: '3',
      wanted: /at least 5|5 or more/,
    });
  });

  test('restarted before the first reading', () => {
    lamp({ '2026-03-09, reason': '2026-03-02, reason' });
    expectProblems(content.problems(), {
      file: LAMP,
      line: lineOf('reason'),
      field: 'restarts[0].date',
      found: '"2026-03-02"',
      wanted: /^a day after the first reading, 2026-03-02: the limits start with it anyway/,
    });
  });

  test('restarted without a reason', () => {
    lamp({ ', reason: The meter was adjusted.': '' });
    expect(content.problems()).toMatchObject([{ field: 'restarts[0].reason' }]);
  });
});

test('a file of another ending is not lost without a word', () => {
  lamp();
  content.write('standards/lamp.yml', 'name: Lamp');
  expectProblems(content.problems(), {
    file: 'standards/lamp.yml',
    field: '',
    found: '"lamp.yml"',
    wanted: 'files that end in .yaml',
  });
});

test('links may lead to its chart', () => {
  lamp();
  content.write(
    'panels/plover/index.md',
    `${content.read('panels/plover/index.md')}\n[lamp](/instruments/#standard-lamp)\n`,
  );
  expect(content.problems()).toEqual([]);
  content.edit('panels/plover/index.md', '#standard-lamp', '#standard-lump');
  expect(content.problems()).toMatchObject([{ file: 'content/panels/plover/index.md' }]);
});
