/** Distances from the LEDs at which the guide says what reaches an eye, cm. Our own choice. */
export const EYE_DISTANCES = [15, 30, 60] as const;

export type EyeDistance = (typeof EYE_DISTANCES)[number];
