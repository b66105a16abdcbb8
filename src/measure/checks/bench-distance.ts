import { CM_PER_INCH } from '../unit-factors.ts';
import { type Check, words } from './check.ts';

/** Bench distances under this, cm, are odd: single LEDs show, and meters are not made for so oblique a light. Our own choice. */
export const NEAREST_BENCH = 10;

/** A number of centimetres that would be the reference distance in inches, within this share of it. Our own choice. */
export const SAME_NUMBER = 0.02;

export const benchDistance: Check = {
  id: 'bench-distance',
  guards: 'A distance in inches typed as centimetres, or a bench nearer than meters are made for.',
  run: ({ distances, reference }) =>
    distances.flatMap(({ what, value, at, concerns, isBench = false }) => {
      const inInches = Math.abs(value * CM_PER_INCH - reference) <= SAME_NUMBER * reference;
      if (!inInches && !(isBench && value < NEAREST_BENCH)) return [];
      return [
        {
          check: 'bench-distance',
          severity: 'doubt' as const,
          finding: inInches
            ? `${what} is ${words(value)} cm; the guide's own is ${words(reference)} cm, which is ${words(value)} in. Light and fields at ${words(value)} cm are far stronger.`
            : `${what} is ${words(value)} cm: nearer than ${words(NEAREST_BENCH)} cm single LEDs show, and few meters read such oblique light rightly.`,
          hint: `a bare number is in centimetres: if inches were meant, write \`${words(value)} in\``,
          concerns: [...concerns],
          at,
        },
      ];
    }),
};
