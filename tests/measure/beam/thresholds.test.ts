import { describe, expect, test } from 'vitest';
import { assumedEmitter } from '../../../src/measure/beam/assumed-emitter.ts';

describe('a count of LEDs makes a grid only where pitches are nearly the same both ways', () => {
  // 12 LEDs as 3 x 4: pitches w / 2.5 and h / 3.5. They differ by a factor of 1.35 where h is 1.35 x 3.5 / 2.5 of w.
  const at = (ratio: number) => assumedEmitter({ width: 10, height: 10 * ratio * (3.5 / 2.5) }, 12).emitter.kind;
  test('up to a factor of 1.35', () => {
    expect(at(1.34)).toBe('leds');
    expect(at(1 / 1.34)).toBe('leds');
  });

  test('and no further', () => {
    // 2 x 6 is no nearer: w / 1.5 and h / 5.5.
    expect(at(1.37)).toBe('continuous');
  });
});
