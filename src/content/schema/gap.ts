/** Stands where something is still to be filled in: in drafts and in instruments that no published panel names. */
export const GAP = 'TODO';

/** True for the mark of a gap, in capitals or not. */
export function isGap(value: unknown): boolean {
  return typeof value === 'string' && value.trim().toUpperCase() === GAP;
}
