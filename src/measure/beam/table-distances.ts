/** Distances of the table that readers get for every panel, cm. */
export const TABLE_DISTANCES = [5, 10, 15, 30, 45, 60] as const;

/** What the table tells at each of them. */
export type DistanceQuantity = 'mean-irradiance' | 'peak-irradiance' | 'uniformity-lowest';

/** Metric of a modelled value at a distance in cm: `mean-irradiance-at-30-cm`. */
export function distanceMetric<const Quantity extends DistanceQuantity>(quantity: Quantity, distance: number) {
  return `${quantity}-at-${Number(distance.toPrecision(4))}-cm` as const;
}
