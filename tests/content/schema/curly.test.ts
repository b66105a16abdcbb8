import { expect, test } from 'vitest';
import { curly } from '../../../src/content/schema/curly.ts';
import { panelSchema } from '../../../src/content/schema/panel.ts';

test.each([
  ["don't", 'don’t'],
  ["the makers' own", 'the makers’ own'],
  [`our answer to "just a good one for the desk".`, 'our answer to “just a good one for the desk”.'],
  [`"Safe", it says`, '“Safe”, it says'],
  [`("safe") and 'so on'`, '(“safe”) and ‘so on’'],
  [`it says 'about "safe"'`, 'it says ‘about “safe”’'],
  [`the '90s`, 'the ’90s'],
  [`a sticker: "up to 120"`, 'a sticker: “up to 120”'],
  // Lengths stay.
  [`at 6" from a 3' panel`, `at 6" from a 3' panel`],
  // So does code, and what is curly already.
  ["`name: 'Plover'` isn't", "`name: 'Plover'` isn’t"],
  ['the panel’s “own”', 'the panel’s “own”'],
  ['none', 'none'],
])('%s', (typed, printed) => {
  expect(curly(typed)).toBe(printed);
  expect(curly(printed)).toBe(printed);
});

test('is in sentences for readers, and in no name', () => {
  const { verdict, model } = panelSchema.shape;
  expect(verdict.parse("It isn't bright.")).toBe('It isn’t bright.');
  expect(model.parse("Reed's")).toBe("Reed's");
});
