import type { Figure } from '../figure.ts';
import type { MetricId } from '../metrics.ts';
import type { Facts } from './check.ts';

/** A peak as its instrument showed it, before any correction for the light's spectrum; other values as they are. */
export function asShown(facts: Facts, { metric, value }: Figure): number {
  const mode = /^peak-irradiance-(combined|red|near-infrared)$/.exec(metric)?.[1];
  const factor = mode && facts.figure(`mismatch-factor-${mode}` as MetricId);
  return factor ? value / factor.value : value;
}
