import { expect, test } from 'vitest';
import { analysed } from '../../../src/measure/spectrum/analysis.ts';
import { auditClaims, type ClaimedWavelength } from '../../../src/measure/spectrum/claims-audit.ts';
import { gaussian, spectrumOf } from '../../support/spectrum.ts';

const TOLERANCE = { wavelength: 10, share: 10 };
const SCALE = { wavelength: 0.4, response: 0.03 };

/** Claims held against LEDs at some wavelengths, of equal light. */
function audit(claims: readonly ClaimedWavelength[], lit: readonly number[], sigma = 7) {
  const spectrum = spectrumOf(
    lit.map((nm) => gaussian(nm, sigma)),
    { noise: 5e-4 },
  );
  return auditClaims(claims, analysed(spectrum), TOLERANCE, SCALE);
}

const claim = (peak: number, share?: number): ClaimedWavelength => ({ peak, share });

test('a claim within the tolerance has its difference and its share', () => {
  const { claims, extra } = audit([claim(660, 50), claim(850, 50)], [663, 846]);
  expect(claims.map((it) => it.outcome)).toEqual(['within', 'within']);
  expect(claims[0]?.difference).toBeCloseTo(3, 1);
  expect(claims[0]?.found?.share).toBeCloseTo(50, 0);
  expect(claims[0]?.isShareApart).toBe(false);
  expect(extra).toEqual([]);
});

test('claims that are off, missing, out of reach, and peaks that nobody names', () => {
  const { claims, extra } = audit([claim(660), claim(830), claim(1060)], [675, 940]);
  expect(claims.map((it) => it.outcome)).toEqual(['off', 'missing', 'out-of-reach']);
  expect(extra.map((it) => Math.round(it.wavelength))).toEqual([940]);
});

test('no two claims get one peak: the nearer one does', () => {
  const { claims } = audit([claim(655), claim(690)], [660]);
  expect(claims.map((it) => it.outcome)).toEqual(['within', 'missing']);
});

test('two claims within one peak that does not show two are blended, and its parts are told where it does', () => {
  expect(audit([claim(830), claim(850)], [833, 848], 14).claims.map((it) => it.outcome)).toEqual([
    'blended',
    'blended',
  ]);
  expect(audit([claim(650), claim(665)], [650, 665]).claims.map((it) => it.outcome)).toEqual(['within', 'within']);
});

test('a share is apart by more than the tolerance alone', () => {
  const { claims } = audit([claim(660, 70), claim(850, 45)], [660, 850]);
  expect(claims.map((it) => it.isShareApart)).toEqual([true, false]);
  expect(claims[0]?.shareDifference).toBeCloseTo(-20, 0);
});
