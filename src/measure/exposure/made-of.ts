import type { Bound, Figure, Unassessed } from '../figure.ts';

/** What stands between a result and its formula: "s < 100 × ..." where the reading is a bound from above. */
export function relation(bound: Bound | undefined): '=' | '<' | '>' {
  if (!bound) return '=';
  return bound === 'below' ? '<' : '>';
}

/** The figure with more said of what its budget leaves out. */
export function leavingOut(figure: Figure, ...more: readonly Unassessed[]): Figure {
  return { ...figure, unassessed: [...figure.unassessed, ...more] };
}
