import type { Unit } from '../figure.ts';
import type { MetricId } from '../metrics.ts';
import type { Check, RaisedFlag } from './check.ts';
import { looksLikeFraction } from './flicker-fraction.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** The instrument's name; value and the lowest that it can show, in that unit. */
    'reading-below-reach': { value: number; unit: Unit; instrument: string; lowest: number };
    'write-a-bound': { lowest: number };
    'look-at-unit-and-range': object;
  }
}

/** What converting a unit may leave of a reading that is the lowest itself. */
const DUST = 1e-9;

/** A reading under the lowest that the instrument can show, which is a bound and no value. */
export const belowReach: Check = {
  id: 'below-reach',
  run: ({ instruments, figure, gridPoints }) =>
    instruments.flatMap((instrument) => {
      const { lowest, name, kind } = instrument;
      if (lowest === undefined || name === undefined) return [];
      const isUnder = (value: number) => value < lowest * (1 - DUST);
      const flag = (value: number, unit: Unit, metric: MetricId): RaisedFlag => ({
        severity: 'doubt',
        finding: { code: 'reading-below-reach', value, unit, instrument: name, lowest },
        hint: { code: 'write-a-bound', lowest },
        concerns: [metric],
      });
      const readings = instrument.metrics.flatMap((metric) => {
        const it = figure(metric);
        if (!it || it.bound || metric === 'mean-irradiance' || !isUnder(it.value)) return [];
        return kind === 'flicker' && looksLikeFraction(it.value, instrument) ? [] : [flag(it.value, it.unit, metric)];
      });
      if (kind !== 'irradiance') return readings;
      const lowestPoint = Math.min(...gridPoints.filter((it) => it !== null));
      if (!isUnder(lowestPoint)) return readings;
      // A point of the grid can't be a bound.
      return [
        ...readings,
        { ...flag(lowestPoint, 'mW/cm²', 'mean-irradiance'), hint: { code: 'look-at-unit-and-range' } },
      ];
    }),
};
