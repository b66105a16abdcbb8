import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planAddress, readPlan, within } from '../../../../src/site/plan/browser/plan-address.ts';
import { nameToday } from '../../../../src/site/shared/browser/former-names.ts';

const read = (query: string) => readPlan(query, nameToday([{ slug: 'ostrel-lill', formerly: ['ostrel-lil'] }]));
const USUAL = { unit: 'cm', height: 170 };

describe('reading a plan from an address', () => {
  test('an empty one suggests neither a distance nor an exposure', () => {
    expect(read('')).toEqual({ plan: USUAL, said: '' });
    expect(read('?exposure=&panel=')).toEqual({ plan: USUAL, said: '' });
  });

  test('a panel by a name that it had before', () => {
    expect(read('?panel=ostrel-lil')).toEqual({ plan: { ...USUAL, panel: 'ostrel-lill' }, said: '' });
  });

  test('every field', () => {
    expect(read('?panel=ostrel-lill&cm=22.5&exposure=8&height=181&unit=in')).toEqual({
      plan: { panel: 'ostrel-lill', cm: 22.5, exposure: 8, height: 181, unit: 'in' },
      said: '',
    });
  });

  test.each([
    '?panel=nobody',
    '?cm=4.9',
    '?cm=201',
    '?cm=-30',
    '?exposure=0',
    '?exposure=1e9',
    '?exposure=10001',
    '?height=20',
    '?height=giant',
    '?unit=ells',
    '?<b>=1',
    '?__proto__=1',
  ])('%s is left aside and named', (query) => {
    const { plan, said } = read(query);
    expect(plan).toEqual(USUAL);
    expect(said).toMatch(/^Left aside from the address: “.+”\.$/);
  });

  test('whatever it is, there is a plan within limits, and what is written is read again', () => {
    const piece = fc.oneof(
      fc.string(),
      fc.constantFrom('cm=', 'panel=ostrel-lill&', 'exposure=', '%', '&', '12', '1e999'),
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 20 }), (pieces) => {
        const { plan, said } = read(`?${pieces.join('')}`);
        expect((plan.cm ?? 5) >= 5 && (plan.cm ?? 5) <= 200 && plan.height >= 50 && plan.height <= 250).toBe(true);
        expect(said.length).toBeLessThan(200);
        expect(read(planAddress(plan).replace('/plan/', ''))).toEqual({ plan, said: '' });
      }),
      { numRuns: 500 },
    );
  });

  test('a million characters are not looked at', () => {
    expect(read(`?cm=40&x=${'y'.repeat(1e6)}`)).toEqual({ plan: USUAL, said: expect.stringMatching(/too long/) });
  });
});

test.each(['', 'x', '-1', '1e3', '12345678', '0x1'])('%j is no number for a plan', (text) => {
  expect(within(text, 0, 1e6)).toBeUndefined();
});
