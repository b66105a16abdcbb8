import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { askedPanels, compareAddress, MOST_PANELS } from '../../../../src/site/compare/browser/compare-address.ts';
import { nameToday } from '../../../../src/site/shared/browser/former-names.ts';
import { RUNS } from '../../../measure/make.ts';

const PANELS = ['plover-1', 'plover-2', 'tern', 'curlew', 'knot', 'dunlin', 'sanderling'];
const slugOf = nameToday(PANELS.map((slug) => ({ slug, ...(slug === 'tern' && { formerly: ['sea-swallow'] }) })));
const read = (query: string) => askedPanels(query, slugOf);

describe('reading an address', () => {
  test.each([
    ['?with=tern,knot', ['tern', 'knot']],
    ['?with=knot%2Ctern', ['knot', 'tern']],
    ['?with=tern&with=knot', ['tern', 'knot']],
    ['?with=+tern+,,knot,', ['tern', 'knot']],
    ['?other=1&with=tern', ['tern']],
    ['', []],
    ['?', []],
    ['?with=', []],
  ])('%s', (query, slugs) => {
    expect(read(query)).toEqual({ slugs, said: [] });
  });

  test('keeps the first five of more, and says so', () => {
    expect(read(`?with=${PANELS.join(',')}`)).toEqual({
      slugs: PANELS.slice(0, 5),
      said: ['The address names 7 panels; the first five are shown.'],
    });
  });

  test('shows a panel that is named twice once, and says so', () => {
    expect(read('?with=tern,knot,tern')).toEqual({
      slugs: ['tern', 'knot'],
      said: ['A panel that the address names twice is shown once.'],
    });
  });

  test('understands a name that a panel had before', () => {
    expect(read('?with=sea-swallow,knot')).toEqual({ slugs: ['tern', 'knot'], said: [] });
    expect(read('?with=sea-swallow,tern').slugs).toEqual(['tern']);
    expect(read('?with=sea-swallow,tern').said).toEqual(['A panel that the address names twice is shown once.']);
  });

  test('leaves out names that are not known, and says which', () => {
    expect(read('?with=tern,gull,knot')).toEqual({ slugs: ['tern', 'knot'], said: ['Not in this guide: “gull”.'] });
    expect(read('?with=a,b,c,d,e').said).toEqual(['Not in this guide: “a”, “b”, “c” and 2 more.']);
    const long = read(`?with=${'x'.repeat(500)}`).said[0] as string;
    expect(long).toBe(`Not in this guide: “${'x'.repeat(40)}…”.`);
  });

  test('reads no more of it than it needs', () => {
    const { slugs, said } = read(`?with=tern,${'x'.repeat(1_000_000)}`);
    expect(slugs).toEqual(['tern']);
    expect(said[0]).toMatch(/^Only the first 2,000 characters/);
    expect(said.join('').length).toBeLessThan(200);
  });

  test('never throws, and gives known panels only, each once, five at most', () => {
    const piece = fc.oneof(
      fc.constantFrom(...PANELS),
      fc.string({ unit: 'binary', maxLength: 60 }),
      fc.constantFrom('%', '%zz', '%00', '<script>alert(1)</script>', '__proto__', 'constructor', '&with=', '\u202e'),
    );
    fc.assert(
      fc.property(
        fc.array(piece, { maxLength: 30 }),
        fc.constantFrom('?with=', '?', '', '?with=&with='),
        (pieces, start) => {
          const { slugs, said } = read(start + pieces.join(','));
          expect(slugs.every((it) => PANELS.includes(it))).toBe(true);
          expect(new Set(slugs).size).toBe(slugs.length);
          expect(slugs.length).toBeLessThanOrEqual(MOST_PANELS);
          expect(said.join(' ').length).toBeLessThan(500);
          expect(said.join('')).not.toMatch(/\p{C}/u);
        },
      ),
      RUNS,
    );
  });
});

test('an address that was written is read as what was written', () => {
  fc.assert(
    fc.property(fc.subarray(PANELS, { maxLength: MOST_PANELS }), (slugs) => {
      const address = compareAddress(slugs);
      expect(address.startsWith('/compare/')).toBe(true);
      expect(read(address.slice('/compare/'.length))).toEqual({ slugs, said: [] });
    }),
    RUNS,
  );
});
