/** A local maximum of a row of values. */
export interface Summit {
  /** Its place; the middle of a flat top. */
  at: number;
  /** How far one has to come down from it, on the better side, before it goes up to something higher. */
  prominence: number;
  /** The lowest places between it and what is higher, or the end, on the left and on the right. */
  left: number;
  right: number;
}

/**
 * Local maxima with at least a prominence: how far a summit stands above the higher of the two saddles beside it (the
 * definition of topography, and of usual libraries for signals). A flat top is one summit. The ends of the row are none.
 */
export function summitsOf(values: ArrayLike<number>, smallest: number): Summit[] {
  const summits: Summit[] = [];
  for (let i = 1; i + 1 < values.length; i++) {
    const value = values[i] as number;
    if ((values[i - 1] as number) >= value) continue;
    let end = i;
    while (end + 1 < values.length && values[end + 1] === value) end++;
    if (end + 1 < values.length && (values[end + 1] as number) < value) {
      const left = lowestBeside(values, i, -1);
      const right = lowestBeside(values, end, 1);
      const prominence = value - Math.max(values[left] as number, values[right] as number);
      if (prominence >= smallest && prominence > 0) {
        summits.push({ at: Math.floor((i + end) / 2), prominence, left, right });
      }
    }
    i = end;
  }
  return summits;
}

/** Place of the lowest value on the way from a summit to something higher, or to the end. */
function lowestBeside(values: ArrayLike<number>, from: number, step: 1 | -1): number {
  const top = values[from] as number;
  let lowest = from;
  for (let i = from + step; i >= 0 && i < values.length && (values[i] as number) <= top; i += step) {
    if ((values[i] as number) < (values[lowest] as number)) lowest = i;
  }
  return lowest;
}
