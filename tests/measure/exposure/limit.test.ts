import { describe, expect, test } from 'vitest';
import { BACKGROUND_CORRECTION } from '../../../src/measure/exposure/background-sound.ts';
import { SLEEPING_PLACES } from '../../../src/measure/exposure/building-biology.ts';
import { LOW_RISK, NO_EFFECT, SLOW_FLICKER } from '../../../src/measure/exposure/flicker-lines.ts';
import { INFRARED_LIMIT } from '../../../src/measure/exposure/infrared.ts';
import { CLOSING, cited, sentenceOf, worded } from '../../../src/measure/exposure/limit.ts';
import * as levels from '../../../src/measure/exposure/reference-levels.ts';
import { RETINAL_LIMIT } from '../../../src/measure/exposure/retina.ts';
import { SKIN_LIMIT } from '../../../src/measure/exposure/skin-limit.ts';

describe('limits in words', () => {
  test.each([
    [
      INFRARED_LIMIT,
      'infrared limit for the cornea and lens of IEC 62471, 2006, first edition, clause 4.3.7 (seen in secondary sources only)',
    ],
    [
      SKIN_LIMIT,
      'thermal limit for the skin of IEC 62471, 2006, first edition, clause 4.3.8 (seen in secondary sources only)',
    ],
    [
      RETINAL_LIMIT,
      'thermal limits for the retina of IEC 62471, 2006, first edition, clause 4.3.5–4.3.6 (from memory)',
    ],
    [
      LOW_RISK,
      'low-risk line (Practice 1) of IEEE Std 1789, 2015 edition, clause 8.1.1 (seen in secondary sources only)',
    ],
    [
      NO_EFFECT,
      'no-observable-effect line (Practice 2) of IEEE Std 1789, 2015 edition, clause 8.1.1 (seen in secondary sources only)',
    ],
    [SLOW_FLICKER, 'rule against seizures (Practice 3) of IEEE Std 1789, 2015 edition (from memory)'],
    [
      levels.MAGNETIC_LEVEL,
      'reference level for magnetic fields, general public, of ICNIRP, 2010, Health Physics 99(6):818–836 (seen on a page that quotes it)',
    ],
    [
      levels.ELECTRIC_LEVEL,
      'reference level for electric fields, general public, of ICNIRP, 2010, Health Physics 99(6):818–836 (seen on a page that quotes it)',
    ],
    [
      levels.RADIO_LEVEL,
      'whole-body reference level for radio fields, general public, of ICNIRP, 2020, Health Physics 118(5):483–524 (seen in secondary sources only)',
    ],
    [
      levels.LOCAL_RADIO_LEVEL,
      'local reference level for radio fields, general public, of ICNIRP, 2020, Health Physics 118(5):483–524 (seen on a page that quotes it)',
    ],
    [
      SLEEPING_PLACES,
      'ranges for sleeping places of the Standard of Building Biology Testing Methods, SBM-2015 with the numbers seen for SBM-2008 (from memory)',
    ],
    [
      BACKGROUND_CORRECTION,
      'correction for background sound, equation 16, of ISO 3744, 2010 edition (seen in secondary sources only)',
    ],
  ])('%#', (limit, words) => {
    expect(cited(limit)).toBe(words);
  });

  test('every text ends with what it is not', () => {
    const words = worded(['One.', ''], '', 'Two.');
    expect(words).toEqual({ outcome: ['One.'], background: ['Two.', CLOSING] });
    expect(sentenceOf(words)).toBe(`One. Two. ${CLOSING}`);
    expect(CLOSING).toBe(
      'Not a product certification and not medical advice; a licensed professional and local codes decide.',
    );
  });
});
