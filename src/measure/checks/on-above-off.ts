import type { MetricId } from '../metrics.ts';
import type { Check, RaisedFlag } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    'on-below-off': { of: 'magnetic' | 'electric' | 'radio' | 'sound'; on: number; off: number; unit: string };
    'on-and-off-swapped': object;
  }
}

/**
 * How far a reading with the panel on may lie under that of the room, by chance and since a room changes: a share of a
 * field, decibels of sound. Our own choices.
 */
export const FIELD_TOLERANCE = 0.25;
export const SOUND_TOLERANCE = 1.5;

const READ = [
  ['magnetic', 'magnetic-field-on', 'magnetic-field-off'],
  ['electric', 'electric-field-on', 'electric-field-off'],
  ['radio', 'radio-field-on', 'radio-field-off'],
  ['sound', 'sound-on', 'sound-off'],
] as const satisfies ReadonlyArray<readonly [string, MetricId, MetricId]>;

/** Less with the panel on than with it off: the two were swapped, or one was mistyped. */
export const onAboveOff: Check = {
  id: 'on-above-off',
  run: ({ figure }) =>
    READ.flatMap(([of, onMetric, offMetric]): RaisedFlag[] => {
      const [on, off] = [figure(onMetric), figure(offMetric)];
      if (!on || !off || on.bound || off.bound) return [];
      const least = of === 'sound' ? off.value - SOUND_TOLERANCE : off.value * (1 - FIELD_TOLERANCE);
      if (on.value >= least) return [];
      return [
        {
          severity: 'doubt',
          finding: { code: 'on-below-off', of, on: on.value, off: off.value, unit: on.unit },
          hint: { code: 'on-and-off-swapped' },
          concerns: [onMetric, offMetric],
        },
      ];
    }),
};
