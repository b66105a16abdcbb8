import { rawReadings } from '../../calculation/raw-readings.ts';
import { harmless } from '../data-parts.ts';
import { PANEL_FIELD, REQUIRED, SESSION_FIELD, type Table, TO_SESSION } from './table.ts';

/** A row a reading, as it was written down. */
export const READINGS_TABLE: Table<'readings'> = {
  name: 'readings',
  title: 'Raw readings',
  description: 'Every reading as it was written down, those that were struck out too, with the reason.',
  fields: [
    PANEL_FIELD,
    SESSION_FIELD,
    {
      name: 'reading',
      type: 'string',
      description:
        'Where it stands in the session: grid.rows[0][2] is the third point of the first row; [k] at the end counts repeats.',
      constraints: REQUIRED,
    },
    { name: 'value', type: 'number', description: 'In the unit beside it; empty for words.' },
    { name: 'unit', type: 'string', description: 'One unit a quantity, whatever was written.' },
    {
      name: 'bound',
      type: 'string',
      description: 'The meter told only a bound.',
      constraints: { enum: ['below', 'above'] },
    },
    { name: 'written', type: 'string', description: 'As it was written; empty where that is value and unit.' },
    { name: 'struck', type: 'string', description: 'Why the tester does not count it.' },
  ],
  primaryKey: ['panel', 'session', 'reading'],
  foreignKeys: [TO_SESSION],
  ofPanels: () => ({
    given: '',
    *rows({ slug, sessions }) {
      for (const session of sessions) {
        for (const { path, value, unit, bound, written, struck } of rawReadings(session)) {
          yield [
            slug,
            session.date,
            path,
            value ?? null,
            unit ?? null,
            bound ?? null,
            written === `${value} ${unit}` ? null : harmless(written),
            struck === undefined ? null : harmless(struck),
          ];
        }
      }
    },
  }),
};
