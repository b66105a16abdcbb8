import { describe, expect, test } from 'vitest';
import type { Statement } from '../../../src/measure/statement.ts';
import { say } from '../../../src/words/say.ts';

describe('what the model of the light says in words', () => {
  test.each<[Statement, string]>([
    [
      { code: 'beam-too-few-readings', fewest: 4 },
      'fewer than 4 readings at different places: they tell nothing of the beam',
    ],
    [{ code: 'beam-unexplained' }, 'no beam that we know of explains the readings'],
    [
      { code: 'beam-lopsided' },
      'the grid is lopsided, as before a dark corner or a bright spot off the middle, and beams are not',
    ],
    [{ code: 'beam-left-open' }, 'the readings leave the beam open, and with it the power'],
    [
      { code: 'beam-distance-out-of-reach', nearest: 0.1, farthest: 10_000 },
      'a distance is not between 0.1 cm and 10000 cm',
    ],
    [{ code: 'beam-leds-uncounted' }, 'LEDs may show singly this near, and nobody counted them'],
    [
      { code: 'beam-leds-counted', columns: 10, rows: 20, staggered: false, isSizeAssumed: false },
      '10 × 20 LEDs, as they were counted',
    ],
    [
      { code: 'beam-leds-counted', columns: 4, rows: 9, staggered: true, isSizeAssumed: true },
      '4 × 9 LEDs in staggered rows, as they were counted, each taken to be half as wide as its pitch',
    ],
    [
      { code: 'beam-taken-for-grid', columns: 10, rows: 20 },
      'taken for a grid of 10 × 20 LEDs, each half as wide as its pitch',
    ],
    [
      { code: 'beam-no-regular-grid', count: 61 },
      'taken for an even field of light: 61 LEDs make no regular grid here',
    ],
    [{ code: 'beam-grid-left-out' }, 'the grid is left out: no reading was kept, or its points do not fit the field'],
    [{ code: 'beam-past-frame', source: 'beyond' }, 'the light that misses the frame was measured past the edges'],
    [
      { code: 'beam-past-frame', source: 'grid' },
      'the light that misses the frame is taken from the shape of the beam, as the grid allows it',
    ],
    [
      { code: 'beam-distance-evaluated', halfWidth: 0.2, distance: 15.24 },
      '±0.2 cm at 15.24 cm, rectangular; through the model of the panel',
    ],
    [{ code: 'beam-light-edge-evaluated', halfWidth: 0.6789 }, '±0.68 cm on each side, rectangular; our own choice'],
  ])('%o', (statement, words) => {
    expect(say(statement)).toBe(words);
  });

  test('a withheld beam with its reason', () => {
    expect(say({ code: 'beam-withheld', because: { code: 'beam-unexplained' } })).toBe(
      'Emitted power and all that rests on the beam is withheld: no beam that we know of explains the readings.',
    );
  });

  test('a claim that the readings rule out, with both angles and what they allow, in whole degrees', () => {
    expect(say({ code: 'beam-claim-ruled-out', claimed: 60, low: 18.6, high: 21.2 })).toBe(
      'The claimed beam angle of 120° is a half-angle of 60°; the readings allow 19° to 21°. No figure rests on the claim.',
    );
  });
});
