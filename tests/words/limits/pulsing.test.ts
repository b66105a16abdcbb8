import { expect, test } from 'vitest';
import type { FlickerReading } from '../../../src/measure/exposure/flicker-results.ts';
import { pulsingResults } from '../../../src/measure/exposure/pulsing.ts';
import type { Mode } from '../../../src/measure/modes.ts';
import { limitWords } from '../../../src/words/limits/index.ts';
import { figure, line, vague } from '../../measure/make.ts';
import { NO_FLICKER } from '../../support/exposure-readings.ts';
import { sentenceOf } from '../../support/sentence-of.ts';

const reading = (depth: number, frequency: number): FlickerReading => ({
  depth: figure(depth, [line('meter', 0.5)], 'flicker-red', '%'),
  frequency: { ...vague(frequency), unit: 'Hz' },
});
const bounded = (value: number, bound: 'below' | 'above'): FlickerReading => ({
  depth: { ...vague(value, 'a bound'), unit: '%', bound },
  frequency: { ...vague(10), unit: 'Hz' },
});

/** The words of the one mode that pulses. */
function pulse(mode: Mode, given: FlickerReading) {
  const [result] = pulsingResults((it) => (it === mode ? given : NO_FLICKER));
  if (!result) throw new Error(`${mode} does not pulse`);
  return { ...limitWords(result), text: sentenceOf(result) };
}

test('what it looks like, who is at risk and the rule', () => {
  const { text, subject, label } = pulse('red', reading(60, 40.4));
  expect([subject, label]).toEqual(['Pulsing with red alone on', 'Flicker']);
  expect(text).toContain('with red alone on at 40.4 Hz by 60 %');
  expect(text).toContain('looks like deliberate pulsing');
  expect(text).toContain('photosensitive epilepsy');
  expect(text).toContain('under 5 %');
  expect(text).toContain('(from memory)');
  expect(pulse('red', reading(60, 33)).text).toContain('slow modulation, below 90 Hz');
});

test('no rule for visible light against near-infrared, but that nobody notices it', () => {
  const { text } = pulse('near-infrared', reading(60, 10));
  expect(text).toContain('Near-infrared is invisible, so that nobody notices its pulsing');
  expect(text).toContain('photosensitive epilepsy');
  expect(text).not.toContain('Practice 3');
});

test('a bound stays one', () => {
  expect(pulse('red', bounded(10, 'below')).text).toContain('by below 10 %');
  expect(pulse('red', bounded(50, 'above')).text).toContain('by above 50 %');
});
