import { expect, test } from 'vitest';
import { statedUncertainty } from '../../src/words/stated-uncertainty.ts';

test.each([
  [4, 0.2, 'mW/cm²', '4 % and 0.2 mW/cm² at k = 2'],
  [0, 1.4, 'dB(A)', '1.4 dB(A) at k = 2'],
  [0, 0, 'W', 'none stated'],
])('what a calibration promises is said as it was stated: %d %% and %d %s', (relative, absolute, unit, words) => {
  expect(statedUncertainty({ relative, absolute, unit, coverageFactor: 2 })).toBe(words);
});

test('at another coverage factor says which', () => {
  expect(statedUncertainty({ relative: 5.16, absolute: 0.3, unit: 'mW/cm2', coverageFactor: 2.58 })).toBe(
    '5.16 % and 0.3 mW/cm2 at k = 2.58',
  );
});
