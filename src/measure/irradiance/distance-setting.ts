import type { BudgetComponent } from '../figure.ts';
import type { LitField } from '../instrument/angular-response.ts';
import { rectangular, typeB } from '../uncertainty.ts';

declare module '../statement.ts' {
  interface StatementData {
    'distance-setting': object;
    /** Half-width and distance, cm; irradiance falls as the distance to the power `exponent`. */
    'distance-as-set': { halfWidth: number; distance: number; exponent: number };
  }
}

/**
 * How strongly irradiance answers to the distance: p in E ~ z^-p, at distance z from a uniform Lambertian
 * disc of the same area, on its axis. With E ~ R^2 / (R^2 + z^2), p = 2 z^2 / (R^2 + z^2): 0 at contact, 2
 * far away. Narrow beams answer less, so this errs on the wide side for them.
 *
 * Source: the disc's closed form, any radiometry handbook (from memory); differentiated here.
 *
 * @param distance cm
 * @param area LED area, cm2; undefined takes the point source's 2, the largest possible
 */
export function distanceExponent(distance: number, area: number | undefined): number {
  if (area === undefined) return 2;
  const radiusSquared = area / Math.PI;
  return (2 * distance ** 2) / (radiusSquared + distance ** 2);
}

/** The distance as it was set in a session. */
export interface DistanceSetting {
  /** cm */
  distance: number;
  /** Half-width of the setting, cm; rectangular. */
  halfWidth: number;
  /** LED area, cm2, where it is known. */
  area: number | undefined;
  /** Sides of the LED field, cm, where they are known; from them follow the angles of the light. */
  field?: { width: number; height: number };
}

/** The field with its distance, as the angular error of an instrument asks for it; undefined where its sides are not known. */
export function litField({ distance, field }: DistanceSetting): LitField | undefined {
  return field && { ...field, distance };
}

/** Error of the distance: one a session, since the stand stays where it was put. Negative: farther is dimmer. */
export function distanceComponents(setting: DistanceSetting, session: string, value: number): BudgetComponent[] {
  if (setting.halfWidth === 0) return [];
  const p = distanceExponent(setting.distance, setting.area);
  return [
    {
      source: typeB({
        key: `${session}/distance`,
        what: { code: 'distance-setting' },
        distribution: 'rectangular',
        evaluation: { code: 'distance-as-set', halfWidth: setting.halfWidth, distance: setting.distance, exponent: p },
      }),
      contribution: (-p * value * rectangular(setting.halfWidth)) / setting.distance,
    },
  ];
}
