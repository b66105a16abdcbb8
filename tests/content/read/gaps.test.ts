import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { withoutGaps } from '../../../src/content/read/gaps.ts';
import { valueAt } from '../../../src/content/schema/block.ts';
import { panelSchema } from '../../../src/content/schema/panel.ts';

const PRICE = { date: '2026-11-20', paid: 229, currency: 'EUR' };
const ROWS = [
  [31.2, 40.3, 31],
  [39.6, 52.8, 39.2],
];
const panel = (more: object) => ({ maker: 'a', model: 'B', status: 'draft', ...more });
const left = (more: object) => {
  const { data } = withoutGaps(panel(more), panelSchema);
  const { maker: _, model: __, status: ___, ...rest } = data as Record<string, unknown>;
  return rest;
};

describe('what is left of a file without its gaps', () => {
  test('everything, where there is none: the same object', () => {
    const written = panel({ weight: '3 kg' });
    expect(withoutGaps(written, panelSchema)).toMatchObject({ gaps: [] });
    expect(withoutGaps(written, panelSchema).data).toBe(written);
  });

  test.each([
    ['a field', { weight: 'TODO', verdict: 'Good.' }, { verdict: 'Good.' }],
    ['a field in small letters and with spaces', { weight: ' todo ' }, {}],
    ['a block that says nothing without it', { field: { width: 'TODO', height: '7 in' } }, {}],
    ['an optional field of a block', { claims: { power: 'TODO', ledCount: 4 } }, { claims: { ledCount: 4 } }],
    ['a block of nothing else', { claims: { power: 'TODO' } }, {}],
    [
      'an entry that lacks what it needs',
      { prices: [{ date: '2026-11-01', paid: 'TODO', currency: 'EUR' }, PRICE] },
      { prices: [PRICE] },
    ],
    ['a list of such entries', { prices: [{ date: 'TODO', paid: 'TODO', currency: 'EUR' }] }, {}],
    [
      'a grid that lacks a point',
      {
        sessions: [{ date: '2026-11-21', methodVersion: 1, grid: { inset: '1 in', rows: [...ROWS, [1, 'TODO', 3]] } }],
      },
      { sessions: [{ date: '2026-11-21', methodVersion: 1 }] },
    ],
    [
      'a grid that lacks a repeat at a point',
      { sessions: [{ date: '2026-11-21', methodVersion: 1, grid: { rows: [...ROWS, [1, [2, 'TODO'], 3]] } }] },
      { sessions: [{ date: '2026-11-21', methodVersion: 1 }] },
    ],
    [
      'a place past the edges without its reading',
      {
        sessions: [
          {
            date: '2026-11-21',
            methodVersion: 1,
            beyond: [
              { edge: 'right', past: '8 cm', on: 'TODO', off: 'TODO' },
              { edge: 'top', past: '8 cm', on: 3, off: 'TODO' },
            ],
          },
        ],
      },
      { sessions: [{ date: '2026-11-21', methodVersion: 1, beyond: [{ edge: 'top', past: '8 cm', on: 3 }] }] },
    ],
    ['a session without its day', { sessions: [{ date: 'TODO', methodVersion: 1, peak: { red: 4 } }] }, {}],
    [
      'a flicker without its depth',
      {
        sessions: [{ date: '2026-11-21', methodVersion: 1, flicker: { red: { frequency: '1 kHz', percent: 'TODO' } } }],
      },
      { sessions: [{ date: '2026-11-21', methodVersion: 1 }] },
    ],
  ])('%s goes', (_, written, wanted) => {
    expect(left(written)).toEqual(wanted);
    const { data } = withoutGaps(panel(written), panelSchema);
    expect(panelSchema.safeParse(data).success).toBe(true);
  });

  test('a text that only has the word in it is a text', () => {
    expect(left({ verdict: 'TODO: look again' })).toEqual({ verdict: 'TODO: look again' });
  });

  test('what is wrong for another reason stays where it is', () => {
    const written = { prices: [{ date: '20.11.2026', paid: 'TODO', currency: 'EUR', colour: 'red' }] };
    expect(withoutGaps(panel(written), panelSchema).kept).toMatchObject({
      prices: [{ date: '20.11.2026', colour: 'red' }],
    });
  });

  test('the file’s own path is told of what stands behind something that has gone', () => {
    const written = panel({ prices: [{ date: 'TODO', paid: 1, currency: 'EUR' }, PRICE] });
    const { data, asWritten } = withoutGaps(written, panelSchema);
    expect(data).toMatchObject({ prices: [PRICE] });
    expect(asWritten(['prices', 0, 'paid'])).toEqual(['prices', 1, 'paid']);
  });

  test('nothing comes into another’s place, whatever is a gap', () => {
    const session = {
      date: '2026-11-21',
      methodVersion: 1,
      peak: { red: 27, nearInfrared: 26, combined: 53 },
      grid: { inset: '1 in', rows: ROWS },
      distances: [
        { distance: '30 cm', centre: [27.3, 27.1] },
        { distance: '60 cm', centre: 9 },
      ],
      beyond: [
        { edge: 'right', past: '8 cm', on: [7.8, 7.9], off: 0.1 },
        { edge: 'top', past: '8 cm', on: 7.2, off: 0.1 },
      ],
    };
    const whole = panel({
      prices: [PRICE, { ...PRICE, date: '2026-11-19' }],
      sessions: [session, { ...session, date: '2026-11-20' }],
    });
    const paths: PropertyKey[][] = [];
    const walk = (value: unknown, path: PropertyKey[]): void => {
      if (typeof value !== 'object' || value === null) paths.push(path);
      else for (const [key, it] of Object.entries(value)) walk(it, [...path, Array.isArray(value) ? Number(key) : key]);
    };
    walk(whole, []);
    const marked = paths.filter((it) => it.length > 1);
    fc.assert(
      fc.property(fc.subarray(marked, { maxLength: 6 }), (gaps) => {
        // Not as a clone, in which what is alike would be one.
        const written = JSON.parse(JSON.stringify(whole)) as typeof whole;
        for (const path of gaps) {
          const holder = valueAt(written, path.slice(0, -1)) as Record<PropertyKey, unknown>;
          holder[path.at(-1) as PropertyKey] = 'TODO';
        }
        const result = withoutGaps(written, panelSchema);
        expect(panelSchema.safeParse(result.data).success).toBe(true);
        expect(result.gaps).toHaveLength(gaps.length);
        const check = (value: unknown, path: PropertyKey[]): void => {
          if (typeof value !== 'object' || value === null) {
            expect(value).toBe(valueAt(whole, result.asWritten(path)));
          } else
            for (const [key, it] of Object.entries(value))
              check(it, [...path, Array.isArray(value) ? Number(key) : key]);
        };
        check(result.data, []);
        // A list of readings is whole or gone.
        for (const rows of (result.data as typeof whole & { sessions?: Array<typeof session> }).sessions?.map(
          (it) => it.grid?.rows,
        ) ?? []) {
          if (rows) expect(rows).toEqual(ROWS);
        }
      }),
      { numRuns: 60, seed: 4 },
    );
  });
});
