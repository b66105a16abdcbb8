/** Where the points lie on the LED field, and the part of the field that each stands for. */
export interface GridGeometry {
  /** cm from the left edge of the field, one a column. */
  x: number[];
  /** cm from the top edge of the field, one a row. */
  y: number[];
  /** Share of the field nearer to the point than to any other, row by row; sums to 1. */
  shares: number[][];
}

/**
 * Positions of an n x m grid whose outer points lie `inset` inside the edges, and the cells around them: cells
 * meet half-way between neighbours, and outer ones reach to the edge. A single row or column lies in the middle.
 *
 * @param width of the LED field, cm
 * @param height of the LED field, cm
 * @param inset cm
 * @returns undefined where the field is too small for the inset, so that points would coincide or cross
 */
export function gridGeometry(
  columns: number,
  rows: number,
  width: number,
  height: number,
  inset: number,
): GridGeometry | undefined {
  const across = pointsAlong(columns, width, inset);
  const down = pointsAlong(rows, height, inset);
  if (!across || !down) return undefined;
  return {
    x: across.map((it) => it.position),
    y: down.map((it) => it.position),
    shares: down.map((dy) => across.map((dx) => dx.share * dy.share)),
  };
}

/** Positions along one side, cm, and the share of it that is nearest to each. */
function pointsAlong(
  count: number,
  size: number,
  inset: number,
): Array<{ position: number; share: number }> | undefined {
  if (count === 1) return [{ position: size / 2, share: 1 }];
  if (2 * inset >= size) return undefined;
  const positionOf = (i: number) => inset + ((size - 2 * inset) * i) / (count - 1);
  let start = 0;
  return Array.from({ length: count }, (_, i) => {
    const position = positionOf(i);
    const end = i === count - 1 ? size : (positionOf(i + 1) + position) / 2;
    const share = (end - start) / size;
    start = end;
    return { position, share };
  });
}
