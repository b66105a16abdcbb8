import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  EMPTY_STATE,
  type Known,
  plainNumber,
  readAddress,
  writeAddress,
} from '../../../../src/site/guide/browser/guide-address.ts';

const KNOWN: Known = {
  ranges: ['price', 'power', 'mean', 'magnetic', 'sound'],
  sets: {
    class: ['palm', 'desk'],
    maker: ['ostrel', 'quennick'],
    nm: ['630', '660', '850'],
    flicker: ['steady', 'faster'],
  },
  panels: ['ostrel-lill', 'quennick-sprat'],
  formerly: { panels: { 'ostrel-lil': 'ostrel-lill' }, makers: { ostrell: 'ostrel' } },
  tables: ['palm', 'desk'],
  columns: ['name', 'price', 'price-per-watt', 'tested'],
};
const read = (search: string) => readAddress(search, KNOWN);

describe('reading an address', () => {
  test('an empty one is an empty state, without a word', () => {
    expect(read('')).toEqual({ state: EMPTY_STATE, ignored: '' });
    expect(read('?price-from=&since=&extra=')).toEqual({ state: EMPTY_STATE, ignored: '' });
  });

  test('panels and makers by names that they had before', () => {
    const { state, ignored } = read('?maker=ostrell&own.ostrel-lil=29');
    expect(ignored).toBe('');
    expect(state.sets).toEqual({ maker: ['ostrel'] });
    expect([...state.own]).toEqual([['ostrel-lill', 29]]);
  });

  test('every field', () => {
    const { state, ignored } = read(
      '?price-from=100&price-to=300&power-from=5&mean-to=40&magnetic-to=0.5&sound-to=35&since=2026-01-02' +
        '&class=palm&class=desk&maker=ostrel&nm=660&nm=850&flicker=steady&flicker=faster&claims=held' +
        '&spend=400&extra=19.5&own.ostrel-lill=29&sort=all.price.descending',
    );
    expect(ignored).toBe('');
    expect(state).toEqual({
      ranges: {
        price: { from: 100, to: 300 },
        power: { from: 5 },
        mean: { to: 40 },
        magnetic: { to: 0.5 },
        sound: { to: 35 },
      },
      sets: { class: ['palm', 'desk'], maker: ['ostrel'], nm: ['660', '850'], flicker: ['steady', 'faster'] },
      since: '2026-01-02',
      hasHeld: true,
      spend: 400,
      extra: 19.5,
      own: new Map([['ostrel-lill', 29]]),
      sort: { scope: 'all', column: 'price', direction: 'descending' },
    });
  });

  test.each([
    '?foo=1',
    '?price-from=cheap',
    '?price-from=-5',
    '?price-from=1e999',
    '?price-from=NaN',
    '?class=villa',
    '?nm=661',
    '?since=2026-13-40',
    '?since=yesterday',
    '?flicker=no',
    '?flicker=above',
    '?own.nobody=5',
    '?own.ostrel-lill=free',
    '?own.=5',
    '?sort=desk.price.sideways',
    '?sort=villa.price.ascending',
    '?sort=all.shine.ascending',
    '?sort=all.price.ascending.twice',
    '?sort=price.ascending',
    '?__proto__=1',
    '?constructor=1',
    '?toString=1',
  ])('%s is left aside and named', (search) => {
    const { state, ignored } = read(search);
    expect(state).toEqual(EMPTY_STATE);
    expect(ignored).toMatch(/^Left aside from the address, since the guide does not know it: “.+”\.$/);
  });

  test.each([
    ['each.price.descending', { scope: 'each', column: 'price', direction: 'descending' }],
    // A table of its own for each size class, as there was.
    ['desk.price.descending', { scope: 'each', column: 'price', direction: 'descending' }],
    ['palm.tested.ascending', { scope: 'each', column: 'tested', direction: 'ascending' }],
    // The rank, and the watt that this page does not go by, were columns.
    ['desk.rank.ascending', { scope: 'each', column: 'price-per-watt', direction: 'ascending' }],
    ['all.price-per-emitted-watt.descending', { scope: 'all', column: 'price-per-watt', direction: 'descending' }],
  ])('a sorting by %s', (sort, wanted) => {
    expect(read(`?sort=${sort}`)).toEqual({ state: { ...EMPTY_STATE, sort: wanted }, ignored: '' });
  });

  test('what is sound is kept beside what is not', () => {
    const { state, ignored } = read('?price-to=300&class=villa&<script>alert(1)</script>=1&d=4&e=5');
    expect(state.ranges).toEqual({ price: { to: 300 } });
    expect(ignored).toContain('“class=villa”');
    expect(ignored).toContain('and 1 more');
  });

  test('long values are cut in the message, and a million characters are not looked at', () => {
    expect(read(`?foo=${'x'.repeat(500)}`).ignored.length).toBeLessThan(130);
    const { state, ignored } = read(`?price-to=300&foo=${'x'.repeat(1e6)}`);
    expect(state).toEqual(EMPTY_STATE);
    expect(ignored).toMatch(/too long/);
  });

  test('whatever it is, there is a state and a short message, and no exception', () => {
    const piece = fc.oneof(
      fc.string(),
      fc.constantFrom(
        'price-to',
        'own.',
        'own.ostrel-lill',
        'sort=all.price.ascending',
        '%',
        '%E0%A4%A',
        '&',
        '=',
        '<img src=x>',
        '1e309',
      ),
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 30 }), (pieces) => {
        const { state, ignored } = read(`?${pieces.join('')}`);
        expect(ignored.length).toBeLessThan(300);
        for (const range of Object.values(state.ranges)) {
          for (const end of Object.values(range)) expect(end >= 0 && end <= 1e9).toBe(true);
        }
        // Read again, a written address says the same, and nothing of it is odd.
        expect(read(writeAddress(state, KNOWN))).toEqual({ state, ignored: '' });
      }),
      { numRuns: 500 },
    );
  });
});

describe('plain numbers', () => {
  test.each([
    ['0', 0],
    ['12', 12],
    [' 3.5 ', 3.5],
    ['1000000000', 1e9],
  ])('%j', (text, value) => {
    expect(plainNumber(text)).toBe(value);
  });

  test.each(['', '-1', '1e3', '0x10', '1,5', '١٢', 'Infinity', '1000000001', '1.2.3', '12345678901'])(
    '%j is none',
    (text) => {
      expect(plainNumber(text)).toBeUndefined();
    },
  );
});

test('an empty state writes no address', () => {
  expect(writeAddress(EMPTY_STATE, KNOWN)).toBe('');
});
