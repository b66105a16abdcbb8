import { carriedOf } from '../../../content/schema/carried.ts';
import { publishedPanels } from '../data-parts.ts';
import { PANEL_FIELD, REQUIRED, SESSION_FIELD, type Table, TO_PANEL, TO_SESSION } from './table.ts';

/** A row a session: under what conditions its readings were taken. */
export const SESSIONS_TABLE: Table<'sessions'> = {
  name: 'sessions',
  title: 'Sessions on the bench',
  description: 'Every session of every published panel, with what its readings were taken under.',
  fields: [
    PANEL_FIELD,
    SESSION_FIELD,
    { name: 'current', type: 'boolean', description: 'The panel’s newest, whose figures rank.', constraints: REQUIRED },
    {
      name: 'method_version',
      type: 'integer',
      description: 'Version of the bench procedure that was followed.',
      constraints: REQUIRED,
    },
    { name: 'distance', type: 'number', unit: 'cm', description: 'From the LED plane to the sensor.' },
    {
      name: 'reference_conditions',
      type: 'boolean',
      description: 'Taken at the guide’s own distance and under its version.',
      constraints: REQUIRED,
    },
    { name: 'warm_up', type: 'number', unit: 's', description: 'From switching on to the first reading.' },
    { name: 'room_temperature', type: 'number', unit: '°C', description: 'Air temperature at the bench.' },
  ],
  primaryKey: ['panel', 'session'],
  foreignKeys: [TO_PANEL],
  *rows(ledger) {
    for (const { slug, sessions } of publishedPanels(ledger)) {
      for (const [i, { date, conditions, used }] of sessions.entries()) {
        yield [
          slug,
          date,
          i === 0,
          conditions.methodVersion,
          conditions.distance,
          conditions.isReference,
          used.warmUp?.value ?? null,
          used.roomTemperature?.value ?? null,
        ];
      }
    }
  },
};

/** What sessions did not read again. */
export const CARRIED_TABLE: Table<'carried'> = {
  name: 'carried',
  title: 'Readings carried over',
  description: 'What a session did not read again: each block with the day of the session that has its readings.',
  fields: [
    PANEL_FIELD,
    SESSION_FIELD,
    { name: 'block', type: 'string', description: 'Block of readings, as paths begin with.', constraints: REQUIRED },
    { name: 'from', type: 'date', description: 'Day of the session that read it.', constraints: REQUIRED },
  ],
  primaryKey: ['panel', 'session', 'block'],
  foreignKeys: [TO_SESSION],
  *rows(ledger) {
    for (const { slug, sessions } of publishedPanels(ledger)) {
      for (const session of sessions) {
        for (const { name, from } of carriedOf(session.readings)) yield [slug, session.date, name, from];
      }
    }
  },
};

/** The meters of each session. */
export const METERS_TABLE: Table<'meters'> = {
  name: 'meters',
  title: 'Meters of each session',
  description: 'Which meter read what, and the calibration that counted on that day.',
  fields: [
    PANEL_FIELD,
    SESSION_FIELD,
    { name: 'reads', type: 'string', description: 'What was read with it.', constraints: REQUIRED },
    { name: 'meter', type: 'string', description: 'The meter, as its file is named.', constraints: REQUIRED },
    { name: 'read_on', type: 'date', description: 'Day of the readings, where it is not the session’s.' },
    { name: 'calibrated', type: 'date', description: 'Day of the calibration that counted; none before the first.' },
    { name: 'holds_until', type: 'date', description: 'Last day of that calibration.' },
  ],
  primaryKey: ['panel', 'session', 'reads'],
  foreignKeys: [TO_SESSION],
  *rows(ledger) {
    for (const { slug, sessions } of publishedPanels(ledger)) {
      for (const { date, instruments } of sessions) {
        for (const { kind, quantityId, readOn, calibration } of instruments) {
          const day = readOn === date ? null : readOn;
          yield [slug, date, kind, quantityId, day, calibration?.date ?? null, calibration?.due ?? null];
        }
      }
    }
  },
};
