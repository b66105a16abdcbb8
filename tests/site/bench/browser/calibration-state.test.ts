import { expect, test } from 'vitest';
import { calibrationState } from '../../../../src/site/bench/browser/calibration-state.ts';

const SPANS = [
  { date: '2026-03-01', due: '2027-03-01' },
  { date: '2024-03-01', due: '2025-03-01' },
];

test.each([
  ['2027-02-28', false, 'holds to 1 Mar 2027, next due in 1\u00a0day'],
  ['2027-03-01', false, 'holds to 1 Mar 2027, next due in 0\u00a0days'],
  ['2027-03-02', true, 'expired 1 Mar 2027, 1\u00a0day before'],
  ['2025-03-11', true, 'expired 1 Mar 2025, 10\u00a0days before'],
  ['2024-02-29', true, 'not calibrated yet on 29 Feb 2024'],
])('on %s', (day, isExpired, text) => {
  expect(calibrationState(SPANS, day)).toEqual({ isExpired, text });
});
