import { describe, expect, test } from 'vitest';
import type { Statement } from '../../../src/measure/statement.ts';
import { say } from '../../../src/words/say.ts';

describe('what the bench pad says', () => {
  test.each<[Statement, string]>([
    [
      { code: 'repeats-gain-little', now: 5.12, after: 4.97 },
      'Enough: one more reading at each point would change ±5.1 % to ±5.0 %.',
    ],
    [
      { code: 'repeats-gain-little', now: 5.12, after: 5.1 },
      'Enough: one more reading at each point would leave it at ±5.1 %.',
    ],
    [
      { code: 'worth-most', metric: 'emitted-power', remedy: 'beyond', share: 97.7, now: 31.7, atBest: 4 },
      'Emitted power is known to ±31.7 %. Reading the light past the edges would gain most: that is 98 % of the doubt, and at best ±4.0 % would be left.',
    ],
    [
      {
        code: 'bench-can-do-no-more',
        metric: 'optical-power',
        what: { code: 'calibration', instrument: 'bench thermopile' },
        share: 48.5,
        now: 5.6,
      },
      'Optical power at the reference plane is known to ±5.6 %, and no reading narrows it much: 49 % of the doubt is calibration of the bench thermopile.',
    ],
    [
      { code: 'entry-unit-slip', value: 4.02, usual: 40.1, unit: 'mW/cm2', factor: 0.1 },
      '4.02 mW/cm² is about a tenth of what its like read, 40.1 mW/cm². A decimal point, or another unit on the meter?',
    ],
    [
      { code: 'entry-unit-slip', value: 528, usual: 40.1, unit: 'uT', factor: 10 },
      '528 µT is about 10 times what its like read, 40.1 µT. A decimal point, or another unit on the meter?',
    ],
    [{ code: 'grid-not-all-read', read: 4, of: 9 }, 'only 4 of 9 points of the grid are read yet'],
  ])('%j', (statement, words) => expect(say(statement)).toBe(words));
});
