import { describe, expect, test } from 'vitest';
import { checkQuantity, checkWavelength, notComparable } from '../../src/measure/irradiance/claims.ts';
import { claimText } from '../../src/words/claim-text.ts';
import { say } from '../../src/words/say.ts';
import { figure, line, vague } from '../measure/make.ts';

const light = figure(100, [line('sensor', 5)], 'peak-irradiance-combined', 'mW/cm²');
const draw = figure(680, [line('sensor', 1)], 'mains-draw-combined');

describe('a claim', () => {
  test.each([
    [checkQuantity('irradiance', 102, light, 'under'), 'irradiance', 'within', 'held, within the uncertainty'],
    [checkQuantity('irradiance', 170, light, 'under'), 'irradiance', 'missed', '41 % under the claim: missed'],
    [checkQuantity('irradiance', 80, light, 'under'), 'irradiance', 'apart', '25 % over the claim'],
    [checkQuantity('mains-draw', 700, draw, 'over'), 'mains draw', 'apart', '2.9 % under the claim'],
    [checkQuantity('mains-draw', 600, draw, 'over'), 'mains draw', 'missed', '13 % over the claim: missed'],
  ])(
    'of a quantity is worded by its direction, and missed where the buyer loses (%#)',
    (claim, subject, outcome, text) => {
      expect(claimText(claim)).toEqual({ subject, outcome, text });
    },
  );

  test.each([
    [642, 'wavelength 630 nm', 'off', 'off by 12 nm, to the longer side'],
    [648, 'wavelength 660 nm', 'off', 'off by 12 nm, to the shorter side'],
    [662.5, 'wavelength 660 nm', 'within', 'held, 2.5 nm from it (tolerance 10 nm)'],
  ])('of a wavelength, measured at %s nm', (value, subject, outcome, text) => {
    const claim = checkWavelength([630, 660, 850], figure(value, [], 'wavelength-red', 'nm'));
    expect(claim && claimText(claim)).toEqual({ subject, outcome, text });
  });

  test('that nothing can be held against says why', () => {
    expect(claimText(notComparable('wavelength', 850, 'nm', { code: 'claimed-peak-not-seen' }))).toEqual({
      subject: 'wavelength 850 nm',
      outcome: 'not comparable',
      text: 'not comparable: not seen as a peak of its own',
    });
    const unsure = vague(360, 'the session does not name the meter');
    expect(claimText(checkQuantity('mains-draw', 400, unsure, 'over')).text).toBe(
      'not comparable: the session does not name the meter',
    );
  });
});

test.each([
  [
    { subject: 'irradiance', claimed: 170.4, unit: 'mW/cm²', measured: 100, outcome: 'missed', difference: -41.3 },
    'The maker claims irradiance of 170 mW/cm²; measured 100 mW/cm²: 41 % under the claim: missed.',
  ],
  [
    { subject: 'mains-draw', claimed: 700, unit: 'W', measured: 680, outcome: 'apart', difference: -2.857 },
    'The maker claims mains draw of 700 W; measured 680 W: 2.9 % under the claim.',
  ],
  [
    { subject: 'wavelength', claimed: 660, unit: 'nm', measured: 672, outcome: 'off', difference: 12 },
    'The maker claims a wavelength 660 nm; measured 672 nm: off by 12 nm, to the longer side.',
  ],
] as const)('a claim that did not hold is noted in a sentence (%#)', (claim, sentence) => {
  expect(say({ code: 'claim-not-held', ...claim })).toBe(sentence);
});
