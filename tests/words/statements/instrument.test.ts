import { expect, test } from 'vitest';
import type { Statement } from '../../../src/measure/statement.ts';
import { say } from '../../../src/words/say.ts';

const stated = { relative: 5, absolute: 0, unit: 'mW/cm2', coverageFactor: 2 };
const points = [30, 60].map((angle) => ({ angle, error: 0.01 }));

const CASES: ReadonlyArray<readonly [Statement, string]> = [
  [{ code: 'calibration', instrument: 'light meter' }, 'Calibration of the light meter'],
  [
    { code: 'calibration-as-stated', date: '2026-01-10', stated },
    'calibration of 10 Jan 2026: 5 % at k = 2, normal; common to all that it read until the next one',
  ],
  [
    { code: 'offset-as-stated', date: '2026-01-10' },
    'stated with the calibration of 10 Jan 2026, normal; common to all that it read until the next one',
  ],
  [
    { code: 'angular-as-stated', response: { kind: 'f2', f2: 0.025 } },
    'f2 of 2.5 % in the instrument file, at the angles from which an even, wide field lights the meter; normal',
  ],
  [
    { code: 'angular-as-stated', response: { kind: 'angles', points } },
    'errors at 30°, 60° in the instrument file, at the angles from which an even, wide field lights the meter; normal',
  ],
  [
    { code: 'repeatability-as-stated', relative: 0.008 },
    '0.8 % of the reading, from the instrument file: no repeats in the session',
  ],
  [{ code: 'repeatability-as-stated', decibels: 0.5 }, '0.5 dB, from the instrument file: no repeats in the session'],
  [
    { code: 'scatter-not-known', instrument: 'sound meter' },
    'no repeats were taken, and how readings scatter is not known for the sound meter',
  ],
  [{ code: 'spectral-response', band: 'nearInfrared' }, 'Spectral response (near-infrared)'],
  [{ code: 'spectral-response' }, 'Spectral response'],
  [
    { code: 'spectral-as-stated', band: 'red', error: 0.01, shares: { red: 0.6, nearInfrared: 0.4 } },
    '1 % of the red, from the instrument file, normal; 60 % of the light by the peaks of each channel alone',
  ],
  [
    { code: 'spectral-as-stated', band: 'red', error: 0.01, shares: { red: 1, nearInfrared: 0 } },
    '1 % of the red, from the instrument file, normal; all of the light',
  ],
  [
    { code: 'spectral-as-stated', band: 'nearInfrared', error: 0.05, shares: { red: 1, nearInfrared: 1 } },
    '5 % of the near-infrared, from the instrument file, normal; taken for all of the light, whose shares are not known',
  ],
  [
    { code: 'spectral-not-stated', bands: ['red', 'nearInfrared'], instrument: 'light meter' },
    'no error in red and near-infrared is stated for the light meter',
  ],
  [
    { code: 'spectral-not-stated', bands: ['nearInfrared'], instrument: 'light meter' },
    'no error in near-infrared is stated for the light meter',
  ],
  [{ code: 'reading-is-bound', bound: 'below' }, 'the reading is a bound: below the meter’s reach'],
  [
    { code: 'calibrated-later', first: '2026-04-01' },
    'the meter was first calibrated on 2026-04-01, after this session',
  ],
];

test.each(CASES.map(([it, words]) => [it.code, it, words] as const))('%s', (_, it, words) => {
  expect(say(it)).toBe(words);
});

test('a sum over steps that is shared out is told apart from one reading’s', () => {
  expect(say({ code: 'half-step-averaged' })).toContain('averaged');
  expect(say({ code: 'half-step' })).not.toContain('averaged');
  expect(say({ code: 'half-step-each' })).not.toContain('averaged');
});
