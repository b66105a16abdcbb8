import type { Figure } from '../figure.ts';
import { identityOf } from '../metrics.ts';
import { number } from '../numbers.ts';
import { productFigure } from '../uncertainty.ts';
import { MILLI } from '../unit-factors.ts';

/**
 * Cost of one hour's use, base currency an hour: mains draw with both channels on (W) times the tariff (base
 * currency per kWh). The tariff is exact and dated.
 */
export function runningCostFigure(session: string, draw: Figure, tariff: number, baseCurrency: string): Figure {
  const value = (draw.value / MILLI) * tariff;
  return productFigure(
    {
      ...identityOf('running-cost', session),
      basis: 'derived',
      calculation: `${number(draw.value)} W ÷ 1000 × ${tariff} ${baseCurrency}/kWh = ${number(value)} ${baseCurrency}/h`,
    },
    [{ figure: draw, power: 1 }],
    tariff / MILLI,
  );
}
