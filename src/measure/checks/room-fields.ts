import type { Check, RaisedFlag } from './check.ts';
import { FIELDS, type FieldKind, SMALLER_UNITS, type SmallerUnit } from './smaller-unit.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** What was read, how many times the middle of how many others it is, and that middle. */
    'room-unlike-others': SmallerUnit & {
      field: FieldKind;
      value: number;
      times: number;
      count: number;
      usual: number;
    };
    'smaller-unit-meant': SmallerUnit & { value: number };
  }
}

/** How far around the factor between two units a room may lie from the others and still look like a slip. Our own choice. */
export const AROUND_FACTOR = 2;
/** Fewer other sessions say nothing of the room. Our own choice. */
export const FEWEST_ROOMS = 3;

/**
 * A room that differs from those of the other sessions by the factor between two units: the room of a bench changes
 * little from session to session, so that such a jump is a slip.
 */
export const roomFields: Check = {
  id: 'room-fields',
  run: ({ figure, rooms }) =>
    FIELDS.flatMap((field): RaisedFlag[] => {
      const off = `${field}-field-off` as const;
      const it = figure(off);
      const others = rooms.get(off);
      if (!it || it.bound === 'below' || !others || others.count < FEWEST_ROOMS) return [];
      const other = SMALLER_UNITS[field];
      const { usual, count } = others;
      const times = it.value / usual;
      if (!(times >= other.factor / AROUND_FACTOR && times <= other.factor * AROUND_FACTOR)) return [];
      return [
        {
          severity: 'doubt',
          finding: { code: 'room-unlike-others', ...other, field, value: it.value, times, count, usual },
          hint: { code: 'smaller-unit-meant', ...other, value: it.value },
          concerns: [off, `${field}-field-on`],
        },
      ];
    }),
};
