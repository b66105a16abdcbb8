import type { Figure } from '../figure.ts';
import { identityOf } from '../metrics.ts';
import { number } from '../numbers.ts';
import { exactOver, productFigure } from '../uncertainty.ts';
import { MILLI } from '../unit-factors.ts';
import { radiantExposure, timeForRadiantExposure } from './radiant-exposure.ts';

/** Seconds in the minute that readers see exposures by. */
const MINUTE = 60;

/** Radiant exposure at the mean irradiance in each minute, J/cm2. */
export function exposureEachMinuteFigure(session: string, mean: Figure): Figure {
  return productFigure(
    {
      ...identityOf('radiant-exposure-minute', session),
      basis: 'derived',
      calculation: `H = ${number(mean.value)} mW/cm² × ${MINUTE} s ÷ 1000 = ${number(radiantExposure(mean.value, MINUTE))} J/cm²`,
    },
    [{ figure: mean, power: 1 }],
    MINUTE / MILLI,
  );
}

/** Time for each 1 J/cm2 at the mean irradiance, s. */
export function timeEachJouleFigure(session: string, mean: Figure): Figure {
  return exactOver(
    {
      ...identityOf('time-per-joule', session),
      basis: 'derived',
      calculation: `t = 1000 × 1 J/cm² ÷ ${number(mean.value)} mW/cm² = ${number(timeForRadiantExposure(1, mean.value))} s`,
    },
    MILLI,
    mean,
  );
}
