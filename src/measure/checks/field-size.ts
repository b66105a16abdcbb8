import type { Statement } from '../statement.ts';
import { CM_PER_INCH } from '../unit-factors.ts';
import type { Check, RaisedFlag, Size } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** Lengths in cm; `pitch` is the mean distance between LEDs. */
    'leds-far-apart': { count: number; field: Size; pitch: number; most: number };
    'leds-close': { count: number; field: Size; pitch: number; least: number };
    'field-too-long': { field: Size; most: number };
    /** Shares of the housing's area, %. */
    'field-small-in-housing': { field: Size; percent: number; least: number };
    'other-unit-for-centimetres': { width: number; unit: 'mm' | 'in' };
  }
}

/** LEDs lie no farther apart, and no closer, than this, cm, on average. Our own choice: panels have 1 to 5. */
export const LARGEST_PITCH = 10;
export const SMALLEST_PITCH = 0.4;
/** Longest side of a field, cm: higher than any door. Our own choice. */
export const LONGEST_SIDE = 250;
/** Smallest share of the housing's area that the field takes up. Our own choice: frames are a hand wide at most. */
export const SMALLEST_SHARE = 0.25;

/**
 * An LED field whose size does not go with its LEDs or its housing, such as millimetres or inches typed as
 * centimetres.
 */
export const fieldSize: Check = {
  id: 'field-size',
  run({ field, housing, ledCount: count }) {
    if (!field) return [];
    const area = field.width * field.height;
    const flag = (finding: Statement, unit: 'mm' | 'in', isThat = true): RaisedFlag[] => [
      {
        severity: 'doubt',
        finding,
        ...(isThat && { hint: { code: 'other-unit-for-centimetres', width: field.width, unit } as const }),
        concerns: ['led-area', 'optical-power'],
        at: ['field'],
      },
    ];
    if (count !== undefined) {
      const pitch = Math.sqrt(area / count);
      if (pitch > LARGEST_PITCH)
        return flag({ code: 'leds-far-apart', count, field, pitch, most: LARGEST_PITCH }, 'mm');
      if (pitch < SMALLEST_PITCH) return flag({ code: 'leds-close', count, field, pitch, least: SMALLEST_PITCH }, 'in');
    }
    if (Math.max(field.width, field.height) > LONGEST_SIDE)
      return flag({ code: 'field-too-long', field, most: LONGEST_SIDE }, 'mm');
    const share = housing && area / (housing.width * housing.height);
    if (share !== undefined && share < SMALLEST_SHARE) {
      const finding = {
        code: 'field-small-in-housing',
        field,
        percent: 100 * share,
        least: 100 * SMALLEST_SHARE,
      } as const;
      // Where inches would not mend it, it is the housing, or a digit.
      const inInches = share * CM_PER_INCH ** 2;
      return flag(finding, 'in', inInches >= SMALLEST_SHARE && inInches <= 1);
    }
    return [];
  },
};
