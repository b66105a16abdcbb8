import { expect, test } from 'vitest';
import type { Statement } from '../../../src/measure/statement.ts';
import { say } from '../../../src/words/say.ts';

const CASES: ReadonlyArray<readonly [Statement, string]> = [
  [{ code: 'still-a-draft' }, 'still a draft'],
  [{ code: 'withdrawn' }, 'withdrawn from the guide'],
  [{ code: 'field-not-measured' }, 'the LED field was not measured'],
  [{ code: 'field-too-small', inset: '1 in' }, 'the LED field is too small for points 1 in inside its edges'],
  [{ code: 'no-session-yet' }, 'there is no bench session yet'],
  [{ code: 'first-session' }, 'the first session'],
  [{ code: 'other-conditions' }, 'measured under other conditions'],
  [{ code: 'current-session-only' }, 'calculated for the current session only'],
  [{ code: 'read-at', distance: '6 in' }, 'read at 6 in'],
  [{ code: 'input-not-measured', metric: 'mains-draw-combined' }, 'mains draw, both channels, was not measured'],
  [
    { code: 'range-not-known', because: { code: 'instrument-not-named' } },
    'its range is not known: the session does not name the meter',
  ],
];

test.each(CASES.map(([it, words]) => [it.code, it, words] as const))('%s', (_, it, words) => {
  expect(say(it)).toBe(words);
});
