import { randomGamma, randomNormal } from 'd3-random';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { ErrorSource } from './figure.ts';

/** Seeded random numbers, so that two builds of the same content give the same bytes. */
export interface Random {
  /** Uniform in [0, 1). */
  uniform(): number;
  /** Normal with mean 0 and standard deviation 1. */
  normal(): number;
  /** Student's t, scaled so that its scale (not its standard deviation) is 1 (JCGM 101:2008, 6.4.9). */
  studentT(degreesOfFreedom: number): number;
}

/** A generator of its own for each use, so that uses do not shift one another's numbers. */
export function seededRandom(seed: number): Random {
  const generator = xoroshiro128plus(seed);
  const uniform = () => uniformFloat64(generator);
  const normal = randomNormal.source(uniform)();
  const gammas = new Map<number, () => number>();
  return {
    uniform,
    normal,
    studentT(degreesOfFreedom) {
      let gamma = gammas.get(degreesOfFreedom);
      if (!gamma) {
        gamma = randomGamma.source(uniform)(degreesOfFreedom / 2, 2);
        gammas.set(degreesOfFreedom, gamma);
      }
      return normal() / Math.sqrt(gamma() / degreesOfFreedom);
    },
  };
}

/** One draw of an error in units of its standard uncertainty, from the distribution its budget line names. */
export function drawError(random: Random, line: Pick<ErrorSource, 'distribution' | 'degreesOfFreedom'>): number {
  switch (line.distribution) {
    case 'rectangular':
      return Math.sqrt(3) * (2 * random.uniform() - 1);
    case 't':
      return random.studentT(line.degreesOfFreedom);
    case 'normal':
      return random.normal();
  }
}

/** A 32-bit seed from text (FNV-1a), so that a seed follows what is simulated and not its place in a list. */
export function seedFromText(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    hash ^= text.charCodeAt(i);
    hash = Math.imul(hash, 0x01000193);
  }
  return hash | 0;
}
