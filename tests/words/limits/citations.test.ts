import { describe, expect, test } from 'vitest';
import { cited, citedShortly, limitSentence } from '../../../src/words/limits/citation.ts';
import { CITATIONS } from '../../../src/words/limits/citations.ts';

describe('where limits are published', () => {
  const WORDS = [
    [
      'infrared-eye',
      'infrared limit for the cornea and lens of IEC 62471, 2006, first edition, clause 4.3.7 (seen in secondary sources only)',
    ],
    [
      'skin-heating',
      'thermal limit for the skin of IEC 62471, 2006, first edition, clause 4.3.8 (seen in secondary sources only)',
    ],
    ['retina', 'thermal limits for the retina of IEC 62471, 2006, first edition, clause 4.3.5–4.3.6 (from memory)'],
    [
      'flicker-low-risk',
      'low-risk line (Practice 1) of IEEE Std 1789, 2015 edition, clause 8.1.1 (seen in secondary sources only)',
    ],
    [
      'flicker-no-effect',
      'no-observable-effect line (Practice 2) of IEEE Std 1789, 2015 edition, clause 8.1.1 (seen in secondary sources only)',
    ],
    ['flicker-seizures', 'rule against seizures (Practice 3) of IEEE Std 1789, 2015 edition (from memory)'],
    [
      'magnetic-level',
      'reference level for magnetic fields, general public, of ICNIRP, 2010, Health Physics 99(6):818–836 (seen on a page that quotes it)',
    ],
    [
      'electric-level',
      'reference level for electric fields, general public, of ICNIRP, 2010, Health Physics 99(6):818–836 (seen on a page that quotes it)',
    ],
    [
      'radio-level',
      'whole-body reference level for radio fields, general public, of ICNIRP, 2020, Health Physics 118(5):483–524 (seen in secondary sources only)',
    ],
    [
      'sleeping-places',
      'ranges for sleeping places of the Standard of Building Biology Testing Methods, SBM-2015 with the numbers seen for SBM-2008 (from memory)',
    ],
    [
      'background-sound',
      'correction for background sound, equation 16, of ISO 3744, 2010 edition (seen in secondary sources only)',
    ],
  ] as const;

  test.each(WORDS)('%s', (limit, words) => {
    expect(cited(CITATIONS[limit])).toBe(words);
  });

  test('each is looked at here', () => {
    expect(WORDS.map(([limit]) => limit).toSorted()).toEqual(Object.keys(CITATIONS).toSorted());
  });

  test('shortly: without the name', () => {
    expect(citedShortly(CITATIONS['infrared-eye'])).toBe('(IEC 62471:2006, 4.3.7, seen in secondary sources only)');
    expect(citedShortly(CITATIONS['sleeping-places'])).toBe(
      '(the Standard of Building Biology Testing Methods:2015, from memory)',
    );
  });

  test('the second place of a limit stands behind it', () => {
    expect(limitSentence(CITATIONS['skin-heating'])).toMatch(
      /^The limit is the thermal limit for the skin of .*\(seen in secondary sources only\)\. Directive 2006\/25\/EC, Annex I, .*\(from memory\)\.$/,
    );
    expect(limitSentence(CITATIONS.retina)).toMatch(/\(from memory\)\.$/);
  });
});
