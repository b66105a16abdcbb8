import { expect, test } from 'vitest';
import { alignment } from '../../../../src/site/guide/browser/column-alignment.ts';

/** Digits and points of a line with the room that it is given: figures have one width. */
function lengths(column: ReadonlyArray<{ value: string; plusMinus?: string }>) {
  const classesOf = alignment(column);
  return column.map((it) => {
    const names = classesOf(it).split(' ');
    const room = (side: string) => {
      const name = names.find((one) => one.startsWith(side) && one !== 'o');
      return { digits: Number(name?.slice(1, 2) ?? 0), points: name?.endsWith('p') ? 1 : 0 };
    };
    const [whole, part] = it.value.split('.');
    const before = room('b');
    const after = room('r');
    const error = it.plusMinus ?? '';
    return {
      whole: whole?.length,
      behind: `${(part?.length ?? 0) + before.digits} ${(part === undefined ? 0 : 1) + before.points}`,
      error: `${error.replace(/\D/g, '').length + after.digits} ${Number(error.includes('.')) + after.points}`,
      hasNone: names.includes('o'),
    };
  });
}

test('points stand under points and ± under ±, whatever digits there are', () => {
  const lines = lengths([
    { value: '207', plusMinus: '12' },
    { value: '5.24', plusMinus: '0.27' },
    { value: '19.1', plusMinus: '0.9' },
    { value: '69', plusMinus: '4' },
    { value: '< 0.5' },
  ]);
  expect(new Set(lines.map((it) => it.behind))).toEqual(new Set(['2 1']));
  expect(new Set(lines.map((it) => it.error))).toEqual(new Set(['3 1']));
  expect(lines.map((it) => it.hasNone)).toEqual([false, false, false, false, true]);
});

test('a column of whole numbers, or without ±, needs no room for what none has', () => {
  expect(alignment([{ value: '€62' }, { value: '€849' }])({ value: '€62' })).toBe('');
  expect(alignment([{ value: '€62' }, { value: '€182.85' }])({ value: '€62' })).toBe('b2p');
});
