/** Steps of the map of a lit wall, each so many percent of the mean; the last one is open. */
export const STEP_PERCENT = 20;

/**
 * Colours of the steps, the dimmest first: one hue that only gets lighter, so that it reads alike in grey, on paper and
 * to eyes that tell fewer colours apart. The scale is the same for all panels.
 */
export const WALL_COLOURS = [
  [8, 26, 33],
  [10, 45, 56],
  [11, 65, 81],
  [12, 87, 107],
  [34, 110, 131],
  [66, 134, 153],
  [101, 159, 176],
  [140, 185, 198],
  [184, 212, 220],
  [236, 245, 247],
] as const;

/** The step that a share of the mean lies in. */
export function wallStep(share: number): number {
  return Math.min(WALL_COLOURS.length - 1, Math.max(0, Math.floor((100 * share) / STEP_PERCENT)));
}

/** A colour as SVG has it. */
export const hexOf = (colour: readonly number[]) => `#${colour.map((it) => it.toString(16).padStart(2, '0')).join('')}`;
