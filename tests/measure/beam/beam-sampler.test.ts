import { describe, expect, test } from 'vitest';
import { emptySupposed, type Supposed, suppose } from '../../../src/measure/beam/beam-prior.ts';
import { allowedBeams, BEAMS } from '../../../src/measure/beam/beam-sampler.ts';
import type { ReadingModel } from '../../../src/measure/beam/reading-model.ts';
import { seededRandom } from '../../../src/measure/random.ts';

/**
 * Readings that tell one thing alone, the difference from LED to LED, which is lognormal about 4 % with a standard
 * deviation of 0.5 of its logarithm: with x = ln(difference / 0.04) / 0.5 normal beforehand, and read as `at` give or
 * take `by`, it is normal afterwards too, about at / (1 + by^2) with a variance of by^2 / (1 + by^2) (two normal
 * distributions multiplied; any textbook).
 */
function told(at: number, by: number): ReadingModel {
  return {
    count: 1,
    directions: 0,
    likelihood({ difference }: Supposed) {
      const off = (Math.log(difference / 0.04) / 0.5 - at) / by;
      return { log: -(off * off) / 2, chiSquare: off * off };
    },
    draw: () => 1,
  };
}

describe('beams as likely as the readings make them', () => {
  test.each([
    [0.8, 0.5],
    [1.5, 0.1],
    [-1.2, 0.05],
  ])('one normal number read as %d ± %d', (at, by) => {
    const { latents, leastChiSquare } = allowedBeams(told(at, by), seededRandom(8));
    expect(latents).toHaveLength(BEAMS);
    expect(leastChiSquare).toBeLessThan(0.1);
    const supposed = emptySupposed();
    const x = latents.map((it) => Math.log(suppose(it, supposed).difference / 0.04) / 0.5);
    const mean = x.reduce((sum, it) => sum + it, 0) / x.length;
    const sd = Math.sqrt(x.reduce((sum, it) => sum + (it - mean) ** 2, 0) / x.length);
    const wanted = by / Math.sqrt(1 + by * by);
    expect(Math.abs(mean - at / (1 + by * by))).toBeLessThan(0.2 * wanted);
    expect(sd / wanted).toBeGreaterThan(0.8);
    expect(sd / wanted).toBeLessThan(1.2);
    // What they do not tell stays as it was: the main lobe's number is normal with mean 0 and standard deviation 1.
    const main = latents.map((it) => it[0] as number);
    const middle = main.reduce((sum, it) => sum + it, 0) / main.length;
    expect(Math.abs(middle)).toBeLessThan(0.25);
    expect(Math.sqrt(main.reduce((sum, it) => sum + (it - middle) ** 2, 0) / main.length)).toBeGreaterThan(0.75);
  });
});
