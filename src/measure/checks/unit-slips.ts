import type { Check, RaisedFlag } from './check.ts';
import { type FieldKind, SMALLER_UNITS, type SmallerUnit } from './smaller-unit.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** A field with the panel on or off, and the most that it plausibly is. */
    'field-in-smaller-unit': SmallerUnit & { field: FieldKind; panel: 'on' | 'off'; value: number; most: number };
  }
}

/**
 * Readings above these look like a slip of the unit: common practice, no source; the numbers are our own choice.
 * This one: µT, panel off. Few homes have more (WHO, Environmental Health Criteria 238, 2007: averages above
 * 0.4 µT in one or two of a hundred, from memory), and a room of 0.5 mG typed without its unit has.
 */
export const MAGNETIC_OFF_ODD = 0.4;
/** µT, panel on. */
export const MAGNETIC_ON_ODD = 20;
/** V/m, on or off: indoors an instrument seldom shows as much. */
export const ELECTRIC_ODD = 1000;
/** mW/m², panel off. */
export const RADIO_OFF_ODD = 10;

/** The most that each plausibly is. What radio comes to with the panel on depends on the panel. */
const RULES = [
  { field: 'magnetic', panel: 'off', most: MAGNETIC_OFF_ODD },
  { field: 'magnetic', panel: 'on', most: MAGNETIC_ON_ODD },
  { field: 'electric', panel: 'off', most: ELECTRIC_ODD },
  { field: 'electric', panel: 'on', most: ELECTRIC_ODD },
  { field: 'radio', panel: 'off', most: RADIO_OFF_ODD },
] as const;

/** Field readings typed in another unit than the instrument showed. */
export const unitSlips: Check = {
  id: 'unit-slips',
  run: (facts) =>
    RULES.flatMap(({ field, panel, most }): RaisedFlag[] => {
      const metric = `${field}-field-${panel}` as const;
      const figure = facts.figure(metric);
      // A reading below the instrument's reach was not as high as its number.
      if (!figure || figure.bound === 'below' || figure.value <= most) return [];
      return [
        {
          severity: 'doubt',
          finding: { code: 'field-in-smaller-unit', ...SMALLER_UNITS[field], field, panel, value: figure.value, most },
          concerns: [metric],
        },
      ];
    }),
};
