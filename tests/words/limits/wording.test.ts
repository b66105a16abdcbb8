import { expect, test } from 'vitest';
import { CLOSING, textOf, titleOf, worded } from '../../../src/words/limits/wording.ts';

test('empty parts are left out, and every text ends with what it is not', () => {
  const words = worded(
    { subject: 'Panel', aspect: 'share' },
    { outcome: ['One.', ''], own: ['From red.', ''], background: ['', 'Two.'] },
  );
  expect(words).toEqual({
    subject: 'Panel',
    aspect: 'share',
    label: 'share',
    outcome: ['One.'],
    beside: ['One.'],
    own: ['From red.'],
    background: ['From red.', 'Two.'],
  });
  expect(textOf(words)).toBe(`One. From red. Two. ${CLOSING}`);
  expect(CLOSING).toBe(
    'Not a product certification and not medical advice; a licensed professional and local codes decide.',
  );
});

test('a table’s line may leave less to be said beside it', () => {
  const words = worded({ subject: 'Panel' }, { outcome: ['One and two.'], beside: ['Two.', ''], background: [] });
  expect(words.beside).toEqual(['Two.']);
  expect(textOf(words)).toContain('One and two.');
});

test('why there is no figure comes first', () => {
  const words = worded({ subject: 'Panel', label: 'none' }, { withheld: 'No share.', background: ['Two.'] });
  expect(words).toEqual({
    subject: 'Panel',
    label: 'none',
    withheld: 'No share.',
    outcome: [],
    beside: [],
    own: [],
    background: ['Two.'],
  });
  expect(textOf(words)).toBe(`No share. Two. ${CLOSING}`);
});

test('a title names subject and aspect', () => {
  expect(titleOf({ subject: 'Retina' })).toBe('Retina');
  expect(titleOf({ subject: 'Infrared at the eye, 30 cm', aspect: 'share of the limit' })).toBe(
    'Infrared at the eye, 30 cm: share of the limit',
  );
});
