/** What one file says of another, of itself in two places, or of today. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { METHODS } from '../../../src/measure/methods.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';
import { expectProblems } from './expect-problems.ts';

let content: ContentFolder;
beforeEach(() => {
  content = tinyContent();
});
afterEach(() => content.delete());

const PLOVER = 'panels/plover/index.md';
const TEASEL = 'panels/teasel/index.md';
const TOMORROW = '2026-11-26';

describe('instruments', () => {
  const WANTED = 'an instrument for irradiance that has a file in content/instruments: thermopile';

  test('misspelt', () => {
    content.edit(PLOVER, 'irradiance: thermopile', 'irradiance: thermopyle');
    expectProblems(content.problems(), {
      file: PLOVER,
      line: content.lineOf(PLOVER, 'thermopyle'),
      field: 'sessions[0].instruments.irradiance',
      found: '"thermopyle"',
      wanted: WANTED,
      hint: 'did you mean "thermopile"?',
    });
  });

  test('without a file', () => {
    content.edit(TEASEL, 'irradiance: thermopile', 'irradiance: pocket-lux');
    expectProblems(content.problems(), {
      file: TEASEL,
      line: content.lineOf(TEASEL, 'pocket-lux'),
      field: 'sessions[0].instruments.irradiance',
      found: '"pocket-lux"',
      wanted: WANTED,
      hint: 'write content/instruments/pocket-lux.yaml',
    });
  });

  test('of another kind', () => {
    content.edit(PLOVER, 'irradiance: thermopile', 'irradiance: wattmeter');
    expectProblems(content.problems(), {
      file: PLOVER,
      line: content.lineOf(PLOVER, 'irradiance: wattmeter'),
      field: 'sessions[0].instruments.irradiance',
      found: '"wattmeter"',
      wanted: WANTED,
      hint: '"wattmeter" measures mains',
    });
  });

  test('of a kind for which there is no instrument at all', () => {
    content.edit(PLOVER, 'length: rule', 'temperature: rule');
    expectProblems(content.problems(), {
      file: PLOVER,
      line: content.lineOf(PLOVER, 'temperature: rule'),
      field: 'sessions[0].instruments.temperature',
      found: '"rule"',
      wanted: 'an instrument for temperature that has a file in content/instruments: there is none yet',
      hint: '"rule" measures length',
    });
  });

  test.each(['constructor', '__proto__', '../guide'])('of the name %s', (name) => {
    content.edit(PLOVER, 'irradiance: thermopile', `irradiance: ${name}`);
    expect(content.problems()).toMatchObject([{ field: 'sessions[0].instruments.irradiance', found: `"${name}"` }]);
  });

  test.each([
    ['can’t be read', '\tname: Thermopile\n'],
    ['has a fault of its own', undefined],
  ])('a file that %s is not a problem more where it is used', (_name, text) => {
    if (text) content.write('instruments/thermopile.yaml', text);
    else content.edit('instruments/thermopile.yaml', 'relative: 4', 'relative: 400');
    const files = new Set(content.problems().map((it) => it.file));
    expect([...files]).toEqual(['content/instruments/thermopile.yaml']);
  });

  test.each([
    ['instruments/thermopile.yaml', 'unit: mW/cm2', 'unit: mW/cm', '"mW/cm"', 'did you mean "mW/cm2"?'],
    ['instruments/thermopile.yaml', 'unit: mW/cm2', 'unit: lux', '"lux"', undefined],
    ['instruments/coil.yaml', 'unit: mG', 'unit: V/m', '"V/m"', undefined],
    ['instruments/wattmeter.yaml', 'unit: W', 'unit: constructor', '"constructor"', undefined],
  ])('%s: %s as %s', (file, from, to, found, hint) => {
    content.edit(file, from, to);
    expectProblems(content.problems(), {
      file,
      line: content.lineOf(file, to),
      field: 'unit',
      found,
      wanted: /^a unit of what it measures: /,
      ...(hint !== undefined && { hint }),
    });
  });

  test.each(['mW/cm²', 'W/m²', 'mW / cm2'])('a unit may be spelt %s', (unit) => {
    content.edit('instruments/thermopile.yaml', 'unit: mW/cm2', `unit: ${unit}`);
    // 300 W/m² would end below the panels’ readings.
    content.edit('instruments/thermopile.yaml', 'to: 300', 'to: 3000');
    expect(content.problems()).toEqual([]);
  });
});

describe('makers', () => {
  test('misspelt', () => {
    content.edit(PLOVER, 'maker: wrackline', 'maker: wracklin');
    expectProblems(content.problems(), {
      file: PLOVER,
      line: 2,
      field: 'maker',
      found: '"wracklin"',
      wanted: 'a maker that has a file in content/makers: knotgrass, wrackline',
      hint: 'did you mean "wrackline"?',
    });
  });

  test('without a file', () => {
    content.edit(PLOVER, 'maker: wrackline', 'maker: oystercatch');
    expectProblems(content.problems(), {
      file: PLOVER,
      line: 2,
      field: 'maker',
      found: '"oystercatch"',
      wanted: 'a maker that has a file in content/makers: knotgrass, wrackline',
      hint: 'write content/makers/oystercatch.yaml',
    });
  });

  test('none at all yet', () => {
    content.remove('makers');
    expect(content.problems().map((it) => [it.file, it.wanted])).toEqual([
      [`content/${PLOVER}`, 'a maker that has a file in content/makers: there is none yet'],
      [`content/${TEASEL}`, 'a maker that has a file in content/makers: there is none yet'],
    ]);
  });

  test('a maker’s broken file is not a problem more where it is used', () => {
    content.write('makers/wrackline.yaml', 'name: [\n');
    expect(new Set(content.problems().map((it) => it.file))).toEqual(new Set(['content/makers/wrackline.yaml']));
  });
});

describe('days that lie ahead', () => {
  const wanted = `a day that is not in the future (today is ${TODAY})`;

  test.each([
    [PLOVER, 'date: 2026-10-01', 'sessions[0].date'],
    [PLOVER, 'date: 2026-11-01', 'prices[1].date'],
    ['guide.yaml', 'date: 2026-09-01', 'tariff.date'],
    ['guide.yaml', 'date: 2026-11-02', 'rates[0].date'],
    ['instruments/thermopile.yaml', 'date: 2026-01-15', 'calibrations[0].date'],
    ['instruments/coil.yaml', 'date: 2026-01-18', 'calibrations[0].date'],
    ['methods/rank.mdx', 'date: 2026-01-01', 'versions[0].date'],
  ])('%s, %s', (file, from, field) => {
    content.edit(file, from, `date: ${TOMORROW}`);
    expectProblems(content.problems(), {
      file,
      line: content.lineOf(file, TOMORROW),
      field,
      found: `"${TOMORROW}"`,
      wanted,
    });
    content.edit(file, TOMORROW, TODAY);
    // A calibration of today lies after the sessions, which is a problem of theirs.
    expect(content.problems().filter((it) => it.file === `content/${file}`)).toEqual([]);
  });
});

describe('currencies', () => {
  test('without a rate', () => {
    content.edit(PLOVER, 'currency: GBP', 'currency: USD');
    expectProblems(content.problems(), {
      file: PLOVER,
      line: content.lineOf(PLOVER, 'currency: USD'),
      field: 'prices[1].currency',
      found: '"USD"',
      wanted: 'a currency that the guide can convert: EUR, GBP',
      hint: 'add a rate for USD to content/guide.yaml',
    });
  });

  test('a code that is none is one problem, not two', () => {
    content.edit(PLOVER, 'currency: GBP', 'currency: pounds');
    expect(content.problems()).toHaveLength(1);
  });

  const twice = (file: string, from: string, to: string, field: RegExp) => {
    content.edit(file, from, to);
    const problems = content.problems();
    expect(problems).toHaveLength(1);
    expect(problems[0]?.field).toMatch(field);
  };

  test('one rate a currency: which of two holds, nobody can tell', () => {
    twice(
      'guide.yaml',
      'tariff:',
      '  - { currency: GBP, rate: 1.3, date: 2026-11-03, source: Invented }\ntariff:',
      /^rates/,
    );
  });

  test('no rate for the base currency: it is 1', () => {
    twice(
      'guide.yaml',
      'tariff:',
      '  - { currency: EUR, rate: 1.3, date: 2026-11-03, source: Invented }\ntariff:',
      /^rates/,
    );
  });
});

describe('size classes', () => {
  const CLASSES = /sizeClasses:\n(.*\n)+$/;
  const classes = (...areas: Array<number | undefined>) => {
    const items = areas.map(
      (area, i) =>
        `  - { id: class-${i}, name: A class, description: Some.${area === undefined ? '' : `, upToArea: ${area}`} }\n`,
    );
    content.write('guide.yaml', content.read('guide.yaml').replace(CLASSES, `sizeClasses:\n${items.join('')}`));
    return content.problems().map((it) => `${it.field}: ${it.wanted}`);
  };

  test('rise in area and end with one that takes all', () => {
    expect(classes(200, 700, undefined)).toEqual([]);
    expect(classes(undefined)).toEqual([]);
  });

  test.each([
    [[200, 700], 'sizeClasses[1].upToArea: no upper area: the last class takes all that is larger'],
    [[undefined, undefined], 'sizeClasses[0].upToArea: an area in cm2; only the last class is open-ended'],
    [[700, 200, undefined], 'sizeClasses[1].upToArea: more than 700, the area of the class before'],
    [[200, 200, undefined], 'sizeClasses[1].upToArea: more than 200, the area of the class before'],
  ] as Array<[Array<number | undefined>, string]>)('%j', (areas, wanted) => {
    expect(classes(...areas)).toEqual([wanted]);
  });

  test('have ids of their own: an id is part of an address', () => {
    content.edit('guide.yaml', 'id: large', 'id: small # again');
    const [problem, ...more] = content.problems();
    expect(more).toEqual([]);
    expect(problem).toMatchObject({ field: 'sizeClasses[1].id', line: content.lineOf('guide.yaml', '# again') });
  });

  test.each(['Desk', 'full length', '1st', '-desk', 'désk'])('"%s" is no id', (id) => {
    content.edit('guide.yaml', 'id: large', `id: ${id}`);
    expect(content.problems()).toMatchObject([{ field: 'sizeClasses[1].id', found: `"${id}"` }]);
  });
});

describe('panels', () => {
  test('two sessions on one day', () => {
    content.edit(
      PLOVER,
      '    notes: Nothing happened.\n',
      '    notes: Nothing happened.\n  - date: 2026-10-01 # again\n    methodVersion: 1\n',
    );
    expectProblems(content.problems(), {
      file: PLOVER,
      line: content.lineOf(PLOVER, '# again'),
      field: 'sessions[1].date',
      found: '"2026-10-01"',
      wanted: /^one session a day: merge the two, or correct the date/,
    });
  });

  test.each(['statusReason:', "statusReason: ''"])('withdrawn with an empty reason: %s', (reason) => {
    content.edit(PLOVER, 'status: published', `status: withdrawn\n${reason}`);
    const problems = content.problems();
    expect(problems.map((it) => it.wanted).join('\n')).toContain('the reason for the withdrawal');
    expect(problems.every((it) => it.file === `content/${PLOVER}` && it.field === 'statusReason')).toBe(true);
  });

  test('withdrawn without a reason', () => {
    content.edit(PLOVER, 'status: published', 'status: withdrawn');
    const [problem, ...more] = content.problems();
    expect(more).toEqual([]);
    expect(problem).toMatchObject({ field: 'statusReason', found: 'nothing' });
    expect(problem?.wanted).toMatch(/^the reason for the withdrawal/);
    expect(problem?.line).toBeLessThanOrEqual(content.lineOf(PLOVER, 'status: withdrawn'));
  });

  test('withdrawn with a reason', () => {
    content.edit(PLOVER, 'status: published', 'status: withdrawn\nstatusReason: No longer made.');
    expect(content.problems()).toEqual([]);
  });

  test.each([
    [PLOVER, '    methodVersion: 1', '    methodVersion: 9', 'sessions[0].methodVersion'],
    ['guide.yaml', 'methodVersion: 1', 'methodVersion: 9', 'methodVersion'],
  ])('%s: a version of the bench procedure that does not exist', (file, from, to, field) => {
    content.edit(file, from, to);
    const newest = METHODS.find((it) => it.id === 'bench-procedure')?.version;
    expectProblems(content.problems(), {
      file,
      line: content.lineOf(file, to),
      field,
      found: '9',
      wanted: `a version of the bench procedure that exists: ${Array.from({ length: newest ?? 0 }, (_, i) => i + 1).join(', ')}`,
    });
  });
});

describe('a session under version 2 of the bench procedure', () => {
  const places = (edge: string, count: number) =>
    [8, 20, 40, 60].slice(0, count).map((past) => `      - { edge: ${edge}, past: ${past}, on: 3 }\n`);
  const write = (version: number, ...lines: string[]) =>
    content.edit(
      TEASEL,
      '    methodVersion: 1\n',
      `    methodVersion: ${version}\n${lines.length > 0 ? `    beyond:\n${lines.join('')}` : ''}`,
    );
  const fault = (found: string, line: string) => ({
    file: TEASEL,
    line: content.lineOf(TEASEL, line),
    field: 'sessions[0].beyond',
    found,
    wanted:
      'readings at 3 places past the left or right edge and 3 past the top or bottom one, as version 2 of the bench procedure asks',
    hint: 'take the readings, or write methodVersion: 1; what was read past the edges is used under it too',
  });

  test('has the six readings past the edges, at one edge each or more', () => {
    write(2, ...places('right', 3), ...places('top', 3));
    expect(content.problems()).toEqual([]);
    content.delete();
    content = tinyContent();
    write(2, ...places('right', 1), ...places('left', 2), ...places('bottom', 4));
    expect(content.problems()).toEqual([]);
  });

  test('without them', () => {
    write(2);
    const [problem, ...others] = content.problems();
    expect(others).toEqual([]);
    // Nothing stands there to point at: the line is the session's.
    expectProblems([problem as never], { ...fault('nothing', 'date: 2026-10-02'), line: problem?.line as number });
    expect(problem?.line).toBeLessThanOrEqual(content.lineOf(TEASEL, 'date: 2026-10-02'));
  });

  test('with too few of one kind, struck ones not counted', () => {
    write(2, ...places('right', 3), ...places('top', 2));
    expectProblems(content.problems(), fault('readings at 3 and 2 places', '    beyond:'));
    content.delete();
    content = tinyContent();
    const struck = '      - { edge: top, past: 40, on: { value: 3, struck: Slipped. } }\n';
    write(2, ...places('right', 3), ...places('top', 2), struck);
    expectProblems(content.problems(), fault('readings at 3 and 2 places', '    beyond:'));
  });

  test('with a fault in them is told of that alone', () => {
    write(2, '      - { edge: right, past: 8 kg, on: 3 }\n');
    expect(content.problems().map((it) => it.field)).toEqual(['sessions[0].beyond[0].past']);
  });

  test('under version 1 they are welcome, and none are asked for', () => {
    write(1, ...places('right', 1));
    expect(content.problems()).toEqual([]);
  });
});

describe('method pages', () => {
  const RANK = 'methods/rank.mdx';
  const rank = METHODS.find((it) => it.id === 'rank');
  const last = rank?.version ?? Number.NaN;

  test('left out: the product’s stands', () => {
    expect(content.content().methods.get('rank')?.source.isProducts).toBeUndefined();
    content.remove(RANK);
    const { source, data } = content.content().methods.get('rank') ?? {};
    expect([source?.isProducts, source?.file, data?.edition]).toEqual([true, `src/texts/${RANK}`, expect.any(Number)]);
  });

  test('of one’s own without a history: the product’s stands', () => {
    content.write(RANK, content.read(RANK).replace(/versions:\n(.*\n)*?---/, '---'));
    const { data } = content.content().methods.get('rank') ?? {};
    expect(data?.summary).toMatch(/for the tests/);
    expect(data?.versions.at(-1)).toMatchObject({ version: last, change: expect.stringMatching(/.{20}/) });
  });

  test('unreadable: not missing too', () => {
    content.write(RANK, 'Words.\n');
    expect(content.problems()).toHaveLength(1);
  });

  test('a history that ends before the version that is computed', () => {
    content.write(
      RANK,
      content
        .read(RANK)
        .replace(
          /versions:\n(.*\n)*?---/,
          'versions:\n  - { version: 1, date: 2026-01-01, change: Written. }\n  - { version: 2, date: 2026-01-02, change: Written. }\n  - { version: 3, date: 2026-01-03, change: Written. }\n---',
        ),
    );
    if (last === 3) throw new Error('the history of the test has to be wrong');
    const problems = content.problems().filter((it) => it.field === 'versions');
    expectProblems(problems, {
      file: RANK,
      line: content.lineOf(RANK, 'versions:'),
      field: 'versions',
      found: '3',
      wanted: `${last} as the last version: it is what ${rank?.file} computes`,
      hint: 'add the change to the history, or leave it out of a text of your own: then the product’s stands',
    });
  });

  test('a history that does not count up from 1', () => {
    content.edit('methods/claims.mdx', '  - { version: 1,', '  - { version: 2,');
    expect(content.problems().map((it) => `${it.field}: ${it.found}, ${it.wanted}`)).toContain(
      'versions[0].version: 2, 1: versions count up from 1',
    );
  });

  test('of nothing that is computed', () => {
    content.write('methods/ranks.mdx', content.read(RANK));
    expectProblems(content.problems(), {
      file: 'methods/ranks.mdx',
      found: 'a page for "ranks", which nothing computes',
      wanted: /^a name from the registry of methods: bench-procedure, .*/,
      hint: 'did you mean "rank"?',
    });
  });

  test('that leads on to one that is not there', () => {
    content.edit(RANK, 'goodFor: [Tests]', 'goodFor: [Tests]\nrelated: [frontier, step-ups, colour]');
    const line = content.lineOf(RANK, 'related:');
    const wanted = /^one of: bench-procedure, .*, plausibility$/;
    expectProblems(
      content.problems(),
      { file: RANK, line, field: 'related[1]', found: '"step-ups"', wanted, hint: 'did you mean "step-up"?' },
      { file: RANK, line, field: 'related[2]', found: '"colour"', wanted },
    );
  });
});

describe('LEDs that were counted', () => {
  const FIELD = 'field:\n  width: 20 cm\n';

  test.each([
    ['larger than the field', 'columns: 4, rows: 6, size: 20 cm', 'an LED is smaller than its field; found 20 cm'],
    ['staggered, one a row', 'columns: 1, rows: 6, staggered: true', 'staggered rows have at least two LEDs'],
    [
      'more groups than rows',
      'columns: 4, rows: 1, pattern: rows, groups: [{ name: red, share: 50 }, { name: deep red, share: 50 }]',
      'no LED is left for the group "deep red"',
    ],
  ])('%s', (_, leds, found) => {
    content.edit(PLOVER, FIELD, `leds: { ${leds} }\n${FIELD}`);
    expectProblems(content.problems(), {
      file: PLOVER,
      line: content.lineOf(PLOVER, 'leds:'),
      field: 'leds',
      found,
      wanted: 'LEDs that fit the LED field',
    });
  });

  test('emitters that cover more than their field are a slip of the unit, others are none', () => {
    content.edit(PLOVER, FIELD, `emitters: { diameter: 3, count: 150 }\n${FIELD}`);
    const [problem, ...more] = content.problems();
    expect(more).toEqual([]);
    expect(problem).toMatchObject({ field: 'emitters', wanted: 'emitters that fit the LED field' });
    expect(problem?.found).toContain('150 emitters of 3');
    content.edit(PLOVER, 'diameter: 3,', 'diameter: 3 mm,');
    expectProblems(content.problems());
  });

  test('that fit are no problem, and nor are those of a field that is not known', () => {
    content.edit(PLOVER, FIELD, `leds: { columns: 6, rows: 10, staggered: true, size: 1 cm }\n${FIELD}`);
    expectProblems(content.problems());
    content.edit(PLOVER, 'field:\n  width: 20 cm\n  height: 30 cm\n', '');
    expectProblems(content.problems());
  });
});
