import { expect, test } from 'vitest';
import { sizeOutline } from '../../../../src/site/guide/browser/size-outline.ts';
import type { PieceElement } from '../../../../src/site/shared/browser/pieces.ts';

const rect = (field: readonly [number, number] | undefined) =>
  sizeOutline(field).pieces.find((it): it is PieceElement => typeof it !== 'string' && it.tag === 'rect')?.attributes;

test('fields are drawn to one scale, their middles in one place', () => {
  const [small, large] = [rect([17, 34]), rect([34, 102])];
  expect(Number(large?.width) / Number(small?.width)).toBeCloseTo(2, 1);
  expect(Number(large?.height) / Number(small?.height)).toBeCloseTo(3, 1);
  const middle = (it: PieceElement['attributes'] | undefined) => Number(it?.y) + Number(it?.height) / 2;
  expect(middle(small)).toBeCloseTo(middle(large), 0);
});

test('a field that was not measured is not drawn', () => {
  expect(rect(undefined)).toBeUndefined();
});
