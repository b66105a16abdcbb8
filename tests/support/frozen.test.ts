import { describe, expect, test } from 'vitest';
import { frozen } from './frozen.ts';

const shared = () =>
  frozen({ panels: new Map([['plover', { prices: [229, 259], notes: { text: '' } }]]), bytes: new Uint8Array([1, 2]) });

describe('what tests share', () => {
  test.each<[string, (it: ReturnType<typeof shared>) => unknown]>([
    ['a field', (it) => Object.assign(it, { panels: new Map() })],
    ['a field of what a map holds', (it) => Object.assign(it.panels.get('plover')?.notes ?? {}, { text: 'other' })],
    ['a list', (it) => it.panels.get('plover')?.prices.push(1)],
    ['a map', (it) => it.panels.set('teasel', { prices: [], notes: { text: '' } })],
    ['what a map has', (it) => it.panels.clear()],
  ])('refuses a change of %s', (_, change) => {
    const it = shared();
    expect(() => change(it)).toThrow(TypeError);
    expect(it).toEqual(shared());
  });

  test('may hold itself', () => {
    const it: { self?: unknown } = {};
    it.self = it;
    expect(Object.isFrozen(frozen(it))).toBe(true);
  });
});
