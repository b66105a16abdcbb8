/** The thresholds of the limits, each on both sides, in numbers of their own: a constant that moves shows here. */
import { expect, test } from 'vitest';
import { type FlickerReading, flickerResults } from '../../../src/measure/exposure/flicker-results.ts';
import { electricReferenceLevel, magneticReferenceLevel } from '../../../src/measure/exposure/reference-levels.ts';
import { isCode } from '../../../src/measure/statement.ts';
import { figure, figureOf, vague } from '../make.ts';

test.each([
  [89.99, false],
  [90, true],
  [94.49, true],
  [94.5, false],
])('a frequency of %s Hz is close above the step of the flicker lines: %s', (frequency, isClose) => {
  const reading: FlickerReading = {
    depth: figure(8, [], 'flicker-combined', '%'),
    frequency: { ...vague(frequency), unit: 'Hz' },
  };
  const it = flickerResults('p/d', () => reading).find((entry) => entry.id === 'flicker-low-risk-multiple-combined');
  expect(figureOf(it?.figure).notes.some((note) => isCode(note, 'flicker-near-step'))).toBe(isClose);
});

// ICNIRP 2010, general public (a textbook's copy of the table was seen): 200 µT to 400 Hz, then 80 000 / f; 5 kV/m to
// 50 Hz, then 250 000 / f. The two meet at the edges, so that only what lies beside an edge tells where it is.
test.each([
  [390, 200],
  [410, 80_000 / 410],
])('magnetic at %s Hz: %s µT', (frequency, level) => expect(magneticReferenceLevel(frequency)).toBeCloseTo(level, 9));

test.each([
  [48, 5000],
  [52, 250_000 / 52],
])('electric at %s Hz: %s V/m', (frequency, level) => expect(electricReferenceLevel(frequency)).toBeCloseTo(level, 9));
