import { type Check, words } from './check.ts';

/** How far around the factor between two units a room may lie from the others and still look like a slip. Our own choice. */
export const AROUND_FACTOR = 2;
/** Fewer other sessions say nothing of the room. Our own choice. */
export const FEWEST_ROOMS = 3;

const ROOMS = [
  { metric: 'magnetic-field-off', what: 'magnetic field', unit: 'µT', factor: 10, other: 'mG' },
  { metric: 'electric-field-off', what: 'electric field', unit: 'V/m', factor: 1000, other: 'mV/m' },
  { metric: 'radio-field-off', what: 'radio field', unit: 'mW/m²', factor: 1000, other: 'uW/m2' },
] as const;

/** The room of a bench changes little from session to session; a jump by the factor between two units is a slip. */
export const roomFields: Check = {
  id: 'room-fields',
  guards: 'A room that differs from those of the other sessions by the factor between two units.',
  run: ({ figure, rooms }) =>
    ROOMS.flatMap(({ metric, what, unit, factor, other }) => {
      const it = figure(metric);
      const others = rooms.get(metric);
      if (!it || it.bound === 'below' || !others || others.count < FEWEST_ROOMS) return [];
      const { usual, count } = others;
      const times = it.value / usual;
      if (!(times >= factor / AROUND_FACTOR && times <= factor * AROUND_FACTOR)) return [];
      return [
        {
          check: 'room-fields',
          severity: 'doubt' as const,
          finding: `The ${what} of the room, ${words(it.value)} ${unit}, is ${words(times)} times that of the other ${count} sessions, ${words(usual)} ${unit} in the middle; ${other} are smaller by ${factor}.`,
          hint: `a bare number is in ${unit}: if the meter said ${words(it.value)} ${other}, write \`${words(it.value)} ${other}\`, and look at the reading with the panel on`,
          concerns: [metric, metric.replace('-off', '-on')],
        },
      ];
    }),
};
