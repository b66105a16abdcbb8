import type { BeamPart } from '../../src/measure/beam/beam-nodes.ts';
import { exponentNodes } from '../../src/measure/beam/gaussian-sum.ts';

/** A beam that is one power of the cosine, with so many W in it. */
export const oneExponent = (exponent: number, power: number): BeamPart[] => [{ of: exponentNodes(exponent), power }];
