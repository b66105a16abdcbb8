import { expect, test } from 'vitest';
import { GrowingNumbers } from '../../../../src/content/read/files/growing-numbers.ts';

test('numbers grow in one memory, which is all that is left in the end', () => {
  const many = 200_000;
  const list = new GrowingNumbers(many);
  expect(list.last).toBeNaN();
  for (let i = 0; i < many; i++) list.push(i / 10);
  expect([list.length, list.last]).toEqual([many, (many - 1) / 10]);
  expect(() => list.push(0)).toThrow(RangeError);
  const all = list.done();
  expect(all).toHaveLength(many);
  expect([all[0], all[65_536], all.at(-1)]).toEqual([0, 6553.6, (many - 1) / 10]);
  // No piece beside it, and nothing set aside.
  expect(all.buffer.byteLength).toBe(8 * many);
});

test('few numbers take no more than they need', () => {
  const list = new GrowingNumbers(1e7);
  list.push(1);
  expect(list.done().buffer.byteLength).toBe(8);
  expect(new GrowingNumbers(5).done()).toHaveLength(0);
});
