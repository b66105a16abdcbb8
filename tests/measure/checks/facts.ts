import type { Facts } from '../../../src/measure/checks/check.ts';
import type { Figure } from '../../../src/measure/figure.ts';
import { figure } from '../make.ts';

/** A session at which nothing is odd; values are those of its figures by metric. */
const VALUES: Record<string, number> = {
  'peak-irradiance-combined': 100,
  'peak-irradiance-red': 55,
  'peak-irradiance-near-infrared': 50,
  'mean-irradiance': 80,
  'efficiency-combined': 30,
  'efficiency-red': 32,
};

export type Change = Partial<Omit<Facts, 'figure'>> & { values?: Record<string, number | undefined> };

/** The facts of such a session, with some of them changed; a value of undefined takes a figure away. */
export function facts({ values, ...part }: Change = {}): Facts {
  const all: Record<string, number | undefined> = { ...VALUES, ...values };
  return {
    figure: (metric: string): Figure | undefined => {
      const value = all[metric];
      return value === undefined ? undefined : figure(value, [], metric);
    },
    gridPoints: [78, 80, 79, 81, 86, 82, 77, 80, 78],
    gridColumns: 3,
    field: { width: 28, height: 61 },
    housing: { width: 31, height: 66 },
    priceDate: '2026-03-01',
    today: '2026-03-20',
    sessionDate: '2026-03-02',
    calibrations: [
      { instrument: 'irradiance meter', readOn: '2026-03-02', due: '2027-01-10', reads: ['mean-irradiance'] },
    ],
    standards: [],
    claims: [],
    reference: 15.24,
    distances: [],
    warmUp: 1800,
    ledCount: 200,
    instruments: [],
    rooms: new Map(),
    ...part,
  };
}
