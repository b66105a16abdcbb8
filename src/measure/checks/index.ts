import type { Flag } from '../figure.ts';
import { belowReach } from './below-reach.ts';
import { benchDistance } from './bench-distance.ts';
import { calibrationValid } from './calibration-valid.ts';
import { channelAlone } from './channel-alone.ts';
import { channelBands } from './channel-bands.ts';
import type { Check, Facts } from './check.ts';
import { checkStandard } from './check-standard.ts';
import { claimsHeld } from './claims-held.ts';
import { combinedAboveModes } from './combined-above-modes.ts';
import { displayEnd } from './display-end.ts';
import { drawsAddUp } from './draws-add-up.ts';
import { efficiencyPossible } from './efficiency-possible.ts';
import { fewPoints } from './few-points.ts';
import { fieldSize } from './field-size.ts';
import { fieldWithinHousing } from './field-within-housing.ts';
import { flickerFraction } from './flicker-fraction.ts';
import { gridOutlier } from './grid-outlier.ts';
import { meterNamed } from './meter-named.ts';
import { modesAddUp } from './modes-add-up.ts';
import { onAboveOff } from './on-above-off.ts';
import { peakAboveMean } from './peak-above-mean.ts';
import { priceAge } from './price-age.ts';
import { roomFields } from './room-fields.ts';
import { unitSlips } from './unit-slips.ts';
import { warmUpTime } from './warm-up-time.ts';

export type { Check, DistanceOf, Facts, InstrumentUse, SetDistance, Size, StandardFact } from './check.ts';
export { FIELDS, type FieldKind } from './smaller-unit.ts';

/** All plausibility checks, in the order in which their flags are shown. */
export const CHECKS: readonly Check[] = [
  efficiencyPossible,
  peakAboveMean,
  combinedAboveModes,
  modesAddUp,
  drawsAddUp,
  channelAlone,
  channelBands,
  gridOutlier,
  fewPoints,
  fieldWithinHousing,
  fieldSize,
  benchDistance,
  warmUpTime,
  meterNamed,
  belowReach,
  displayEnd,
  flickerFraction,
  calibrationValid,
  checkStandard,
  claimsHeld,
  priceAge,
  unitSlips,
  roomFields,
  onAboveOff,
];

/** Runs every check; all flags, none left out. */
export function flagsOf(facts: Facts): Flag[] {
  return CHECKS.flatMap((check) => check.run(facts).map((flag) => ({ check: check.id, ...flag })));
}
