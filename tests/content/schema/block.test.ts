import { describe, expect, test } from 'vitest';
import { isBlock, ownField, valueAt } from '../../../src/content/schema/block.ts';

test.each([
  [{}, true],
  [{ a: 1 }, true],
  [[], false],
  [null, false],
  ['a', false],
  [undefined, false],
])('%j is a block: %s', (value, is) => {
  expect(isBlock(value)).toBe(is);
});

test('a field is the block’s own', () => {
  expect(ownField({ a: 1 }, 'a')).toBe(1);
  for (const key of ['b', 'constructor', '__proto__', 'toString']) expect(ownField({ a: 1 }, key)).toBeUndefined();
  expect(ownField(undefined, 'a')).toBeUndefined();
});

describe('a path', () => {
  const data = { sessions: [{ grid: { rows: [[1, 2]] } }], empty: null };
  test.each([
    [[], data],
    [['sessions', 0, 'grid', 'rows', 0, 1], 2],
    [['sessions', 1, 'grid'], undefined],
    [['sessions', 'length'], undefined],
    [['empty'], null],
    [['empty', 'a'], undefined],
    [['constructor', 'name'], undefined],
  ])('%j', (path, value) => {
    expect(valueAt(data, path)).toEqual(value);
  });
});
