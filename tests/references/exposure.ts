import type { CheckValue } from './check-value.ts';

const ROUNDED = 'the expected value is rounded to six significant digits';
const EXACT = { tolerance: 1e-9, because: 'a handful of operations; only the last binary digits may differ' } as const;

/** Half a unit of the sixth significant digit. */
const sixDigits = (expected: number) => ({
  expected,
  tolerance: 0.5 * 10 ** (Math.floor(Math.log10(Math.abs(expected))) - 5) * 1.001,
  because: ROUNDED,
});

const IEC_INFRARED = 'IEC 62471:2006, 4.3.7 (formula from secondary sources), worked out with 30 digits';
const infrared = (seconds: number, expected: number): CheckValue<number> => ({
  label: `${seconds} s`,
  arguments: seconds,
  ...sixDigits(expected),
  source: IEC_INFRARED,
  verified: 'computed',
});

/** Infrared limit for the cornea and lens, W/m², by time in s: both sides of its step at 1000 s. */
export const INFRARED_LIMITS: readonly CheckValue<number>[] = [
  infrared(7, 4182.63),
  infrared(10, 3200.9),
  infrared(100, 569.21),
  infrared(999, 101.297),
  infrared(1000, 101.221),
  {
    label: 'just over 1000 s',
    arguments: 1000.001,
    expected: 100,
    ...EXACT,
    source: 'IEC 62471:2006, 4.3.7, from secondary sources',
    verified: 'secondary',
  },
  {
    label: 'eight hours',
    arguments: 28_800,
    expected: 100,
    ...EXACT,
    source: 'IEC 62471:2006, 4.3.7, from secondary sources',
    verified: 'secondary',
  },
];

const stay = (irradiance: number, expected: number): CheckValue<number> => ({
  label: `${irradiance} W/m²`,
  arguments: irradiance,
  ...sixDigits(expected),
  source: IEC_INFRARED,
  verified: 'computed',
});

/** Time to the infrared limit, s, by irradiance in W/m², above the 100 W/m² that have none. */
export const INFRARED_TIMES: readonly CheckValue<number>[] = [
  stay(100.001, 1000),
  stay(101.221, 1000),
  stay(101.3, 998.966),
  stay(102, 989.836),
  stay(200, 403.326),
  stay(500, 118.869),
  stay(1000, 47.1733),
  stay(3200.9, 10),
];

const skin = (seconds: number, expected: number): CheckValue<number> => ({
  label: `${seconds} s`,
  arguments: seconds,
  ...sixDigits(expected),
  source: 'IEC 62471:2006, 4.3.8 (formula from secondary sources), worked out with 30 digits',
  verified: 'computed',
});

/** Skin limit, W/m², by time in s: at 1 s a wrong exponent would not show. */
export const SKIN_LIMITS: readonly CheckValue<number>[] = [
  skin(0.1, 112_468),
  skin(1, 20_000),
  skin(2, 11_892.1),
  skin(5, 5981.4),
  skin(9.999, 3556.83),
];

/**
 * Heat that blisters skin, W/m², by time in s: the published limit has to lie below it at every time. Stoll and
 * Chianta's curve of 1969 for second-degree burns, as a public paper on protective clothing prints its table.
 */
export const BURN_CURVE: ReadonlyArray<readonly [seconds: number, blisters: number]> = [
  [1, 50_000],
  [2, 31_000],
  [3, 23_000],
  [4, 19_000],
  [5, 16_000],
  [6, 14_000],
  [7, 13_000],
  [8, 11_500],
  [9, 10_600],
  [10, 9800],
];

type Line = 'lowRisk' | 'noEffect';
const line = (frequency: number, key: Line, expected: number): CheckValue<{ frequency: number; line: Line }> => ({
  label: `${key} at ${frequency} Hz`,
  arguments: { frequency, line: key },
  expected,
  ...EXACT,
  source: 'IEEE Std 1789-2015, 8.1.1: coefficients from a public implementation that cites it',
  verified: 'secondary',
});

/** Flicker lines, %, on both sides of 90 Hz and up to the last frequencies that have one. */
export const FLICKER_LINES: readonly CheckValue<{ frequency: number; line: Line }>[] = [
  line(10, 'lowRisk', 0.25),
  line(10, 'noEffect', 0.1),
  line(60, 'lowRisk', 1.5),
  line(60, 'noEffect', 0.6),
  line(89.9, 'lowRisk', 2.2475),
  line(89.9, 'noEffect', 0.899),
  line(90, 'lowRisk', 7.2),
  line(90, 'noEffect', 2.997),
  line(100, 'lowRisk', 8),
  line(100, 'noEffect', 3.33),
  line(120, 'lowRisk', 9.6),
  line(120, 'noEffect', 3.996),
  line(1000, 'lowRisk', 80),
  line(1000, 'noEffect', 33.3),
  line(1250, 'lowRisk', 100),
  line(1250.1, 'noEffect', 41.62833),
  line(3000, 'noEffect', 99.9),
];

const ICNIRP_2010 = 'ICNIRP 2010, Health Physics 99(6):818-836, Table 4, general public; a copy of the paper';
const level = (frequency: number, expected: number, part: Partial<CheckValue<number>> = {}): CheckValue<number> => ({
  label: `${frequency} Hz`,
  arguments: frequency,
  expected,
  ...EXACT,
  source: ICNIRP_2010,
  verified: 'read',
  ...part,
});
const worked = (frequency: number, expected: number) =>
  level(frequency, expected, { ...sixDigits(expected), verified: 'computed', source: `${ICNIRP_2010}; worked out` });

/** Reference levels for magnetic fields, µT, by frequency in Hz. */
export const MAGNETIC_LEVELS: readonly CheckValue<number>[] = [
  level(25, 200),
  level(50, 200),
  level(60, 200),
  level(400, 200),
  worked(400.1, 199.95),
  worked(3000, 26.6667),
  level(3000.1, 27),
  level(1e7, 27),
];

/** Reference levels for electric fields, V/m, by frequency in Hz. */
export const ELECTRIC_LEVELS: readonly CheckValue<number>[] = [
  level(25, 5000),
  level(50, 5000),
  worked(50.1, 4990.02),
  level(60, 4167, { tolerance: 0.5, because: 'quoted as a whole number' }),
  worked(2999.9, 83.3361),
  level(3000, 83),
  level(1e7, 83),
];

const ICNIRP_2020 = 'ICNIRP 2020, Health Physics 118(5):483-524, general public';
const wholeBody = (megahertz: number, expected: number): CheckValue<number> => ({
  label: `${megahertz} MHz`,
  arguments: megahertz,
  expected,
  ...EXACT,
  source: `${ICNIRP_2020}, whole body, 30 min; a public implementation that copies the table`,
  verified: 'secondary',
});

/** Whole-body reference levels for radio, W/m², by frequency in MHz. */
export const RADIO_LEVELS: readonly CheckValue<number>[] = [
  wholeBody(30.1, 2),
  wholeBody(400, 2),
  wholeBody(500, 2.5),
  wholeBody(900, 4.5),
  wholeBody(2000, 10),
  wholeBody(2000.1, 10),
  wholeBody(300_000, 10),
];

/**
 * Where power densities start: up to 30 MHz the whole-body level is a field strength, 300 / f^0.7 V/m with f in MHz,
 * above it 27.7 V/m and 2 W/m². The two rows meet there and at no other round frequency, 10 MHz among them.
 */
export const RADIO_JOIN: CheckValue<number> = {
  label: '30 MHz',
  arguments: 30,
  expected: 27.7,
  tolerance: 0.05,
  because: 'the table gives three digits',
  source: `${ICNIRP_2020}, whole body, 30 min; a public implementation that copies the table`,
  verified: 'secondary',
};

const ISO_3744 = 'ISO 3744:2010, equation 16 (from secondary sources), worked out with 30 digits';
const correction = (margin: number, expected: number): CheckValue<number> => ({
  label: `margin of ${margin} dB`,
  arguments: margin,
  ...sixDigits(expected),
  source: ISO_3744,
  verified: 'computed',
});

/** The formula of the background correction, dB, by margin in dB. */
export const ENERGY_CORRECTIONS: readonly CheckValue<number>[] = [
  correction(3, 3.02062),
  correction(6, 1.25628),
  correction(10, 0.457575),
  correction(15, 0.139554),
  correction(20, 0.0436481),
];

const rule = (margin: number, expected: number): CheckValue<number> => ({
  label: `margin of ${margin} dB`,
  arguments: margin,
  expected,
  ...EXACT,
  source: 'ISO 3744:2010: where the correction is nought, and where it is held; from secondary sources',
  verified: 'secondary',
});

/** The correction as it is applied, dB: both sides of 6 dB and 15 dB. */
export const BACKGROUND_CORRECTIONS: readonly CheckValue<number>[] = [
  rule(0.1, 1.3),
  rule(3, 1.3),
  rule(5.99, 1.3),
  correction(6, 1.25628),
  correction(6.01, 1.25293),
  correction(15, 0.139554),
  rule(15.01, 0),
  rule(20, 0),
];

/** Corrected levels, dB(A), by the levels with the panel on and off. */
export const SOUND_LEVELS: readonly CheckValue<{ on: number; off: number }>[] = [
  {
    label: '50 dB in a room of 44 dB',
    arguments: { on: 50, off: 44 },
    ...sixDigits(48.7437),
    source: ISO_3744,
    verified: 'computed',
  },
  {
    label: '45.2 dB in a room of 32.7 dB',
    arguments: { on: 45.2, off: 32.7 },
    ...sixDigits(44.9486),
    source: ISO_3744,
    verified: 'computed',
  },
];

/** What 93 dB has over 89 dB, by the formula alone: at this margin the standard holds its correction instead. */
export const ENERGY_DIFFERENCE: CheckValue<{ on: number; off: number }> = {
  label: '93 dB less 89 dB',
  arguments: { on: 93, off: 89 },
  expected: 90.7,
  tolerance: 0.1,
  because: 'the published example takes the correction from a table of whole steps',
  source: 'a public worked example of subtracting background sound',
  verified: 'read',
};

/** All tables, for the test that each row says where it is from. */
export const EXPOSURE_TABLES: Record<string, readonly CheckValue<unknown>[]> = {
  'infrared limit': INFRARED_LIMITS,
  'infrared stay': INFRARED_TIMES,
  'skin limit': SKIN_LIMITS,
  'flicker lines': FLICKER_LINES,
  'magnetic levels': MAGNETIC_LEVELS,
  'electric levels': ELECTRIC_LEVELS,
  'radio levels': [...RADIO_LEVELS, RADIO_JOIN],
  'background correction, formula': ENERGY_CORRECTIONS,
  'background correction, rule': BACKGROUND_CORRECTIONS,
  'sound levels': [...SOUND_LEVELS, ENERGY_DIFFERENCE],
};
