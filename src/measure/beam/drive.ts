import { type Drive, type Emitter, type Field, placeLeds } from './emitter.ts';

/**
 * How a panel may be driven unevenly: Legendre polynomials of the place across and down, so that a middle that is
 * brighter, a side that is dimmer and a slope are all sums of a few. Patterns of one kind come together, in sizes
 * relative to the first of them; panels that have one kind need not have another. Our own choice.
 */
export const PATTERNS = [
  { axis: 'y', degree: 2, kind: 'down', size: 1 },
  { axis: 'y', degree: 4, kind: 'down', size: 0.4 },
  { axis: 'x', degree: 2, kind: 'across', size: 1 },
  { axis: 'x', degree: 4, kind: 'across', size: 0.4 },
  { axis: 'y', degree: 1, kind: 'slope', size: 1 },
  { axis: 'x', degree: 1, kind: 'slope', size: 1 },
] as const;

export type DrivePattern = (typeof PATTERNS)[number];

/** Legendre polynomials of the first four degrees. Source: NIST Digital Library of Mathematical Functions 18.5 (from memory). */
function legendre(degree: 1 | 2 | 4, t: number): number {
  if (degree === 1) return t;
  return degree === 2 ? (3 * t * t - 1) / 2 : (35 * t ** 4 - 30 * t * t + 3) / 8;
}

/** A pattern over a panel's LEDs, less its mean, so that it takes no power from the panel nor gives any. */
function pattern(emitter: Emitter, field: Field, { axis, degree }: DrivePattern): (at: number) => number {
  let mean = 0;
  if (emitter.kind === 'leds') {
    const side = axis === 'x' ? field.width : field.height;
    for (const led of placeLeds(emitter, field)) mean += led.share * legendre(degree, (2 * led[axis]) / side);
  }
  return (at) => legendre(degree, at) - mean;
}

/** The drive of each pattern alone. */
export function patternDrives(emitter: Emitter, field: Field): Drive[] {
  return PATTERNS.map((it) => ({ [it.axis]: pattern(emitter, field, it) }));
}

/** Even drive and some of each pattern, in the order of PATTERNS; never below nothing. */
export function drivenBy(emitter: Emitter, field: Field, amounts: readonly number[]): Drive {
  const along = (axis: 'x' | 'y') => {
    const parts = PATTERNS.flatMap((it, p) => {
      const amount = amounts[p] ?? 0;
      return it.axis === axis && amount !== 0 ? [{ amount, of: pattern(emitter, field, it) }] : [];
    });
    if (parts.length === 0) return undefined;
    return (at: number) => Math.max(0, 1 + parts.reduce((sum, { amount, of }) => sum + amount * of(at), 0));
  };
  const [x, y] = [along('x'), along('y')];
  return { ...(x && { x }), ...(y && { y }) };
}
