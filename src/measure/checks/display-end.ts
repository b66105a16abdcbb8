import type { Unit } from '../figure.ts';
import type { MetricId } from '../metrics.ts';
import { asShown } from './as-shown.ts';
import type { Check, RaisedFlag } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** The instrument's name; value and the highest that it can show, in that unit. */
    'reading-at-display-end': { value: number; unit: Unit; instrument: string; highest: number };
  }
}

/** What converting a unit may leave of a reading that is a step below the end itself. */
const DUST = 1e-9;

/** Of these the end of the range is no end of what can be read: 100 % of flicker, or the last wavelength of a spectrum. */
const HAVE_NO_END = new Set(['flicker', 'spectrum']);

/** A reading at the end of what the instrument can show: there a display stays, however much more there is. */
export const displayEnd: Check = {
  id: 'display-end',
  run: (facts) =>
    facts.instruments.flatMap(({ highest, step, name, kind, metrics }): RaisedFlag[] => {
      if (highest === undefined || step === undefined || name === undefined || HAVE_NO_END.has(kind)) return [];
      const isAtEnd = (value: number) => value >= (highest - step) * (1 - DUST);
      const flag = (value: number, unit: Unit, metric: MetricId): RaisedFlag => ({
        severity: 'doubt',
        finding: { code: 'reading-at-display-end', value, unit, instrument: name, highest },
        hint: { code: 'look-at-unit-and-range' },
        concerns: [metric],
      });
      const readings = metrics.flatMap((metric) => {
        const it = facts.figure(metric);
        if (!it || it.bound || metric === 'mean-irradiance') return [];
        const value = asShown(facts, it);
        return isAtEnd(value) ? [flag(value, it.unit, metric)] : [];
      });
      if (kind !== 'irradiance') return readings;
      const highestPoint = Math.max(...facts.gridPoints.filter((it) => it !== null));
      return isAtEnd(highestPoint) ? [...readings, flag(highestPoint, 'mW/cm²', 'mean-irradiance')] : readings;
    }),
};
