/** A place, across and down. */
export type Place = readonly [x: number, y: number];

/** Four corners as one sees them: upper left, upper right, lower right, lower left. */
export type Corners = readonly [Place, Place, Place, Place];

/** Maps the unit square (0,0 upper left, 1,1 lower right) onto a quadrilateral, as a camera sees a flat rectangle. */
export type Homography = (u: number, v: number) => [x: number, y: number];

/**
 * The projective map of the unit square onto four corners (Heckbert 1989, "Fundamentals of texture mapping and image
 * warping", 2.2.3, from memory; held against worked maps in the tests).
 */
export function unitSquareTo([p0, p1, p2, p3]: Corners): Homography {
  const sumX = p0[0] - p1[0] + p2[0] - p3[0];
  const sumY = p0[1] - p1[1] + p2[1] - p3[1];
  const dx1 = p1[0] - p2[0];
  const dy1 = p1[1] - p2[1];
  const dx2 = p3[0] - p2[0];
  const dy2 = p3[1] - p2[1];
  const divisor = dx1 * dy2 - dx2 * dy1;
  const g = (sumX * dy2 - dx2 * sumY) / divisor;
  const h = (dx1 * sumY - sumX * dy1) / divisor;
  const a = p1[0] - p0[0] + g * p1[0];
  const b = p3[0] - p0[0] + h * p3[0];
  const d = p1[1] - p0[1] + g * p1[1];
  const e = p3[1] - p0[1] + h * p3[1];
  return (u, v) => {
    const w = g * u + h * v + 1;
    return [(a * u + b * v + p0[0]) / w, (d * u + e * v + p0[1]) / w];
  };
}

/** What is wrong with corners: they must go round clockwise from the upper left, and bulge outward at each. */
export type CornersFault = 'not-convex' | 'other-way-round';

/** Undefined where the corners span a rectangle that a camera may have seen so. */
export function cornersFault(corners: Corners): CornersFault | undefined {
  const turns = corners.map((here, i) => {
    const next = corners[(i + 1) % 4] as Place;
    const after = corners[(i + 2) % 4] as Place;
    return (next[0] - here[0]) * (after[1] - next[1]) - (next[1] - here[1]) * (after[0] - next[0]);
  });
  // Pictures count downwards, so that a turn to the right is positive.
  if (turns.every((it) => it > 0)) return undefined;
  return turns.every((it) => it < 0) ? 'other-way-round' : 'not-convex';
}

const length = (a: Place, b: Place) => Math.hypot(b[0] - a[0], b[1] - a[1]);

/** Mean length of the two sides across and of the two down, in the picture's pixels. */
export function sidesOf([p0, p1, p2, p3]: Corners): { across: number; down: number } {
  return { across: (length(p0, p1) + length(p3, p2)) / 2, down: (length(p0, p3) + length(p1, p2)) / 2 };
}
