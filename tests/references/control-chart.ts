import type { CheckValue } from './check-value.ts';

const HANDBOOK =
  'NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2, Individuals Control Charts: flow rates of ten batches';

/** Flow rates of the first ten batches of a new process. */
export const FLOW_RATES = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];

type Part = 'centre' | 'lower' | 'upper' | 'meanRange';

const ROUNDED_D2 = 'the page has d2 as 1.128, and the mean range with four decimals';

/** What the handbook makes of them. */
export const FLOW_RATE_LIMITS: ReadonlyArray<CheckValue<Part>> = [
  { label: 'centre line', arguments: 'centre', expected: 50.81, tolerance: 1e-9, because: 'exact' },
  { label: 'mean moving range', arguments: 'meanRange', expected: 1.8778, tolerance: 5e-5, because: 'four decimals' },
  { label: 'upper limit', arguments: 'upper', expected: 55.8041, tolerance: 0.002, because: ROUNDED_D2 },
  { label: 'lower limit', arguments: 'lower', expected: 45.8159, tolerance: 0.002, because: ROUNDED_D2 },
].map((it) => ({ ...it, arguments: it.arguments as Part, source: HANDBOOK, verified: 'read' as const }));

/** Points [x, y] of NIST's dataset Norris, linear regression of the lower level of difficulty. */
export const NORRIS: ReadonlyArray<readonly [x: number, y: number]> = [
  ...([
    [0.2, 0.1],
    [337.4, 338.8],
    [118.2, 118.1],
    [884.6, 888],
    [10.1, 9.2],
    [226.5, 228.1],
  ] as const),
  ...([
    [666.3, 668.5],
    [996.3, 998.5],
    [448.6, 449.1],
    [777, 778.9],
    [558.2, 559.2],
    [0.4, 0.3],
  ] as const),
  ...([
    [0.6, 0.1],
    [775.5, 778.1],
    [666.9, 668.8],
    [338, 339.3],
    [447.5, 448.9],
    [11.6, 10.8],
  ] as const),
  ...([
    [556, 557.7],
    [228.1, 228.3],
    [995.8, 998],
    [887.6, 888.8],
    [120.2, 119.6],
    [0.3, 0.3],
  ] as const),
  ...([
    [0.3, 0.6],
    [556.8, 557.6],
    [339.1, 339.3],
    [887.2, 888],
    [999, 998.5],
    [779, 778.9],
  ] as const),
  ...([
    [11.1, 10.2],
    [118.3, 117.6],
    [229.2, 228.9],
    [669.1, 668.4],
    [448.9, 449.2],
    [0.5, 0.2],
  ] as const),
];

const CERTIFIED =
  'NIST StRD, Linear Least Squares Regression, Norris: certified values, as quoted in public test suites';
const DOUBLE = 'floating point';

/** Its certified values. */
export const NORRIS_LINE = [
  { label: 'slope', arguments: 'slope', expected: 1.00211681802045, tolerance: 1e-13, because: DOUBLE },
  { label: 'intercept', arguments: 'intercept', expected: -0.262323073774029, tolerance: 1e-11, because: DOUBLE },
  {
    label: 'standard deviation of the slope',
    arguments: 'slopeUncertainty',
    expected: 0.429796848199937e-3,
    tolerance: 1e-14,
    because: DOUBLE,
  },
  {
    label: 'residual standard deviation',
    arguments: 'residualDeviation',
    expected: 0.884796396144373,
    tolerance: 1e-11,
    because: DOUBLE,
  },
].map((it) => ({
  ...it,
  arguments: it.arguments as 'slope' | 'intercept' | 'slopeUncertainty' | 'residualDeviation',
  source: CERTIFIED,
  verified: 'secondary' as const,
})) satisfies ReadonlyArray<CheckValue<string>>;

/** Constants of charts for two values, as tables print them. */
export const CHART_CONSTANTS: ReadonlyArray<CheckValue<'d2' | 'D4'>> = [
  {
    label: 'd2',
    arguments: 'd2',
    expected: 1.128,
    tolerance: 5e-4,
    because: 'three decimals',
    source: HANDBOOK,
    verified: 'read',
  },
  {
    label: 'D4',
    arguments: 'D4',
    expected: 3.267,
    tolerance: 6e-4,
    because: 'three decimals, made from rounded ones',
    source: 'Tables of constants for control charts, n = 2',
    verified: 'memory',
  },
];
