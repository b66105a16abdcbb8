import { describe, expect, test } from 'vitest';
import { claimsHeld } from '../../../src/measure/checks/claims-held.ts';
import {
  type ClaimCheck,
  checkQuantity,
  checkWavelength,
  notComparable,
} from '../../../src/measure/irradiance/claims.ts';
import { figure, line } from '../make.ts';
import { facts } from './facts.ts';

const measured = figure(100, [line('sensor', 5)], 'peak-irradiance-combined', 'mW/cm²');
const wavelength = figure(672, [], 'wavelength-red', 'nm');
const flags = (claim: ClaimCheck | undefined) => claimsHeld.run(facts({ claims: claim ? [claim] : [] }));

describe('a claim', () => {
  test('that the panel is under or over is noted', () => {
    expect(flags(checkQuantity('irradiance', 170, measured, 'under'))).toMatchObject([
      {
        severity: 'note',
        finding: {
          code: 'claim-not-held',
          subject: 'irradiance',
          claimed: 170,
          unit: 'mW/cm²',
          measured: 100,
          outcome: 'missed',
          difference: expect.closeTo(-41.176, 3),
        },
        concerns: ['peak-irradiance-combined'],
      },
    ]);
    expect(flags(checkQuantity('irradiance', 80, measured, 'under'))[0]?.finding).toMatchObject({
      code: 'claim-not-held',
      outcome: 'apart',
      difference: 25,
    });
  });

  test('of a wavelength that is off is noted', () => {
    expect(flags(checkWavelength([660], wavelength))).toMatchObject([
      {
        finding: {
          code: 'claim-not-held',
          subject: 'wavelength',
          claimed: 660,
          unit: 'nm',
          measured: 672,
          outcome: 'off',
          difference: 12,
        },
        concerns: ['wavelength-red'],
      },
    ]);
  });

  test('that holds, or that nothing can be held against, is not', () => {
    expect(flags(checkQuantity('irradiance', 102, measured, 'under'))).toEqual([]);
    expect(flags(checkWavelength([670], wavelength))).toEqual([]);
    expect(flags(notComparable('irradiance', 150, 'mW/cm²', { code: 'claimed-without-distance' }))).toEqual([]);
  });

  test('is noted each for itself', () => {
    const claims = [
      checkQuantity('irradiance', 170, measured, 'under'),
      checkQuantity('irradiance', 80, measured, 'under'),
    ];
    expect(claimsHeld.run(facts({ claims }))).toHaveLength(2);
    expect(claimsHeld.run(facts({ claims: [] }))).toEqual([]);
  });
});
