import { CM_PER_INCH } from '../unit-factors.ts';
import type { Check, DistanceOf, RaisedFlag } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** cm; `reference` is the guide's own distance. */
    'distance-of-inches': { of: DistanceOf; value: number; reference: number };
    /** cm */
    'bench-too-near': { value: number; nearest: number };
    'inches-for-centimetres': { value: number };
  }
}

/** Bench distances under this, cm, are odd: single LEDs show, and instruments are not made for so oblique a light. Our own choice. */
export const NEAREST_BENCH = 10;

/** A number of centimetres that would be the reference distance in inches, within this share of it. Our own choice. */
export const SAME_NUMBER = 0.02;

/** A distance in inches typed as centimetres, or a bench nearer than instruments are made for. */
export const benchDistance: Check = {
  id: 'bench-distance',
  run: ({ distances, reference }) =>
    distances.flatMap(({ of, value, at, concerns }): RaisedFlag[] => {
      const inInches = Math.abs(value * CM_PER_INCH - reference) <= SAME_NUMBER * reference;
      if (!inInches && !(of === 'bench' && value < NEAREST_BENCH)) return [];
      return [
        {
          severity: 'doubt',
          finding: inInches
            ? { code: 'distance-of-inches', of, value, reference }
            : { code: 'bench-too-near', value, nearest: NEAREST_BENCH },
          hint: { code: 'inches-for-centimetres', value },
          concerns: [...concerns],
          at,
        },
      ];
    }),
};
