import { expect, test } from 'vitest';
import { sizeClassOf } from '../../../src/measure/money/size-class.ts';

const CLASSES = [
  { id: 'small', name: 'Small', upToArea: 600 },
  { id: 'medium', name: 'Medium', upToArea: 2000 },
  { id: 'large', name: 'Large' },
];

test.each([
  [1, 'small'],
  [599.99, 'small'],
  [600, 'small'],
  [600.01, 'medium'],
  [2000, 'medium'],
  [2000.01, 'large'],
  [1e6, 'large'],
])('%d cm² is %s', (area, id) => {
  expect(sizeClassOf(area, CLASSES)?.id).toBe(id);
});

test('an area beyond the last class has none, where the last class has an end', () => {
  expect(sizeClassOf(2001, CLASSES.slice(0, 2))).toBeUndefined();
  expect(sizeClassOf(100, [])).toBeUndefined();
});
