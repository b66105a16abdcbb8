import type { Reading } from '../schema/quantity.ts';
import type { GridPoint } from '../schema/session.ts';

/** One reading of a grid point as it stands in the file. */
export interface PointReading {
  reading: Reading;
  /** Why it was rejected; undefined where it is accepted. */
  rejected?: string;
}

/** All readings of a point, rejected ones too, in the order of the file. */
export function pointReadings(point: GridPoint): PointReading[] {
  const list = Array.isArray(point) ? point : [point];
  return list.map((it) => ('struck' in it ? { reading: it.value, rejected: it.struck } : { reading: it }));
}

/** The readings of a point that count, mW/cm2. */
export function acceptedReadings(point: GridPoint): number[] {
  return pointReadings(point).flatMap((it) => (it.rejected === undefined ? [it.reading.value] : []));
}
