import { type Check, words } from './check.ts';
import { looksLikeFraction } from './flicker-fraction.ts';

export const belowReach: Check = {
  id: 'below-reach',
  guards: 'A reading under the lowest that the meter can show, which is a bound and no value.',
  run: ({ instruments, figure, gridPoints }) =>
    instruments.flatMap((instrument) => {
      const { lowest, name, kind } = instrument;
      if (lowest === undefined || name === undefined) return [];
      const isUnder = (value: number) => value < lowest * (1 - 1e-9);
      const flag = (value: number, unit: string, metric: string) => ({
        check: 'below-reach',
        severity: 'doubt' as const,
        finding: `A reading of ${words(value)} ${unit} is below what the ${name} can show, ${words(lowest)} ${unit}. It is known to be small, not how small.`,
        hint: `write \`<${words(lowest)}\` with its unit, or look at the unit and at the meter's range again`,
        concerns: [metric],
      });
      const readings = instrument.metrics.flatMap((metric) => {
        const it = figure(metric);
        if (!it || it.bound || metric === 'mean-irradiance' || !isUnder(it.value)) return [];
        return kind === 'flicker' && looksLikeFraction(it.value, instrument) ? [] : [flag(it.value, it.unit, metric)];
      });
      if (kind !== 'irradiance') return readings;
      const lowestPoint = Math.min(...gridPoints.filter((it) => it !== null));
      const grid = isUnder(lowestPoint)
        ? [
            {
              ...flag(lowestPoint, 'mW/cm²', 'mean-irradiance'),
              hint: 'look at the unit and at the meter’s range again',
            },
          ]
        : [];
      return [...readings, ...grid];
    }),
};
