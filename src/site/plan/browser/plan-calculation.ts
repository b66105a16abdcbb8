/** What a session comes to, by the code that the guide was built with. No DOM. */

import { type BodyMap, bodyMap } from '../../../measure/beam/body-map.ts';
import { distanceCurve } from '../../../measure/beam/distance-curve.ts';
import { roundedTo } from '../../../measure/exposure/cautious-end.ts';
import { LONG_EXPOSURE, longestExposureTime } from '../../../measure/exposure/infrared.ts';
import { type ShareThere, shareThere } from '../../../measure/exposure/share-by-distance.ts';
import { timeForRadiantExposure } from '../../../measure/irradiance/radiant-exposure.ts';
import { UNKNOWN_NEARER } from '../../../words/limits/infrared-phrases.ts';
import type { Plan } from './plan-address.ts';
import type { PlanData, PlanPanel, SpreadAt } from './plan-panel.ts';

/** A value with its 95 % interval, where that is known. */
export interface Ranged {
  value: number;
  low?: number;
  high?: number;
}

/** What reaches an eye that looks towards the panel, at a distance: read there, in a range, or not known. */
export type EyeShare =
  | {
      there: Exclude<ShareThere, { kind: 'nearer' }>;
      /** Cautious end of the share of the limit for long exposures, %: the value itself where no interval is known. */
      cautious: number;
      /** Seconds until the limit is used up, at the cautious end; Infinity where the standard limits no time. */
      cautiousSeconds: number;
    }
  /** Why it is not known; where it was read farther away, the seconds of its cautious end there, which are more. */
  | { unknown: string; secondsFartherAway?: number };

export interface Calculated {
  /** Over the LED field, mW/cm². */
  mean: Ranged;
  /** Undefined where single LEDs may show and nobody knows where they are. */
  peak?: Ranged;
  /** Seconds for the radiant exposure; undefined where none is asked for. */
  seconds?: Ranged;
  /** kWh for them, and their cost. */
  energy?: Ranged;
  cost?: Ranged;
  body: BodyMap;
  /** The distance lies beyond those that intervals are known for. */
  isBeyond: boolean;
}

const WATT_SECONDS_A_KWH = 3.6e6;

/** Calculates a plan; the panel has a model. */
export function calculatePlan(panel: PlanPanel, plan: Plan, { tariff }: PlanData): Calculated | undefined {
  const { model, spread, mains } = panel;
  const { cm } = plan;
  if (!model || !spread || cm === undefined) return undefined;
  const [point] = distanceCurve(model, [cm]);
  if (!point) return undefined;
  const mean = ranged(point.mean, spread.mean, cm);
  const seconds = plan.exposure === undefined ? undefined : secondsFor(plan.exposure, mean);
  const energy = seconds && 'value' in mains ? energyOf(mains, seconds) : undefined;
  const distances = spread.mean.map(([distance]) => distance);
  return {
    mean,
    ...(point.peak !== undefined && { peak: ranged(point.peak, spread.peak, cm) }),
    ...(seconds && { seconds }),
    ...(energy && { energy, cost: scaled(energy, tariff.price) }),
    body: bodyMap(model, cm, plan.height),
    isBeyond: cm < Math.min(...distances) || cm > Math.max(...distances),
  };
}

function secondsFor(exposure: number, { value, low, high }: Ranged): Ranged {
  const time = (irradiance: number) => timeForRadiantExposure(exposure, irradiance);
  return {
    value: time(value),
    ...(low !== undefined && high !== undefined && { low: time(high), high: time(low) }),
  };
}

/**
 * Draw and time are read with different instruments, so their relative half-widths add as squares. Without the interval of
 * one of them there is none.
 */
function energyOf(draw: Ranged, time: Ranged): Ranged {
  const energy = (draw.value * time.value) / WATT_SECONDS_A_KWH;
  const both = [draw, time].flatMap(({ value, low, high }) =>
    low === undefined || high === undefined ? [] : [{ below: 1 - low / value, above: high / value - 1 }],
  );
  if (both.length < 2) return { value: energy };
  const below = Math.hypot(...both.map((it) => it.below));
  const above = Math.hypot(...both.map((it) => it.above));
  return { value: energy, low: energy * Math.max(0, 1 - below), high: energy * (1 + above) };
}

/** A value and its interval times a number. */
export function scaled({ value, low, high }: Ranged, by: number): Ranged {
  return {
    value: by * value,
    ...(low !== undefined && { low: by * low }),
    ...(high !== undefined && { high: by * high }),
  };
}

/** A value with the interval that is known for the distances around: straight over the logarithm of the distance. */
export function ranged(value: number, spread: readonly SpreadAt[], distance: number): Ranged {
  // Beyond the last, -1 counts from the end.
  const after = spread.findIndex(([at]) => at >= distance);
  const upper = spread.at(after);
  if (!upper) return { value };
  const lower = after > 0 ? (spread[after - 1] ?? upper) : upper;
  const width = Math.log(upper[0] / lower[0]);
  const part = width > 0 ? Math.log(distance / lower[0]) / width : 0;
  const between = (i: 1 | 2) => lower[i] + part * (upper[i] - lower[i]);
  return { value, low: value * between(1), high: value * between(2) };
}

/** Near-infrared at the eye, by the bounds that the readings with it alone on set; no beam is taken for granted. */
export function eyeShare({ infrared }: PlanPanel, distance: number): EyeShare {
  if ('absent' in infrared) return { unknown: infrared.absent };
  const there = shareThere(infrared.shares, distance);
  const seconds = (share: number) => longestExposureTime((share * LONG_EXPOSURE) / 100);
  if (there.kind === 'nearer') {
    const [nearest] = infrared.shares;
    return {
      unknown: UNKNOWN_NEARER,
      ...(nearest && { secondsFartherAway: seconds(nearest.high) }),
    };
  }
  // Rounded as the guide's own figure of a range is, so that both name one time.
  const cautious = there.kind === 'range' ? roundedTo(there.high, 'high') : there.reading.high;
  return { there, cautious, cautiousSeconds: seconds(cautious) };
}
