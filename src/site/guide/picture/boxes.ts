/** A rectangle along the axes; y runs down. */
export interface Box {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** Whether two boxes share more than an edge. */
export const overlap = (a: Box, b: Box) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Whether a box lies in another, edges counted in. */
export const isWithin = (box: Box, frame: Box) =>
  box.left >= frame.left && box.right <= frame.right && box.top >= frame.top && box.bottom <= frame.bottom;

/** How far two boxes are from one another; nought where they touch. */
export const gapBetween = (a: Box, b: Box) =>
  Math.hypot(Math.max(0, a.left - b.right, b.left - a.right), Math.max(0, a.top - b.bottom, b.top - a.bottom));

/**
 * Those of many boxes that may be near some others: one look at each of them, where there is more than one question.
 *
 * @param by how far away is near
 */
export function nearTo(boxes: readonly Box[], many: readonly Box[], by = 0): Box[] {
  const around = grown(
    {
      left: Math.min(...boxes.map((it) => it.left)),
      top: Math.min(...boxes.map((it) => it.top)),
      right: Math.max(...boxes.map((it) => it.right)),
      bottom: Math.max(...boxes.map((it) => it.bottom)),
    },
    by,
  );
  return many.filter((it) => overlap(it, around));
}

/** A box that is larger by so much on each side. */
export const grown = (box: Box, by: number): Box => ({
  left: box.left - by,
  top: box.top - by,
  right: box.right + by,
  bottom: box.bottom + by,
});

/**
 * Boxes that cover a slanted strip between them.
 *
 * @param middle of the strip
 * @param angle anticlockwise from the x axis as a reader sees it, radians
 */
export function stripBoxes(
  middle: { x: number; y: number },
  { width, height }: { width: number; height: number },
  angle: number,
): Box[] {
  const pieces = Math.max(1, Math.ceil(width / height));
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const half = { x: (Math.abs(cos) * width) / pieces / 2, y: (Math.abs(sin) * width) / pieces / 2 };
  const across = { x: (Math.abs(sin) * height) / 2, y: (Math.abs(cos) * height) / 2 };
  return Array.from({ length: pieces }, (_, i) => {
    const along = width * ((i + 0.5) / pieces - 0.5);
    const [x, y] = [middle.x + along * cos, middle.y - along * sin];
    return {
      left: x - half.x - across.x,
      right: x + half.x + across.x,
      top: y - half.y - across.y,
      bottom: y + half.y + across.y,
    };
  });
}
