import { MILLI } from '../unit-factors.ts';

/**
 * Radiant exposure at the surface, J/cm2: irradiance (mW/cm2) times time (s) / 1000. For pulsed light the
 * irradiance is the time average. It says what arrives, not what is absorbed.
 *
 * @example radiantExposure(100, 600) // 60
 */
export function radiantExposure(irradiance: number, seconds: number): number {
  return (irradiance * seconds) / MILLI;
}

/**
 * Time to a radiant exposure, s: 1000 H / E, from J/cm2 and mW/cm2. Infinity at no irradiance.
 *
 * @example timeForRadiantExposure(10, 40) // 250
 */
export function timeForRadiantExposure(exposure: number, irradiance: number): number {
  return (MILLI * exposure) / irradiance;
}
