import { describe, expect, test } from 'vitest';
import { emptySupposed, LATENTS, suppose } from '../../../src/measure/beam/beam-prior.ts';
import { intensityAt, profileHalfAngle } from '../../../src/measure/beam/profile-basis.ts';
import { seededRandom } from '../../../src/measure/random.ts';

const [MAIN, FLAT, DIP] = [0, 1, 2];
const supposed = emptySupposed();
const beam = (part: Partial<Record<number, number>>) => {
  const latent = Array.from({ length: LATENTS }, (_, i) => part[i] ?? -3);
  return suppose(latent, supposed).weights;
};

describe('beams that are thought possible', () => {
  test('each gives off 1 W and nowhere less than nothing', () => {
    const random = seededRandom(4);
    for (let i = 0; i < 400; i++) {
      const { weights } = suppose(
        Array.from({ length: LATENTS }, () => random.normal()),
        supposed,
      );
      expect(weights.reduce((sum, it) => sum + it, 0)).toBeCloseTo(1, 10);
      const values = Array.from({ length: 30 }, (_, k) => intensityAt(weights, 3 * k));
      expect(Math.min(...values)).toBeGreaterThan(-0.02 * Math.max(...values));
    }
  });

  test('without anything else: one power of the cosine, about 27° wide in the middle of what is thought', () => {
    expect(profileHalfAngle(beam({ [MAIN]: 0 }))).toBeCloseTo(27, 0);
    expect(profileHalfAngle(beam({ [MAIN]: 1 }))).toBeGreaterThan(45);
  });

  test('a flat top is flatter than a power of the cosine with the same half angle, and steeper outside', () => {
    const plain = beam({ [MAIN]: 0.3 }).slice();
    const flat = beam({ [MAIN]: 0.3, [FLAT]: 2 });
    const shape = (of: ArrayLike<number>, angle: number) => intensityAt(of, angle) / intensityAt(of, 0);
    expect(shape(flat, 20)).toBeGreaterThan(shape(plain, 20) + 0.1);
    expect(shape(flat, 60)).toBeLessThan(shape(plain, 60));
  });

  test('a dip is brighter obliquely than on the axis', () => {
    const dip = beam({ [MAIN]: 1, [DIP]: 1.2 });
    expect(intensityAt(dip, 35)).toBeGreaterThan(1.2 * intensityAt(dip, 0));
  });

  test('beams of the trade are among them, from narrow to wide', () => {
    const random = seededRandom(9);
    const halves = Array.from({ length: 500 }, () =>
      profileHalfAngle(
        suppose(
          Array.from({ length: LATENTS }, () => random.normal()),
          supposed,
        ).weights,
      ),
    ).toSorted((a, b) => a - b);
    expect(halves[25]).toBeLessThan(15);
    expect(halves[475]).toBeGreaterThan(55);
  });
});
