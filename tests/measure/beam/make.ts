import type { Emitter, Field } from '../../../src/measure/beam/emitter.ts';
import { sharedErrors, takeBeyond, takeReadings } from '../../../src/measure/beam/error-sources.ts';
import type { OpticsInput } from '../../../src/measure/beam/optics-input.ts';
import type { BeyondPlace } from '../../../src/measure/beam/panel-sums.ts';
import { sideFigure } from '../../../src/measure/irradiance/optical-power.ts';
import { channelIrradiance, type LightSource, lambertianExponent, placeLeds } from '../../support/light-source.ts';
import { instrument, slanted } from '../make.ts';

/** Relative error of the bench meter from oblique light, whatever its angle. */
export const OBLIQUE = 0.015;
/** A bench meter and a tape of the usual kind. */
export const SENSOR = instrument({
  calibrationRelative: 0.02,
  calibrationAbsolute: 0.1,
  resolution: 0.1,
  angularResponse: slanted(OBLIQUE),
  repeatability: 0.008,
});
export const TAPE = instrument({ id: 'tape', name: 'tape', calibrationRelative: 0.001, resolution: 0.1 });

export const SESSION = 'lantern-40/2026-03-02';
export const SIX_INCHES = 15.24;

/** A panel of the independent simulator, 60 W in all, every LED alike. */
export function lightSource(part: Partial<LightSource> = {}): LightSource {
  return {
    width: 28,
    height: 61,
    columns: 10,
    rows: 20,
    ledSize: 0.8,
    layout: 'alternate',
    halfAngle: 30,
    power: { red: 30, nearInfrared: 30 },
    together: 1,
    spread: 0,
    seed: 1,
    ...part,
  };
}

/** The same panel as the calculation knows it. */
export function knownEmitter(source: LightSource): Emitter {
  return { kind: 'leds', columns: source.columns, rows: source.rows, ledSize: source.ledSize };
}

/** Irradiance of a simulated panel with both channels on, mW/cm². */
export function lightOf(source: LightSource): (x: number, y: number, distance: number, receiver?: number) => number {
  const leds = placeLeds(source);
  const exponent = lambertianExponent(source.halfAngle);
  return (x, y, distance, receiver) => {
    const { red, nearInfrared } = channelIrradiance(leds, exponent, { x, y, distance }, receiver);
    return red + nearInfrared;
  };
}

/** Points of an n x m grid from the top left, an inch inside the field; cm from its middle. */
export function points(field: Field, columns: number, rows: number): { x: number; y: number }[] {
  const along = (count: number, side: number, i: number) => (side / 2 - 2.54) * ((2 * i) / (count - 1) - 1);
  return Array.from({ length: columns * rows }, (_, i) => ({
    x: along(columns, field.width, i % columns),
    y: -along(rows, field.height, Math.floor(i / columns)),
  }));
}

/** What is read of a panel, and how. */
export interface Bench {
  /** Values of the grid's points from the top left, mW/cm². */
  grid?: { columns: number; rows: number; values: readonly number[] };
  /** Value at each distance, cm and mW/cm². */
  sweep?: readonly (readonly [distance: number, value: number])[];
  /** Readings past the edges. */
  beyond?: readonly (BeyondPlace & { value: number })[];
  beamAngle?: number;
  emitter: Emitter;
  field: Field;
  /** cm */
  edge?: number;
  distance?: number;
  distanceSetting?: number;
  edgeSetting?: number;
  targets?: readonly number[];
  seed?: number;
  sensor?: typeof SENSOR;
  tape?: typeof TAPE;
}

/** Readings and their errors, ready to be worked out. */
export function opticsInput(bench: Bench): OpticsInput {
  const { grid, sweep, beyond, field, emitter, edge = 0.1, distance = SIX_INCHES, distanceSetting = 0.3 } = bench;
  const { sensor = SENSOR, tape = TAPE, edgeSetting = 0.2, targets = [SIX_INCHES, 30] } = bench;
  const side = (of: 'width' | 'height') =>
    sideFigure({ panel: 'lantern-40', side: of, value: field[of], edgeSetting, instrument: tape });
  const take = (values: readonly number[]) =>
    takeReadings(
      values.map((value) => [value]),
      sensor,
      undefined,
    );
  return {
    session: SESSION,
    layout: {
      field,
      emitter,
      distance,
      ...(grid && {
        grid: {
          shape: { columns: grid.columns, rows: grid.rows, inset: 2.54 },
          accepted: grid.values.map((_, index) => index),
        },
      }),
      ...(sweep && { sweep: sweep.map(([at]) => at) }),
      ...(beyond && { beyond }),
      targets,
    },
    ...(grid && { grid: take(grid.values) }),
    ...(sweep && { sweep: take(sweep.map(([, value]) => value)) }),
    ...(beyond && {
      beyond: takeBeyond(
        beyond.map((it) => ({ on: [it.value], off: 0 })),
        sensor,
        undefined,
      ),
    }),
    ...(bench.beamAngle !== undefined && { beamAngle: bench.beamAngle }),
    errors: sharedErrors({
      session: SESSION,
      panel: 'lantern-40',
      instrument: sensor,
      distance: { distance, halfWidth: distanceSetting, area: undefined },
      width: side('width'),
      height: side('height'),
      edge,
    }),
    seed: bench.seed ?? 1,
  };
}

/** A bench that reads a simulated panel without any error. */
export function exactBench(
  source: LightSource,
  what: { grid?: [columns: number, rows: number]; sweep?: readonly number[]; beyond?: readonly number[] },
): Bench {
  const light = lightOf(source);
  const field = { width: source.width, height: source.height };
  return {
    field,
    emitter: knownEmitter(source),
    ...(what.grid && {
      grid: {
        columns: what.grid[0],
        rows: what.grid[1],
        values: points(field, ...what.grid).map(({ x, y }) => light(x, y, SIX_INCHES)),
      },
    }),
    ...(what.beyond && {
      beyond: what.beyond.flatMap((past) => [
        { edge: 'right' as const, past, value: light(source.width / 2 + past, 0, SIX_INCHES) },
        { edge: 'top' as const, past, value: light(0, source.height / 2 + past, SIX_INCHES) },
      ]),
    }),
    ...(what.sweep && { sweep: what.sweep.map((distance) => [distance, light(0, 0, distance)] as const) }),
  };
}
