import type { FieldKind } from './field-reading.ts';

/*
 * Guideline ranges for sleeping places, the Standard of Building Biology Testing Methods. Its four ranges are those of
 * SBM-2015 (seen on a page that quotes them); the numbers were seen for SBM-2008. That the table of 2015 has the same
 * numbers is from memory.
 */

/** How far a field is from none at all, by the guideline: its four ranges. */
export type PrecautionRange = 'no-anomaly' | 'slight' | 'severe' | 'extreme';

/** Lower edges of the second to fourth range: magnetic µT, electric V/m (against ground potential), radio mW/m². */
export const RANGE_EDGES: Record<FieldKind, readonly [number, number, number]> = {
  // 20, 100 and 500 nT
  magnetic: [0.02, 0.1, 0.5],
  electric: [1, 5, 50],
  // 0.1, 10 and 1000 µW/m²
  radio: [0.0001, 0.01, 1],
};

/**
 * The range that a field falls into. The guideline leaves open where an edge itself belongs; here it belongs to the
 * range that starts there (our own rule). A private guideline for beds at night, without official status.
 *
 * @param value µT, V/m or mW/m²; negative or NaN is a RangeError
 * @example rangeOf('magnetic', 0.3) // 'severe'
 */
export function rangeOf(kind: FieldKind, value: number): PrecautionRange {
  if (!(value >= 0)) throw new RangeError(`no ${kind} field: ${value}`);
  const [slight, severe, extreme] = RANGE_EDGES[kind];
  if (value >= extreme) return 'extreme';
  if (value >= severe) return 'severe';
  return value >= slight ? 'slight' : 'no-anomaly';
}
