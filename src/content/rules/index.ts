import type { Problem } from '../schema/problem.ts';
import { calibrationStated } from './calibration-stated.ts';
import { carriedReadings } from './carried-readings.ts';
import { correctionsFit } from './corrections-fit.ts';
import { currenciesKnown } from './currencies-known.ts';
import { daysNotAhead } from './days-not-ahead.ts';
import { evenGrids } from './even-grids.ts';
import { fieldsOfTheirKind } from './fields-of-their-kind.ts';
import { formerNames } from './former-names.ts';
import { guideThere } from './guide-there.ts';
import { instrumentUnits } from './instrument-units.ts';
import { instrumentsFit } from './instruments-fit.ts';
import { ledsFit } from './leds-fit.ts';
import { linksLeadSomewhere } from './links-lead-somewhere.ts';
import { makersKnown } from './makers-known.ts';
import { methodPages } from './method-pages.ts';
import { modelOnce } from './model-once.ts';
import { onePriceADay } from './one-price-a-day.ts';
import { oneSessionADay } from './one-session-a-day.ts';
import { othersReadable } from './others-readable.ts';
import { photosUsable } from './photos-usable.ts';
import { procedureFollowed } from './procedure-followed.ts';
import { procedureKnown } from './procedure-known.ts';
import { ratesOnce } from './rates-once.ts';
import { readingsWithinRange } from './readings-within-range.ts';
import type { RawCollections, Rule, Surroundings } from './rule.ts';
import { sessionAfterCalibration } from './session-after-calibration.ts';
import { sharesInPercent } from './shares-in-percent.ts';
import { sizeClasses } from './size-classes.ts';
import { soundInDecibels } from './sound-in-decibels.ts';
import { standardInstruments } from './standard-instruments.ts';
import { standardReadings } from './standard-readings.ts';
import { thousandsPoint } from './thousands-point.ts';
import { withdrawnWithReason } from './withdrawn-with-reason.ts';

/** All rules between files. What one file may say by itself stands in its schema. */
export const RULES: readonly Rule[] = [
  guideThere,
  makersKnown,
  instrumentsFit,
  instrumentUnits,
  daysNotAhead,
  currenciesKnown,
  ratesOnce,
  sizeClasses,
  evenGrids,
  ledsFit,
  soundInDecibels,
  fieldsOfTheirKind,
  withdrawnWithReason,
  oneSessionADay,
  carriedReadings,
  methodPages,
  procedureKnown,
  procedureFollowed,
  thousandsPoint,
  onePriceADay,
  modelOnce,
  othersReadable,
  formerNames,
  correctionsFit,
  readingsWithinRange,
  calibrationStated,
  sessionAfterCalibration,
  sharesInPercent,
  standardInstruments,
  standardReadings,
  photosUsable,
  linksLeadSomewhere,
];

/** Everything that one file says wrongly of another, of itself in two places, or of what is around it. */
export function contentProblems(content: RawCollections, around: Surroundings): Problem[] {
  return RULES.flatMap((rule) => rule.run(content, around));
}
