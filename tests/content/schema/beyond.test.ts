/** Readings past the edges: what is taken, and what a tester is told who slips. */
import { describe, expect, test } from 'vitest';
import { sessionSchema } from '../../../src/content/schema/session.ts';
import { findings } from '../../../src/content/schema/wording.ts';

const session = (beyond: unknown) => ({ date: '2026-11-01', methodVersion: 2, beyond });
const place = (part: object) => ({ edge: 'right', past: '8 cm', on: 12.1, ...part });

function read(beyond: unknown) {
  const result = sessionSchema.safeParse(session(beyond));
  if (!result.success) throw new Error(JSON.stringify(result.error.issues));
  return result.data.beyond;
}

function told(beyond: unknown) {
  const data = session(beyond);
  const { error } = sessionSchema.safeParse(data);
  return findings(sessionSchema, data, error?.issues ?? []).map(({ field, found, wanted, hint }) => ({
    field,
    found,
    // Behind it stands the field's meaning.
    wanted: wanted.replace(/ \([A-Z].*\)$/, ''),
    hint,
  }));
}

describe('a place past an edge', () => {
  test('is read as it is written in the README', () => {
    expect(read([{ edge: 'right', past: '8 cm', on: [12.1, 12.2], off: 0.1 }])).toEqual([
      {
        edge: 'right',
        past: { value: 8, unit: 'cm', written: '8 cm' },
        on: [
          { value: 12.1, unit: 'mW/cm²', written: '12.1 mW/cm²' },
          { value: 12.2, unit: 'mW/cm²', written: '12.2 mW/cm²' },
        ],
        off: { value: 0.1, unit: 'mW/cm²', written: '0.1 mW/cm²' },
      },
    ]);
  });

  test('takes other units: 3 in are 7.62 cm, 13 W/m2 are 1.3 mW/cm2', () => {
    const [it] = read([place({ past: '3 in', on: '13 W/m2' })]) ?? [];
    expect(it?.past.value).toBe(7.62);
    expect(it?.on).toMatchObject({ value: 1.3, written: '13 W/m2' });
  });

  test.each([['<0.1'], ['<1 W/m2']])('takes %s as a bound', (on) => {
    expect(read([place({ on, off: on })])?.[0]).toMatchObject({
      on: { value: 0.1, bound: 'below' },
      off: { value: 0.1, bound: 'below' },
    });
  });

  test('takes a panel-off reading of nothing, and one as high as with the panel on', () => {
    expect(read([place({ off: 0 })])?.[0]?.off?.value).toBe(0);
    expect(read([place({ on: 0.1, off: 0.1 })])?.[0]?.off?.value).toBe(0.1);
  });

  test('keeps a reading that was struck out, beside bounds too', () => {
    const on = ['<0.1', { value: 3.7, struck: 'The door stood open.' }];
    expect(read([place({ on })])?.[0]?.on).toMatchObject([{ bound: 'below' }, { struck: 'The door stood open.' }]);
  });

  test.each([
    [1, true],
    [0.99, false],
    [200, true],
    [201, false],
  ])('%s cm past the edge is taken: %s', (past, isTaken) => {
    expect(told([place({ past })])).toHaveLength(isTaken ? 0 : 1);
  });
});

describe('slips are named', () => {
  test.each([
    [
      'more with the panel off',
      [place({ on: [1, 1.2], off: 1.2 })],
      {
        field: 'beyond[0].off',
        found: '1.2 mW/cm², and 1.1 mW/cm² with the panel on',
        wanted: 'no more light with the panel off than with it on',
        hint: 'are the two the wrong way round?',
      },
    ],
    [
      'a room brighter than a bound',
      [place({ on: '<0.1', off: 0.2 })],
      {
        field: 'beyond[0].off',
        found: '0.2 mW/cm², and 0.1 mW/cm² with the panel on',
        wanted: 'no more light with the panel off than with it on',
        hint: 'are the two the wrong way round?',
      },
    ],
    [
      'a place twice, in two units',
      [place({}), place({ edge: 'top' }), place({ past: '80 mm' })],
      {
        field: 'beyond[2].past',
        found: '80 mm past the right edge a second time',
        wanted: 'each place once',
        hint: 'write repeats as a list under on of beyond[0]',
      },
    ],
    [
      'bounds among readings',
      [place({ on: ['<0.1', 0.1] })],
      {
        field: 'beyond[0].on',
        found: 'a list of 2',
        wanted: 'repeats that are all readings, or all bounds',
        hint: 'a display that flickers between its first steps stays under the next one: write that as one bound, such as <0.2',
      },
    ],
    [
      'a reading over the range',
      [place({ on: '>200' })],
      {
        field: 'beyond[0].on',
        found: '">200"',
        wanted: 'an irradiance, or the display’s first step as a bound, such as <0.1',
        hint: 'what goes over the range of one meter is read with another',
      },
    ],
    [
      'a display of nothing',
      [place({ on: 0 })],
      { field: 'beyond[0].on', found: '0', wanted: 'an irradiance above 0 mW/cm²', hint: undefined },
    ],
    [
      'an edge that a panel does not have',
      [place({ edge: 'rigth' })],
      {
        field: 'beyond[0].edge',
        found: '"rigth"',
        wanted: 'one of: left, right, top, bottom',
        hint: 'did you mean "right"?',
      },
    ],
    [
      'no reading',
      [{ edge: 'top', past: 8 }],
      {
        field: 'beyond[0].on',
        found: 'nothing',
        wanted: 'a reading, a list of repeats, {value, struck}, or a bound such as <0.1',
        hint: undefined,
      },
    ],
  ])('%s', (_name, beyond, wanted) => {
    expect(told(beyond)).toEqual([wanted]);
  });
});
