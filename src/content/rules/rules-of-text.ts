import { calibrationStated } from './calibration-stated.ts';
import { carriedReadings } from './carried-readings.ts';
import { currenciesKnown } from './currencies-known.ts';
import { daysNotAhead } from './days-not-ahead.ts';
import { emittersFit } from './emitters-fit.ts';
import { evenGrids } from './even-grids.ts';
import { fieldsOfTheirKind } from './fields-of-their-kind.ts';
import { formerNames } from './former-names.ts';
import { guideThere } from './guide-there.ts';
import { instrumentUnits } from './instrument-units.ts';
import { instrumentsFit } from './instruments-fit.ts';
import { ledsFit } from './leds-fit.ts';
import { makersKnown } from './makers-known.ts';
import { methodPages } from './method-pages.ts';
import { modelOnce } from './model-once.ts';
import { onePriceADay } from './one-price-a-day.ts';
import { oneSessionADay } from './one-session-a-day.ts';
import { procedureFollowed } from './procedure-followed.ts';
import { procedureKnown } from './procedure-known.ts';
import { ratesOnce } from './rates-once.ts';
import { readingsWithinRange } from './readings-within-range.ts';
import type { Rule } from './rule.ts';
import { sessionAfterCalibration } from './session-after-calibration.ts';
import { sharesInPercent } from './shares-in-percent.ts';
import { sizeClasses } from './size-classes.ts';
import { soundInDecibels } from './sound-in-decibels.ts';
import { standardInstruments } from './standard-instruments.ts';
import { standardReadings } from './standard-readings.ts';
import { thousandsPoint } from './thousands-point.ts';
import { withdrawnWithReason } from './withdrawn-with-reason.ts';

/** Rules that need no more than what files say, so that a browser can hold them too. */
export const RULES_OF_TEXT: readonly Rule[] = [
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
  emittersFit,
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
  formerNames,
  readingsWithinRange,
  calibrationStated,
  sessionAfterCalibration,
  sharesInPercent,
  standardInstruments,
  standardReadings,
];
