import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CHECKS, flagsOf } from '../../../src/measure/checks/index.ts';
import { checkQuantity } from '../../../src/measure/irradiance/claims.ts';
import { say } from '../../../src/words/say.ts';
import { figure, told } from '../make.ts';
import { facts } from './facts.ts';

const FOLDER = new URL('../../../src/measure/checks/', import.meta.url);

/** Everything wrong at once. */
const ODD = facts({
  values: {
    'peak-irradiance-combined': 70,
    'peak-irradiance-red': 75,
    'peak-irradiance-near-infrared': 50,
    'mean-irradiance': 80,
    'efficiency-combined': 90,
    'magnetic-field-off': 5,
    'flicker-combined': 0.14,
    'mains-draw-combined': 300,
    'mains-draw-red': 50,
    'mains-draw-near-infrared': 50,
    'near-infrared-share-red': 45,
    'wavelength-red': 850,
    'sound-on': 32,
    'sound-off': 44,
  },
  gridPoints: [78, 80, 79, 81, 240, 82, 77, 80, 78],
  field: { width: 50, height: 100 },
  priceDate: '2025-01-01',
  calibrations: [
    { instrument: 'irradiance meter', readOn: '2026-03-02', due: '2025-01-10', reads: ['mean-irradiance'] },
  ],
  standards: [
    {
      id: 'lamp',
      standard: 'Lamp',
      instrument: 'irradiance meter',
      near: { date: '2026-03-02', value: 38, side: 'below', limit: 40, centre: 41, share: -7.3, unit: 'mW/cm²' },
      days: 7,
      reads: ['mean-irradiance'],
      isAll: true,
    },
  ],
  distances: [{ of: 'bench', value: 6, at: ['session', 'distance'], concerns: ['mean-irradiance'] }],
  warmUp: 20,
  ledCount: 10,
  instruments: [
    { kind: 'irradiance', name: undefined, metrics: ['mean-irradiance'] },
    { kind: 'magnetic', name: 'coil', lowest: 10, step: 1, metrics: ['magnetic-field-off'] },
    { kind: 'mains', name: 'wattmeter', lowest: 0.1, highest: 300, step: 0.1, metrics: ['mains-draw-combined'] },
    { kind: 'flicker', name: 'sampler', lowest: 0.5, step: 0.1, metrics: ['flicker-combined'] },
  ],
  rooms: new Map([['magnetic-field-off', { usual: 0.5, count: 9 }]]),
  claims: [checkQuantity('irradiance', 170, figure(70, [], 'peak-irradiance-combined', 'mW/cm²'), 'under')],
});

/** What can't be odd at the same time: an outlier needs more points. */
const FEW = facts({ gridPoints: [80] });

describe('the list of checks', () => {
  test('holds each file of the folder once, by its name', () => {
    const files = readdirSync(FOLDER)
      .map((name) => name.replace(/\.ts$/, ''))
      .filter((name) => !['as-shown', 'check', 'index', 'smaller-unit'].includes(name));
    expect(CHECKS.map((check) => check.id).toSorted()).toEqual(files.toSorted());
  });

  test('says above each check what it guards against', () => {
    for (const { id } of CHECKS) {
      const source = readFileSync(new URL(`${id}.ts`, FOLDER), 'utf8');
      expect(source, id).toMatch(/\.\s+\*\/\nexport const \w+: Check = /);
    }
  });
});

describe('all checks together', () => {
  test('raise nothing where nothing is odd', () => {
    expect(flagsOf(facts())).toEqual([]);
  });

  test('raise a flag each where everything is, in the order of the list', () => {
    const raised = [...new Set(flagsOf(ODD).map((flag) => flag.check))];
    const [few] = flagsOf(FEW);
    expect(few?.check).toBe('few-points');
    expect(raised).toEqual(CHECKS.map((check) => check.id).filter((id) => id !== few?.check));
  });

  test('give whole sentences with numbers, and name the figures they concern', () => {
    for (const flag of flagsOf(ODD)) {
      expect(say(flag.finding)).toMatch(/^[A-Z].*\d.*\.$/);
      for (const it of [flag.finding, flag.hint]) {
        expect(told(it)).not.toMatch(/NaN|undefined|null|object/);
        expect(JSON.stringify(it ?? {})).not.toContain('null');
      }
      expect(flag.concerns.length).toBeGreaterThan(0);
    }
  });

  test('raise nothing where nothing is known', () => {
    const nothing = facts({
      values: Object.fromEntries(
        ['peak-irradiance-combined', 'peak-irradiance-red', 'peak-irradiance-near-infrared', 'mean-irradiance']
          .concat(['efficiency-combined', 'efficiency-red'])
          .map((metric) => [metric, undefined]),
      ),
      gridPoints: [],
      field: undefined,
      housing: undefined,
      priceDate: undefined,
      calibrations: [],
    });
    expect(flagsOf(nothing)).toEqual([]);
  });

  test('leave the facts as they are', () => {
    const before = JSON.stringify(ODD);
    flagsOf(ODD);
    expect(JSON.stringify(ODD)).toBe(before);
  });
});
