import { describe, expect, test } from 'vitest';
import { claimsHeld } from '../../../src/measure/checks/claims-held.ts';
import { checkQuantity, checkWavelength, notComparable } from '../../../src/measure/irradiance/claims.ts';
import { figure, line } from '../make.ts';
import { facts } from './facts.ts';

const measured = figure(100, [line('sensor', 5)], 'peak-irradiance-combined', 'mW/cm²');
const wavelength = figure(672, [], 'wavelength-red', 'nm');
const flags = (claim: ReturnType<typeof checkWavelength>) => claimsHeld.run(facts({ claims: claim ? [claim] : [] }));

describe('a claim', () => {
  test('that the panel is under or over is noted', () => {
    expect(flags(checkQuantity('irradiance', 170, measured, 'under'))).toMatchObject([
      {
        severity: 'note',
        text: 'The maker claims irradiance of 170 mW/cm²; measured 100 mW/cm²: 41 % under the claim: missed.',
        concerns: ['peak-irradiance-combined'],
      },
    ]);
    expect(flags(checkQuantity('irradiance', 80, measured, 'under'))[0]?.finding).toContain('25 % over the claim');
  });

  test('of a wavelength that is off is noted', () => {
    expect(flags(checkWavelength([660], wavelength))).toMatchObject([
      {
        text: 'The maker claims a wavelength 660 nm; measured 672 nm: off by 12 nm, to the longer side.',
        concerns: ['wavelength-red'],
      },
    ]);
  });

  test('that holds, or that nothing can be held against, is not', () => {
    expect(flags(checkQuantity('irradiance', 102, measured, 'under'))).toEqual([]);
    expect(flags(checkWavelength([670], wavelength))).toEqual([]);
    expect(flags(notComparable('irradiance', 150, 'mW/cm²', 'claimed at contact'))).toEqual([]);
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
