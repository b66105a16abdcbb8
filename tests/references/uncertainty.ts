import type { CheckValue } from './check-value.ts';

/** Printed to six decimals. */
const SIX = { tolerance: 5e-7, because: 'the expected value is rounded to six decimals' } as const;
const GUM = 'JCGM 100:2008';

/** Half-width of a rectangular distribution to its standard uncertainty. */
export const RECTANGULAR: readonly CheckValue<number>[] = [
  {
    label: 'rectangular, a = 5',
    arguments: 5,
    expected: 2.886751,
    ...SIX,
    source: `a / √3, ${GUM}, 4.3.7 (clause from memory)`,
    verified: 'computed',
  },
];

/** Nine repeats of one quantity. */
export const NINE_REPEATS = [98, 101, 99, 102, 100, 97, 103, 100, 100] as const;

/** Standard deviation of repeats, and of their mean. */
export const TYPE_A: readonly CheckValue<{ readings: readonly number[]; ofTheMean: boolean }>[] = [
  {
    label: 's of nine repeats',
    arguments: { readings: NINE_REPEATS, ofTheMean: false },
    expected: 1.870829,
    ...SIX,
    source: `${GUM}, 4.2.2 (clause from memory)`,
    verified: 'computed',
  },
  {
    label: 'u of the mean of nine repeats',
    arguments: { readings: NINE_REPEATS, ofTheMean: true },
    expected: 0.62361,
    ...SIX,
    source: `s / √n, ${GUM}, 4.2.3 (clause from memory)`,
    verified: 'computed',
  },
];

/** Standard uncertainties to the combined one, times a coverage factor. */
export const COMBINED: readonly CheckValue<{ parts: readonly number[]; coverageFactor: number }>[] = [
  {
    label: 'nine repeats and a rectangular ±5',
    arguments: { parts: [0.623609564, 2.886751346], coverageFactor: 1 },
    expected: 2.953341,
    ...SIX,
    source: `${GUM}, 5.1.2 (clause from memory)`,
    verified: 'computed',
  },
  {
    label: 'the same, expanded with k = 2',
    arguments: { parts: [0.623609564, 2.886751346], coverageFactor: 2 },
    expected: 5.906682,
    ...SIX,
    source: `U = k u, ${GUM}, 6.2.1 (clause from memory)`,
    verified: 'computed',
  },
];

export interface Parts {
  parts: ReadonlyArray<{ contribution: number; degreesOfFreedom: number }>;
}

const EXACT = { tolerance: 0, because: 'a whole number, rounded down' } as const;
const WELCH_SATTERTHWAITE = `Welch–Satterthwaite, ${GUM}, G.4.1 and formula G.2b`;
const ONE_OF_EACH: Parts = {
  parts: [
    { contribution: 2, degreesOfFreedom: 8 },
    { contribution: 1, degreesOfFreedom: Number.POSITIVE_INFINITY },
  ],
};

/** Contributions to effective degrees of freedom. */
export const EFFECTIVE_DEGREES: readonly CheckValue<Parts>[] = [
  {
    label: 'u_A = 2 with 8, u_B = 1 exactly known: 12.5',
    arguments: ONE_OF_EACH,
    expected: 12,
    ...EXACT,
    source: WELCH_SATTERTHWAITE,
    verified: 'computed',
  },
  {
    label: 'two equal parts with 8 each',
    arguments: {
      parts: [
        { contribution: 3, degreesOfFreedom: 8 },
        { contribution: 3, degreesOfFreedom: 8 },
      ],
    },
    expected: 16,
    ...EXACT,
    source: WELCH_SATTERTHWAITE,
    verified: 'computed',
  },
];

/** Contributions to the half-width of the 95 % interval. */
export const EXPANDED: readonly CheckValue<Parts>[] = [
  {
    label: 'u = √5 with t(0.975, 12)',
    arguments: ONE_OF_EACH,
    expected: 4.871974,
    ...SIX,
    source: `${GUM}, G.4.1`,
    verified: 'computed',
  },
];

/** A quotient of two inputs with relative standard uncertainties. */
export interface Quotient {
  numerator: number;
  numeratorRelative: number;
  denominator: number;
  denominatorRelative: number;
}

const RELATIVE_RULE = `${GUM}, 5.1.6 (clause from memory)`;

/** Relative standard uncertainty of a quotient. */
export const QUOTIENT_RELATIVE: readonly CheckValue<Quotient>[] = [
  {
    label: '400 / 100 with 5 % and 1 %',
    arguments: { numerator: 400, numeratorRelative: 0.05, denominator: 100, denominatorRelative: 0.01 },
    expected: 0.0509902,
    tolerance: 5e-8,
    because: 'the expected value is rounded to seven decimals',
    source: RELATIVE_RULE,
    verified: 'computed',
  },
];

/** Standard uncertainty of a quotient. */
export const QUOTIENT_ABSOLUTE: readonly CheckValue<Quotient>[] = [
  {
    label: 'u of 400 / 100 with 5 % and 1 %',
    arguments: { numerator: 400, numeratorRelative: 0.05, denominator: 100, denominatorRelative: 0.01 },
    expected: 0.203961,
    ...SIX,
    source: RELATIVE_RULE,
    verified: 'computed',
  },
  {
    label: 'price 599, exact, over 100 W with 6 %',
    arguments: { numerator: 599, numeratorRelative: 0, denominator: 100, denominatorRelative: 0.06 },
    expected: 0.3594,
    tolerance: 1e-12,
    because: 'the expected value is exact: 5.99 × 0.06',
    source: RELATIVE_RULE,
    verified: 'computed',
  },
];
