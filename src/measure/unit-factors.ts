/** mW in a W, mJ in a J, W in a kW: what a prefix makes of a unit. */
export const MILLI = 1000;

/** Exactly (international yard and pound agreement, 1959). */
export const CM_PER_INCH = 2.54;
