import { describe, expect, test } from 'vitest';
import type { StandardFact } from '../../../src/measure/checks/check.ts';
import { checkStandard } from '../../../src/measure/checks/check-standard.ts';
import { facts } from './facts.ts';

const LAMP: StandardFact = {
  id: 'lamp',
  standard: 'Lamp',
  instrument: 'Meter',
  near: { date: '2026-03-02', value: 42.6, side: 'above', limit: 42.2, centre: 41.2, share: 3.4, unit: 'mW/cm²' },
  days: 7,
  reads: ['mean-irradiance', 'optical-power'],
  isAll: true,
};
const flags = (...standards: StandardFact[]) => checkStandard.run(facts({ standards, sessionDate: '2026-03-02' }));

describe('a check standard', () => {
  test('beyond its limits puts in doubt what rests on its meter, and nothing else', () => {
    expect(flags(LAMP)).toEqual([
      {
        severity: 'doubt',
        finding: {
          code: 'standard-beyond-limits',
          id: 'lamp',
          standard: 'Lamp',
          instrument: 'Meter',
          session: '2026-03-02',
          ...LAMP.near,
        },
        concerns: ['mean-irradiance', 'optical-power'],
        at: ['session', 'date'],
        isNotHandedOn: true,
      },
    ]);
  });

  test('hands the doubt on where what rests on the meter is not known', () => {
    expect(flags({ ...LAMP, isAll: false })[0]).not.toHaveProperty('isNotHandedOn');
  });

  test('that was not read is a note', () => {
    expect(flags({ ...LAMP, near: undefined })).toMatchObject([
      { severity: 'note', finding: { code: 'standard-not-read', session: '2026-03-02', days: 7 } },
    ]);
  });

  test('that held, or that nobody keeps, says nothing', () => {
    expect(flags()).toEqual([]);
  });
});
