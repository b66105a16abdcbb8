/** Readings that limits are held against, for the tests of the figures and of their words. */
import type { FieldReading } from '../../src/measure/exposure/field-reading.ts';
import type { FlickerReading } from '../../src/measure/exposure/flicker-results.ts';
import type { LimitResult } from '../../src/measure/exposure/index.ts';
import type { AxisReading } from '../../src/measure/exposure/infrared-shares.ts';
import { gap } from '../../src/measure/figure.ts';
import { figure, line, vague } from '../measure/make.ts';

/** The result of an id; fails where there is none. */
export function resultOf<Result extends LimitResult>(results: readonly Result[], id: string): Result {
  const found = results.find((it) => it.id === id);
  if (!found) throw new Error(`no result ${id}`);
  return found;
}

/** 0.31 µT at 15 cm, save for what is given. */
export const magnetic = (part: Partial<FieldReading> = {}): FieldReading => ({
  kind: 'magnetic',
  on: figure(0.31, [line('coil', 0.02)], 'magnetic-field-on', 'µT'),
  off: figure(0.05, [line('coil', 0.005)], 'magnetic-field-off', 'µT'),
  distance: '15 cm',
  ...part,
});

export const electric = (value: number, part: Partial<FieldReading> = {}): FieldReading => ({
  kind: 'electric',
  on: figure(value, [line('rod', 1)], 'electric-field-on', 'V/m'),
  off: gap('electric-field-off', { code: 'not-measured' }),
  distance: undefined,
  ...part,
});

export const radio = (value: number): FieldReading => ({
  kind: 'radio',
  on: figure(value, [line('probe', value / 4)], 'radio-field-on', 'mW/m²'),
  off: figure(0.001, [], 'radio-field-off', 'mW/m²'),
  distance: '30 cm',
});

/** A frequency that an instrument showed for a field. */
export const shownFrequency = (value: number) => figure(value, [], 'electric-field-frequency', 'Hz');

/** A modulation depth, %. */
export const depthOf = (value: number, u = 0) =>
  figure(value, u > 0 ? [line('flicker-meter', u)] : [], 'flicker-combined', '%');

/** As the ledger has it: the instrument's file states no uncertainty of the frequency. */
export const frequencyOf = (value: number) => ({
  ...vague(value, 'the meter’s file states none for the frequency', 'flicker-frequency-combined'),
  unit: 'Hz' as const,
});

export const NO_FLICKER: FlickerReading = {
  depth: gap('flicker-combined', { code: 'flicker-not-measured' }),
  frequency: gap('flicker-frequency-combined', { code: 'flicker-frequency-not-recorded' }),
};

/** A highest irradiance with near-infrared alone on, mW/cm², by relative errors. */
export const infraredPeak = (value: number, ...keys: [string, number][]) =>
  figure(
    value,
    keys.map(([key, relative]) => line(key, relative * value)),
    'peak-irradiance-near-infrared',
    'mW/cm²',
  );

/** A reading before the middle: the sensor's error is the same one, the rest its own. */
export const axisReading = (distance: number, value: number, own = 0): AxisReading => ({
  distance,
  irradiance: {
    ...infraredPeak(value, ['sensor', 0.05], [`axis-${distance}`, own]),
    id: `p/d/distances[${distance}].nearInfrared`,
  },
});

/** A sound level, dB(A), whose calibration is shared by both readings. */
export const soundLevel = (value: number, state: 'on' | 'off', shared = 1) =>
  figure(value, [line('calibration', shared), line(`${state}/resolution`, 0.1)], `sound-${state}`, 'dB(A)');
