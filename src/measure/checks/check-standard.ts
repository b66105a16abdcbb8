import type { Check, RaisedFlag, StandardFact } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** Days, `YYYY-MM-DD`; values in `unit`. */
    'standard-beyond-limits': {
      id: string;
      standard: string;
      instrument: string;
      date: string;
      session: string;
      side: 'above' | 'below';
      value: number;
      /** The limit that it lies beyond, and the centre line. */
      limit: number;
      centre: number;
      /** How far from the centre line, %; undefined where a share means nothing. */
      share: number | undefined;
      unit: string;
    };
    'standard-not-read': { id: string; standard: string; instrument: string; session: string; days: number };
  }
}

/**
 * The instrument's check standard was beyond its control limits about the day of the session: what the session read with
 * it is in doubt. Where the standard is kept and was not read, nothing is known of the day, which is a note.
 */
export const checkStandard: Check = {
  id: 'check-standard',
  run: ({ standards, sessionDate }) => standards.flatMap((it) => flagOf(it, sessionDate)),
};

function flagOf({ id, standard, instrument, near, days, reads, isAll }: StandardFact, session: string): RaisedFlag[] {
  const concerned = {
    concerns: [...reads],
    at: ['session', 'date'],
    // What cancels the instrument's error altogether, as an evenness does, does not rest on it.
    ...(isAll && ({ isNotHandedOn: true } as const)),
  };
  if (!near) {
    return [
      {
        severity: 'note',
        finding: { code: 'standard-not-read', id, standard, instrument, session, days },
        ...concerned,
      },
    ];
  }
  return [
    {
      severity: 'doubt',
      finding: { code: 'standard-beyond-limits', id, standard, instrument, session, ...near },
      ...concerned,
    },
  ];
}
