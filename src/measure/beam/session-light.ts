import type { Figure } from '../figure.ts';
import { correctedMeter, correctionOf } from '../instrument/corrected-reading.ts';
import { type Instrument, instrumentAbsence, isCalibrated } from '../instrument/instrument.ts';
import type { ModeLight } from '../instrument/spectral-response.ts';
import type { DistanceSetting } from '../irradiance/distance-setting.ts';
import { pooledRepeats } from '../irradiance/repeats.ts';
import { seedFromText } from '../random.ts';
import type { Statement } from '../statement.ts';
import { rectangular } from '../uncertainty.ts';
import { assumedEmitter, type CountedLeds, countedEmitter } from './assumed-emitter.ts';
import { sharedErrors, takeBeyond, takeReadings } from './error-sources.ts';
import { FARTHEST_PLANE, NEAREST_PLANE } from './gaussian-sum.ts';
import type { OpticsInput } from './optics-input.ts';
import { gridSpots } from './plane-spots.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** A plane nearer or farther than the model goes, cm. */
    'beam-distance-out-of-reach': { nearest: number; farthest: number };
    'beam-grid-left-out': object;
  }
}

/** What a session and its panel say about the light with both channels on. */
export interface SessionLight {
  panel: string;
  /** `<panel>/<date>` */
  session: string;
  instrument: Instrument | undefined;
  /** How much of the light lies in each band, and what its readings are corrected by. */
  bands?: ModeLight;
  /** Sides of the LED field, cm. */
  width: Figure;
  height: Figure;
  distance: DistanceSetting;
  /** Accepted readings of each point, mW/cm2, rows from the top; and how far the outer points lie inside, cm. */
  grid?: { points: readonly (readonly (readonly number[])[])[]; inset: number };
  /** Accepted readings on the axis, before the middle of the field, with the distance that was set for each, cm. */
  sweep?: readonly { distance: number; readings: readonly number[] }[];
  /** Accepted readings past the edges of the field, in the reference plane. */
  beyond?: readonly {
    edge: 'left' | 'right' | 'top' | 'bottom';
    /** Past the middle of that edge, cm. */
    past: number;
    /** Accepted repeats, mW/cm2; under what they say where they are bounds. */
    on: readonly number[];
    isBound?: boolean;
    /** What the place gave with the panel off, mW/cm2: taken away. */
    off?: number;
  }[];
  /** Claimed full beam angle at half intensity, degrees. */
  beamAngle?: number;
  /** The LEDs as they were found, where somebody looked. */
  leds?: CountedLeds;
  /** Number of LEDs that the maker claims, not of dies; used where nobody looked. */
  ledCount?: number;
  /** Draw from the mains with both channels on; left out where it was not read, or only as a bound. */
  mains?: Figure;
  /** Distances for the table, cm. */
  targets: readonly number[];
}

/** What the calculation needs, with notes on what was assumed; or why it cannot be made. */
export type SessionOptics = { input: OpticsInput; notes: Statement[] } | { withheld: Statement };

/** Puts a session's readings, geometry and errors together for `estimatePanel`. */
export function sessionOptics(read: SessionLight): SessionOptics {
  const light = correctedLight(read);
  const { panel, session, instrument, width, height, distance, grid, sweep, beyond, beamAngle, targets } = light;
  if (!isCalibrated(instrument)) return { withheld: instrumentAbsence(instrument) };
  const isOutside = (it: number) => !(it >= NEAREST_PLANE && it <= FARTHEST_PLANE);
  if ([distance.distance, ...targets, ...(sweep ?? []).map((it) => it.distance)].some(isOutside)) {
    return { withheld: { code: 'beam-distance-out-of-reach', nearest: NEAREST_PLANE, farthest: FARTHEST_PLANE } };
  }
  const field = { width: width.value, height: height.value };
  const assumed = light.leds ? countedEmitter(field, light.leds) : assumedEmitter(field, light.ledCount);
  const notes: Statement[] = [assumed.note];

  const points = (grid?.points ?? []).flat();
  const accepted = points.flatMap((readings, index) => (readings.length > 0 ? [index] : []));
  const shape = grid && { columns: grid.points[0]?.length ?? 0, rows: grid.points.length, inset: grid.inset };
  const isGridUsed = shape !== undefined && accepted.length > 0 && gridSpots(shape, field) !== undefined;
  if (shape && !isGridUsed) notes.push({ code: 'beam-grid-left-out' });
  const swept = (sweep ?? []).filter((it) => it.readings.length > 0);

  const past = (beyond ?? []).filter((it) => it.on.length > 0);
  const repeats = pooledRepeats(points);
  return {
    notes,
    input: {
      session,
      layout: {
        field,
        emitter: assumed.emitter,
        distance: distance.distance,
        ...(isGridUsed && { grid: { shape, accepted } }),
        ...(past.length > 0 && { beyond: past.map((it) => ({ edge: it.edge, past: it.past })) }),
        ...(swept.length > 0 && { sweep: swept.map((it) => it.distance) }),
        targets,
      },
      ...(isGridUsed && {
        grid: takeReadings(
          accepted.map((index) => points[index] ?? []),
          instrument,
          repeats && { ...repeats, isRelative: false },
        ),
      }),
      ...(swept.length > 0 && {
        sweep: {
          ...takeReadings(
            swept.map((it) => it.readings),
            instrument,
            relativeRepeats(swept.map((it) => it.readings)),
          ),
          ownDistance: rectangular(distance.halfWidth) * SET_ANEW,
        },
      }),
      ...(past.length > 0 && {
        beyond: takeBeyond(past, instrument, relativeRepeats(past.filter((it) => !it.isBound).map((it) => it.on))),
      }),
      ...(beamAngle !== undefined && { beamAngle }),
      errors: sharedErrors({
        session,
        panel,
        instrument,
        ...(light.bands && { bands: light.bands }),
        distance,
        width,
        height,
        edge: assumed.edge,
      }),
      ...(light.mains && { mains: { value: light.mains.value, budget: light.mains.budget } }),
      seed: seedFromText(`${session}/optics`),
    },
  };
}

/** All readings of a session as they stand once they are multiplied by the factor of its light. */
function correctedLight(read: SessionLight): SessionLight {
  if (!read.bands?.mismatch) return read;
  const factor = correctionOf(read.bands);
  const times = (all: readonly number[]) => all.map((it) => it * factor);
  const { grid, sweep, beyond } = read;
  return {
    ...read,
    instrument: correctedMeter(read.instrument, read.bands),
    ...(grid && { grid: { ...grid, points: grid.points.map((row) => row.map(times)) } }),
    ...(sweep && { sweep: sweep.map((it) => ({ ...it, readings: times(it.readings) })) }),
    ...(beyond && {
      beyond: beyond.map((it) => ({
        ...it,
        on: times(it.on),
        ...(it.off !== undefined && { off: it.off * factor }),
      })),
    }),
  };
}

/** What each distance of a sweep is off by on its own, over the setting's error that all share: our own choice. */
const SET_ANEW = 0.5;

/** Repeats pooled relative to the mean at their place: readings of a sweep differ too much for one number in mW/cm2. */
function relativeRepeats(places: readonly (readonly number[])[]) {
  const relative = places.map((readings) => {
    const mean = readings.reduce((sum, it) => sum + it, 0) / readings.length;
    return readings.map((it) => it / mean);
  });
  const pooled = pooledRepeats(relative);
  return pooled && { ...pooled, isRelative: true };
}
