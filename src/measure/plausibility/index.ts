import type { Flag } from '../figure.ts';
import { calibrationValid } from './calibration-valid.ts';
import type { Check, Facts } from './check.ts';
import { claimsHeld } from './claims-held.ts';
import { combinedAboveModes } from './combined-above-modes.ts';
import { efficiencyPossible } from './efficiency-possible.ts';
import { fieldWithinHousing } from './field-within-housing.ts';
import { gridOutlier } from './grid-outlier.ts';
import { modesAddUp } from './modes-add-up.ts';
import { peakAboveMean } from './peak-above-mean.ts';
import { priceAge } from './price-age.ts';
import { unitSlips } from './unit-slips.ts';

export type { Check, Facts } from './check.ts';

/** All plausibility checks, in the order in which their flags are shown. */
export const CHECKS: readonly Check[] = [
  efficiencyPossible,
  peakAboveMean,
  combinedAboveModes,
  modesAddUp,
  gridOutlier,
  fieldWithinHousing,
  calibrationValid,
  claimsHeld,
  priceAge,
  unitSlips,
];

/** Runs every check; all flags, none left out. */
export function flagsOf(facts: Facts): Flag[] {
  return CHECKS.flatMap((check) => check.run(facts));
}
