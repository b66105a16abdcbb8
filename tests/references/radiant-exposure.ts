import type { CheckValue } from './check-value.ts';

const EXACT = { tolerance: 1e-12, because: 'whole numbers; only the last binary digit may differ' } as const;
const common = { ...EXACT, source: 'H = E t, in J/cm², mW/cm² and s', verified: 'computed' } as const;

/** Irradiance and time to radiant exposure, J/cm². */
export const EXPOSURES: readonly CheckValue<{ irradiance: number; seconds: number }>[] = [
  { label: '100 mW/cm² for 600 s', arguments: { irradiance: 100, seconds: 600 }, expected: 60, ...common },
  { label: '50 mW/cm² for 600 s', arguments: { irradiance: 50, seconds: 600 }, expected: 30, ...common },
];

/** Radiant exposure and irradiance to time, s. */
export const TIMES: readonly CheckValue<{ exposure: number; irradiance: number }>[] = [
  { label: '10 J/cm² at 40 mW/cm²', arguments: { exposure: 10, irradiance: 40 }, expected: 250, ...common },
];
