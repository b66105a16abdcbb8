import type { Figure } from '../figure.ts';
import { methodReference } from '../method-versions.ts';
import { number } from '../numbers.ts';
import { productFigure } from '../uncertainty.ts';
import { MILLI } from '../unit-factors.ts';
import { radiantExposure, timeForRadiantExposure } from './radiant-exposure.ts';

/** Seconds in the minute that readers see exposures by. */
const MINUTE = 60;

/** Radiant exposure at the mean irradiance in each minute, J/cm2. */
export function exposureEachMinuteFigure(session: string, mean: Figure): Figure {
  return productFigure(
    {
      id: `${session}/radiant-exposure-minute`,
      metric: 'radiant-exposure-minute',
      unit: 'J/cm²',
      basis: 'derived',
      method: methodReference('radiant-exposure'),
      calculation: `H = ${number(mean.value)} mW/cm² × ${MINUTE} s ÷ 1000 = ${number(radiantExposure(mean.value, MINUTE))} J/cm²`,
    },
    [{ figure: mean, power: 1 }],
    MINUTE / MILLI,
  );
}

/** Time for each 1 J/cm2 at the mean irradiance, s. */
export function timeEachJouleFigure(session: string, mean: Figure): Figure {
  return productFigure(
    {
      id: `${session}/time-per-joule`,
      metric: 'time-per-joule',
      unit: 's',
      basis: 'derived',
      method: methodReference('radiant-exposure'),
      calculation: `t = 1000 × 1 J/cm² ÷ ${number(mean.value)} mW/cm² = ${number(timeForRadiantExposure(1, mean.value))} s`,
    },
    [{ figure: mean, power: -1 }],
    MILLI,
  );
}
