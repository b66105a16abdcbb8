import { describe, expect, test } from 'vitest';
import { COLLECTIONS } from '../../../src/content/schema/collections.ts';
import { MEANT_FIELDS, synonymOf } from '../../../src/content/schema/synonyms.ts';
import { fieldsOf } from './schema-fields.ts';

describe('other names of fields', () => {
  const session = ['date', 'distances', 'grid', 'notes', 'roomTemperature', 'magnetic', 'sound', 'instruments'];
  test.each([
    ['sweep', 'distances'],
    ['Sweep', 'distances'],
    ['distance_sweep', 'distances'],
    ['readings', 'grid'],
    ['comments', 'notes'],
    ['temperature', 'roomTemperature'],
    ['room-temperature', 'roomTemperature'],
    ['noise', 'sound'],
    ['meters', 'instruments'],
  ])('%s is %s', (word, meant) => {
    expect(synonymOf(word, session)).toBe(meant);
  });

  test.each(['sweep', 'nir', 'constructor', '__proto__', ''])(
    '%s is none of a block that has no such field',
    (word) => {
      expect(synonymOf(word, ['maker', 'model'])).toBeUndefined();
    },
  );

  test('each leads to a field that a file may have', () => {
    const known = new Set(Object.values(COLLECTIONS).flatMap(({ schema }) => fieldsOf(schema)));
    expect([...MEANT_FIELDS].filter((it) => !known.has(it))).toEqual([]);
  });
});
