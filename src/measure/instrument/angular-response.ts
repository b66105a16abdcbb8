/**
 * How an instrument misreads oblique light: its f2, or its error at named angles. Standard uncertainties
 * (k = 1) as fractions; angles in degrees from straight ahead.
 */
export type AngularResponse =
  | { kind: 'f2'; f2: number }
  | { kind: 'angles'; points: readonly { angle: number; error: number }[] };

const RADIAN = Math.PI / 180;

/** f2 looks at angles up to here, degrees (ISO/CIE 19476, CIE S 023; from memory). */
const F2_REACH = 85;

/**
 * f2 of the shape -ln cos e: the integral of -ln(cos e) sin 2e from 0 to 85 degrees, in closed form with c = cos 85
 * degrees: 1/2 + c^2 ln c - c^2/2.
 */
const F2_OF_SHAPE = (() => {
  const c = Math.cos(F2_REACH * RADIAN);
  return 0.5 + c ** 2 * Math.log(c) - c ** 2 / 2;
})();

/**
 * Relative standard uncertainty of a reading of light that comes from one angle; 0 straight ahead.
 *
 * From f2: f2 is the integral of |Y(e)/(Y(0) cos e) - 1| sin 2e from 0 to 85 degrees (ISO/CIE 19476, CIE S 023;
 * formula from memory), so it says how large the error is on the whole, not where, nor of which sign. It is given the
 * shape of a receiver that follows another power of the cosine, cos^(1+d) e, to first order: d ln cos e, with d so that
 * the integral gives f2. As the sign is open, the size itself is the standard uncertainty.
 *
 * From named angles: straight lines from nought at 0 degrees through the stated points in their order; past the last
 * one on along the last line, and never less than there. Our own choice.
 *
 * @param degrees from the way in which the sensor looks; 0 to 90, where the error may be infinite
 */
export function angularError(response: AngularResponse, degrees: number): number {
  const angle = Math.abs(degrees);
  if (response.kind === 'f2') {
    // Without a sign before the nought of straight ahead, and with none of a perfect instrument at 90 degrees.
    return angle === 0 || response.f2 === 0
      ? 0
      : (-response.f2 * Math.log(Math.max(0, Math.cos(angle * RADIAN)))) / F2_OF_SHAPE;
  }
  let before: { angle: number; error: number } = NONE;
  let here = before;
  for (const point of response.points.toSorted((a, b) => a.angle - b.angle)) {
    [before, here] = [here, point];
    if (angle <= point.angle) break;
  }
  if (here.angle === before.angle) return here.error;
  const along = before.error + ((here.error - before.error) * (angle - before.angle)) / (here.angle - before.angle);
  return angle > here.angle ? Math.max(here.error, along) : along;
}

/** Straight ahead nothing is misread. */
const NONE = { angle: 0, error: 0 } as const;

/** Cells a side into which the field is cut as a spot sees it; in equal angles, so that a near field needs no more. */
const CELLS = 16;

/** An evenly lit LED field, cm, and how far before it the instrument stands, cm. */
export interface LitField {
  width: number;
  height: number;
  distance: number;
}

/** A place of the instrument, cm from the left and from the top edge of the field. */
export interface Spot {
  x: number;
  y: number;
}

/**
 * Relative standard uncertainty of a reading at a spot before a field of LEDs: the instrument's error at each angle, weighted
 * by the irradiance that comes from it. All angles are taken to be misread the same way, too high or too low, which is
 * the cautious end. The field is an even, Lambertian plane (half angle 60 degrees): narrower beams reach the instrument less
 * obliquely, so this too is the cautious end for them.
 *
 * With a and b the angles to a point of the field across and then down, dE goes as cos a cos^2 b da db and the light
 * comes in at cos e = cos a cos b (the differential form of the view factor between an element and a parallel plane;
 * derived here).
 *
 * @param field where the LED field was not measured, left out: the limit of an endless plane, the most oblique case
 */
export function obliqueError(response: AngularResponse, field?: LitField, spot?: Spot): number {
  const last = lastField.get(response);
  const known = last && isSameField(last.field, field) ? last : { field, errors: new Map<string, number>() };
  lastField.set(response, known);
  const name = spot ? `${spot.x} ${spot.y}` : '';
  const error = known.errors.get(name) ?? workedOut(response, field, spot);
  known.errors.set(name, error);
  return error;
}

/** Readings of one field follow one another, and are mostly taken at the same spots: of the last field all is kept. */
const lastField = new WeakMap<AngularResponse, { field: LitField | undefined; errors: Map<string, number> }>();

function isSameField(one: LitField | undefined, other: LitField | undefined): boolean {
  return one?.width === other?.width && one?.height === other?.height && one?.distance === other?.distance;
}

function workedOut(response: AngularResponse, field?: LitField, spot?: Spot): number {
  if (!field) return endlessError(response);
  const { weight, error } = overField(field, spot ?? { x: field.width / 2, y: field.height / 2 }, (e) =>
    angularError(response, e),
  );
  return error / weight;
}

/**
 * The light that a spot gets from a field, summed over its cells, and an error of it.
 *
 * @param errorAt relative error of light from an angle, degrees
 * @returns the view factor between spot and field times pi, and the sum of the light times its error
 */
export function overField(
  { width, height, distance }: LitField,
  spot: Spot,
  errorAt: (degrees: number) => number,
): { weight: number; error: number } {
  const [left, right] = [Math.atan(-spot.x / distance), Math.atan((width - spot.x) / distance)];
  const across = (right - left) / CELLS;
  let [weight, error] = [0, 0];
  for (let i = 0; i < CELLS; i++) {
    const a = left + (i + 0.5) * across;
    const cosA = Math.cos(a);
    const slant = distance / cosA;
    const [top, bottom] = [Math.atan(-spot.y / slant), Math.atan((height - spot.y) / slant)];
    const down = (bottom - top) / CELLS;
    for (let j = 0; j < CELLS; j++) {
      const cosB = Math.cos(top + (j + 0.5) * down);
      const light = cosA * cosB ** 2 * across * down;
      weight += light;
      error += light * errorAt(Math.acos(Math.min(1, cosA * cosB)) / RADIAN);
    }
  }
  return { weight, error };
}

/** The error of an instrument before an endless even plane: its mean over the half space, weighted with sin 2e. */
function endlessError(response: AngularResponse): number {
  const steps = 900;
  let [weight, error] = [0, 0];
  for (let i = 0; i < steps; i++) {
    const degrees = ((i + 0.5) * 90) / steps;
    const light = Math.sin(2 * degrees * RADIAN);
    weight += light;
    error += light * angularError(response, degrees);
  }
  return error / weight;
}
