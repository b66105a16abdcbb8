import type { Flag } from '../figure.ts';
import { type Check, words } from './check.ts';

/**
 * Readings above these look like a slip of the unit: common practice, no source; the numbers are our own choice.
 * This one: µT, panel off. Few homes have more (WHO, Environmental Health Criteria 238, 2007: averages above
 * 0.4 µT in one or two of a hundred, from memory), and a room of 0.5 mG typed without its unit has.
 */
export const MAGNETIC_OFF_ODD = 0.4;
/** µT, panel on. */
export const MAGNETIC_ON_ODD = 20;
/** V/m, on or off: indoors a meter seldom shows as much. */
export const ELECTRIC_ODD = 1000;
/** mW/m², panel off. */
export const RADIO_OFF_ODD = 10;

/** A reading, the most it plausibly is, and the unit that the meter may have shown instead. */
interface Rule {
  metric: string;
  what: string;
  most: number;
  unit: string;
  /** The other unit as text and as one types it, and how many of it make one of `unit`. */
  other: { unit: string; typed: string; factor: number };
}

const MILLIGAUSS = { unit: 'mG', typed: 'mG', factor: 10 };
const MILLIVOLTS = { unit: 'mV/m', typed: 'mV/m', factor: 1000 };
const MICROWATTS = { unit: 'µW/m²', typed: 'uW/m2', factor: 1000 };

const RULES: readonly Rule[] = [
  {
    metric: 'magnetic-field-off',
    what: 'A magnetic field with the panel off',
    most: MAGNETIC_OFF_ODD,
    unit: 'µT',
    other: MILLIGAUSS,
  },
  {
    metric: 'magnetic-field-on',
    what: 'A magnetic field with the panel on',
    most: MAGNETIC_ON_ODD,
    unit: 'µT',
    other: MILLIGAUSS,
  },
  {
    metric: 'electric-field-off',
    what: 'An electric field with the panel off',
    most: ELECTRIC_ODD,
    unit: 'V/m',
    other: MILLIVOLTS,
  },
  {
    metric: 'electric-field-on',
    what: 'An electric field with the panel on',
    most: ELECTRIC_ODD,
    unit: 'V/m',
    other: MILLIVOLTS,
  },
  {
    metric: 'radio-field-off',
    what: 'A radio field with the panel off',
    most: RADIO_OFF_ODD,
    unit: 'mW/m²',
    other: MICROWATTS,
  },
];

export const unitSlips: Check = {
  id: 'unit-slips',
  guards: 'Field readings typed in another unit than the meter showed.',
  run: (facts) =>
    RULES.flatMap(({ metric, what, most, unit, other }): Flag[] => {
      const figure = facts.figure(metric);
      // A reading below the meter's reach was not as high as its number.
      if (!figure || figure.bound === 'below' || figure.value <= most) return [];
      const value = words(figure.value);
      return [
        {
          check: 'unit-slips',
          severity: 'doubt',
          finding: `${what} of ${value} ${unit} is odd: more than ${words(most)} ${unit} is rarely met. ${value} ${unit} is ${words(figure.value * other.factor)} ${other.unit}; if the meter said ${value} ${other.unit}, write \`${value} ${other.typed}\`.`,
          concerns: [metric],
        },
      ];
    }),
};
