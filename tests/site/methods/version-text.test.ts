import { expect, test } from 'vitest';
import { METHODS } from '../../../src/measure/methods.ts';
import { versionTexts } from '../../../src/site/methods/version-text.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

const FIRST = { version: 1, date: '2025-10-01', change: 'First version.' };
const SECOND = { version: 2, date: '2026-11-25', change: 'Another exponent.' };

test('an earlier version has its text, its formula and what took its place; the newest has none', () => {
  const was = { formula: 'E=\\frac{a}{b}', text: 'The *mean* is taken.\n\n| a | b |\n| --- | --- |\n| 1 | 2 |\n' };
  const [text, ...more] = versionTexts([{ ...FIRST, was }, SECOND]);
  expect(more).toEqual([]);
  expect(text).toMatchObject({
    id: 'version-1',
    title: 'Version 1, from 1 Oct 2025, as its page had it',
    next: { version: 2, date: '25 Nov 2026', change: 'Another exponent.' },
  });
  expect(text?.text).toContain('<em>mean</em>');
  // A wide table scrolls by itself.
  expect(text?.text).toMatch(/<div class="sheet"[^>]*><table>/);
  expect(text?.formula).toContain('<mfrac>');
  expect(versionTexts([FIRST, { ...SECOND, was }])).toEqual([]);
});

test('every method of the program that has been changed keeps what it said before', () => {
  const { content } = demoLedger();
  const changed = METHODS.filter(({ version }) => version > 1).map(({ id }) => id);
  expect(changed.length).toBeGreaterThan(15);
  for (const id of changed) {
    const versions = content.methods.get(id)?.data.versions ?? [];
    expect(versionTexts(versions).length, id).toBe(versions.length - 1);
  }
});
