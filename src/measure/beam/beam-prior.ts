import { at, valueAt } from '../at.ts';
import { lambertianExponent } from './beam.ts';
import { PATTERNS } from './drive.ts';
import { normalShare } from './error-function.ts';
import { addCosine, addPart, BASIS } from './profile-basis.ts';

/**
 * The beams and panels that are thought possible before anything is read, as functions of a few numbers that are
 * normal with mean 0 and standard deviation 1. All of it is our own choice: lenses of the trade throw one lobe, a
 * narrow and a wide one, a flat top, a beam with a dip on its axis (a batwing) or a ring, and a panel may be driven
 * harder in its middle.
 */
export const LATENTS = 13;
const [MAIN, FLAT, DIP, DIP_WIDTH, SECOND, SECOND_WIDTH, RING, RING_ANGLE, SPILL, DIFFERENCE, DOWN, ACROSS, SLOPE] =
  Array.from({ length: LATENTS }, (_, i) => i) as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];

const KINDS = { down: DOWN, across: ACROSS, slope: SLOPE } as const;

/** Half angle of the main lobe, degrees: lognormal about this, cut at the ends. */
export const USUAL_HALF_ANGLE = 27;
const SPREAD_OF_HALF_ANGLE = 0.6;
export const LEAST_HALF_ANGLE = 5;
export const MOST_HALF_ANGLE = 78;

/** Light that any lens lets past obliquely, as a bare LED throws it: its share is lognormal about 0.6 %. */
export const USUAL_SPILL = 0.006;
const SPILL_EXPONENT = 1;

/** Standard deviation of the power from LED to LED: lognormal about 4 %. */
export const USUAL_DIFFERENCE = 0.04;
/** Size of each kind of uneven drive, down, across and as a slope: lognormal about these. */
export const USUAL_DRIVE = { down: 0.1, across: 0.06, slope: 0.015 } as const;
const SPREAD_OF_DRIVE = 0.8;

/** Largest n, and terms of the binomial series. */
const FLATTEST = 6;
const FLAT_TERMS = 7;
const STEEPEST_EXPONENT = 460;

/** A beam and what else is supposed of a panel. */
export interface Supposed {
  /** Powers of the parts, summing to 1. */
  weights: Float64Array;
  /** Relative standard deviation of the power from LED to LED. */
  difference: number;
  /** Standard deviation of each pattern of uneven drive (see `drive.ts`). */
  drive: Float64Array;
}

/** Room for what is supposed. */
export function emptySupposed(): Supposed {
  return { weights: new Float64Array(BASIS), difference: 0, drive: new Float64Array(PATTERNS.length) };
}

/** What some latent numbers stand for. */
export function suppose(latent: ArrayLike<number>, out: Supposed): Supposed {
  const drawn = (i: number) => at(latent, i);
  const { weights } = out;
  weights.fill(0);
  const half = Math.min(
    MOST_HALF_ANGLE,
    Math.max(LEAST_HALF_ANGLE, USUAL_HALF_ANGLE * Math.exp(SPREAD_OF_HALF_ANGLE * drawn(MAIN))),
  );

  // 1 - (1 - cos^m)^n: one power of the cosine for n = 1, ever flatter on top and steeper at its edge for larger n.
  // Lenses that throw less light straight ahead mostly end steeply too.
  const depth = Math.min(0.98, Math.max(0, 0.7 * (drawn(DIP) - 0.2)));
  const steep = drawn(FLAT) + (depth > 0 ? 0.8 : 0);
  const logCosine = Math.log(Math.cos((half * Math.PI) / 180));
  const exponentFor = (n: number) => Math.log1p(-(2 ** (-1 / n))) / logCosine;
  let flat = Math.min(FLATTEST, 1 + 2.5 * Math.max(0, steep + 0.1));
  // The steepest parts have to be in the basis.
  while (flat > 1 && flat * exponentFor(flat) > STEEPEST_EXPONENT) flat = Math.max(1, flat - 0.25);
  const exponent = exponentFor(flat);
  const dip = depth > 0 ? lambertianExponent(half * (0.3 + 0.6 * normalShare(drawn(DIP_WIDTH)))) : 0;
  let binomial = 1;
  for (let j = 1; j <= FLAT_TERMS; j++) {
    binomial *= -(flat - j + 1) / j;
    if (Math.abs(binomial) < 1e-12) break;
    addCosine(weights, j * exponent, -binomial);
    if (depth > 0) addCosine(weights, j * exponent + dip, depth * binomial);
  }
  scale(weights, 1);

  const second = drawn(SECOND) < 0 ? 0 : 0.9 * -Math.expm1(-0.6 * drawn(SECOND));
  const ring = Math.min(0.5, Math.max(0, 0.2 * (drawn(RING) - 0.3)));
  const spill = Math.min(0.15, USUAL_SPILL * Math.exp(drawn(SPILL)));
  const main = Math.max(0.05, 1 - second - ring);
  for (let k = 0; k < BASIS; k++) weights[k] = main * valueAt(weights, k);
  addPart(weights, SPILL_EXPONENT, spill);
  if (second + ring > 0) {
    if (second > 0) {
      // From 8 to 78 degrees, any ratio as likely as another.
      const wide = lambertianExponent(8 * Math.exp(Math.log(78 / 8) * normalShare(drawn(SECOND_WIDTH))));
      addCosine(weights, wide, (second * (wide + 1)) / (2 * Math.PI));
    }
    if (ring > 0) {
      // cos^a sin^4, highest at the angle whose squared cosine is a / (a + 4); its power is a beta function.
      const cosine = Math.cos(((30 + 40 * normalShare(drawn(RING_ANGLE))) * Math.PI) / 180);
      const a = (4 * cosine * cosine) / (1 - cosine * cosine);
      const power = 2 * Math.PI * (1 / (a + 1) - 2 / (a + 3) + 1 / (a + 5));
      addCosine(weights, a, ring / power);
      addCosine(weights, a + 2, (-2 * ring) / power);
      addCosine(weights, a + 4, ring / power);
    }
  }
  scale(weights, 1);
  out.difference = Math.min(0.15, Math.max(0.005, USUAL_DIFFERENCE * Math.exp(0.5 * drawn(DIFFERENCE))));
  for (let p = 0; p < PATTERNS.length; p++) {
    const { kind, size } = PATTERNS[p] as (typeof PATTERNS)[number];
    const usual = USUAL_DRIVE[kind] * Math.exp(SPREAD_OF_DRIVE * drawn(KINDS[kind]));
    out.drive[p] = size * Math.min(0.25, Math.max(0.002, usual));
  }
  return out;
}

function scale(weights: Float64Array, to: number): void {
  let sum = 0;
  for (let k = 0; k < BASIS; k++) sum += valueAt(weights, k);
  for (let k = 0; k < BASIS; k++) weights[k] = (valueAt(weights, k) * to) / sum;
}
