/**
 * A bench session of a simulated panel: readings as meters would show them, and the truth behind them. It is the
 * outside check of src/measure and the source of the demo content, so it shares no code with src/.
 *
 * Left out on purpose: warm-up, stray light, the spectrum's shape and reflections in the room. Electromagnetic
 * fields, sound and flicker are not modelled either; their true values are given and only read with an error.
 */
import { randomNormal } from 'd3-random';
import {
  CHANNELS,
  type ChannelName,
  channelIrradiance,
  type Led,
  type LightSource,
  lambertianExponent,
  placeLeds,
  type Truth,
  truthOf,
  uniformSource,
} from './light-source.ts';

export type Mode = ChannelName | 'combined';
export const MODES: readonly Mode[] = [...CHANNELS, 'combined'];

/** How a panel turns mains into light. */
export interface Electrics {
  /** Share of a die's electrical power that leaves it as light, lens included, per channel. */
  die: Record<ChannelName, number>;
  /** Share of the mains power that the LED drivers pass on. */
  driver: number;
  /** Fans and control while a channel is on, W. */
  fans: number;
  /** Draw with all channels off, W. */
  standby: number;
}

/** A pair of levels: of the room, and what the panel alone adds to it. */
export interface Level {
  room: number;
  panel: number;
}

/** Everything about a panel that the bench tries to find out. */
export interface PanelTruth {
  source: LightSource;
  electrics: Electrics;
  /** Peak and full width at half maximum, nm. */
  wavelengths: Record<ChannelName, { peak: number; fwhm: number }>;
  /** Modulation depth, %, the same in every mode; no frequency where nothing repeats. */
  flicker: { percent: number; frequency?: number };
  /** µT, V/m, mW/m² and dB(A), each at the distance where the bench reads it. */
  magnetic: Level;
  electric: Level;
  radio: Level;
  sound: Level;
}

/** Lowest and smallest step that a meter shows, in its unit. */
export interface Display {
  floor: number;
  resolution: number;
}

/** How well the bench reads. Relative figures are fractions, not percentages. */
export interface Bench {
  /** Nominal distance from the LED plane to the sensor, cm. */
  distance: number;
  /** The distance really set lies within this of it, either way, cm. */
  distanceSetting: number;
  /** Outer grid points lie this far inside the field, cm. */
  inset: number;
  grid: { columns: number; rows: number; repeats: number };
  /** Irradiance meter: constant relative error, standard deviation of a reading, exponent of its cosine. */
  irradiance: Display & { calibration: number; repeatability: number; receiver: number };
  mains: Display & { calibration: number; repeatability: number };
  wavelength: Display;
  magnetic: Display;
  electric: Display;
  radio: Display;
  sound: Display;
  flicker: Display;
  /** Output of the panel relative to its first day. */
  output: number;
  /** Step of the sweep for the peaks, cm, and how many readings are taken where it is brightest. */
  sweepStep: number;
  lingers: number;
  /** Distances of readings before the middle of the field, cm, each set anew; none where left out. */
  distances?: readonly number[];
  /** Places past the edges of the field where it is read too, in the plane of the grid; none where left out. */
  beyond?: readonly BeyondPlace[];
  /** Light of the room at these places, mW/cm²; before the field the panel itself keeps it out. None where left out. */
  room?: number;
  /** A place past an edge really lies within this of where it should, either way, cm; exactly there where left out. */
  placing?: number;
}

/** A place straight out from the middle of an edge of the field, as one faces the panel. */
export interface BeyondPlace {
  edge: 'left' | 'right' | 'top' | 'bottom';
  /** Outside the field, cm. */
  past: number;
  /** How often it is read with the panel on; once where left out. */
  repeats?: number;
  /** It is read with the panel off as well. */
  off?: boolean;
}

/** One reading; `below` when the meter only shows that it is under its floor, which is then the value. */
export interface Shown {
  value: number;
  below: boolean;
}

/** What the session's sheet says: canonical units of the content schema. */
export interface SimulatedReadings {
  peak: Record<Mode, number>;
  /** Rows from the top, points from the left, repeats of the point. */
  grid: number[][][];
  /** Distance in cm and reading before the middle of the field. */
  distances?: Array<{ distance: number; centre: number }>;
  /** Readings past the edges, in the order of the bench's places. */
  beyond?: Array<{ edge: BeyondPlace['edge']; past: number; on: Shown[]; off?: Shown }>;
  wavelengths: Record<ChannelName, { peak: number; fwhm: number }>;
  mains: Record<Mode | 'standby', number>;
  magnetic: { off: Shown; on: Shown };
  electric: { off: Shown; on: Shown };
  radio: { off: Shown; on: Shown };
  sound: { off: Shown; on: Shown };
  flicker: { frequency?: number; percent: Record<Mode, Shown> };
}

/** What is true behind the readings. */
export interface SessionTruth extends Truth {
  /** Distance that was really set, cm. */
  distance: number;
  /** Draw with both channels on, W. */
  draw: number;
  /** Emitted power over draw. */
  lightShare: number;
}

/** A bench like the demo's: 6 in, an inch in from the edges, a decent sensor. Nothing is off unless told to be. */
export const STEADY_BENCH: Bench = {
  distance: 15.24,
  distanceSetting: 0.2,
  inset: 2.54,
  grid: { columns: 3, rows: 3, repeats: 1 },
  irradiance: { floor: 0.1, resolution: 0.1, calibration: 0, repeatability: 0.008, receiver: 1 },
  mains: { floor: 0.1, resolution: 0.1, calibration: 0, repeatability: 0.002 },
  wavelength: { floor: 350, resolution: 0.5 },
  magnetic: { floor: 0.02, resolution: 0.01 },
  electric: { floor: 1, resolution: 1 },
  radio: { floor: 0.001, resolution: 0.001 },
  sound: { floor: 30, resolution: 0.1 },
  flicker: { floor: 0.5, resolution: 0.1 },
  output: 1,
  sweepStep: 1,
  lingers: 5,
};

/** A value in steps of `resolution`, without binary dust. */
export function roundTo(value: number, resolution: number): number {
  return Number((Math.round(value / resolution) * resolution).toPrecision(12));
}

/** Where the grid points lie, rows from the top, points from the left; cm from the middle of the field. */
export function gridPoints(source: LightSource, grid: { columns: number; rows: number }, inset: number) {
  const place = (count: number, length: number, index: number) =>
    count === 1 ? 0 : (length / 2 - inset) * ((2 * index) / (count - 1) - 1);
  return Array.from({ length: grid.rows }, (_, row) =>
    Array.from({ length: grid.columns }, (_, column) => ({
      x: place(grid.columns, source.width, column),
      y: -place(grid.rows, source.height, row),
    })),
  );
}

/** Where a place past an edge lies; cm from the middle of the field. */
export function beyondPlace({ width, height }: LightSource, edge: BeyondPlace['edge'], past: number) {
  const side = { left: [-1, 0], right: [1, 0], top: [0, 1], bottom: [0, -1] }[edge] as [number, number];
  return { x: side[0] * (width / 2 + past), y: side[1] * (height / 2 + past) };
}

/** Mains draw per mode and in standby, W. */
export function trueDraw(panel: PanelTruth): Record<Mode | 'standby', number> {
  const { power, together } = panel.source;
  const { die, driver, fans, standby } = panel.electrics;
  const dies = { red: power.red / die.red, nearInfrared: power.nearInfrared / die.nearInfrared };
  const draw = (watts: number) => watts / driver + fans + standby;
  return {
    red: draw(dies.red),
    nearInfrared: draw(dies.nearInfrared),
    combined: draw(together * (dies.red + dies.nearInfrared)),
    standby,
  };
}

/** Light per mode at a point, mW/cm², before the meter has its say. */
export function lightAt(
  panel: PanelTruth,
  leds: readonly Led[],
  point: { x: number; y: number; distance: number },
  output = 1,
  receiver = 1,
): Record<Mode, number> {
  const alone = channelIrradiance(leds, lambertianExponent(panel.source.halfAngle), point, receiver);
  return {
    red: output * alone.red,
    nearInfrared: output * alone.nearInfrared,
    combined: output * panel.source.together * (alone.red + alone.nearInfrared),
  };
}

/** What is true in a session whose distance was really `distance`. */
export function sessionTruth(panel: PanelTruth, bench: Bench, distance = bench.distance): SessionTruth {
  const truth = truthOf(panel.source, distance, bench.output);
  const draw = trueDraw(panel).combined;
  return { ...truth, distance, draw, lightShare: truth.emitted / draw };
}

/** One session at the bench. The same arguments give the same readings, digit for digit. */
export function simulateSession(
  panel: PanelTruth,
  bench: Bench,
  seed: number,
): { readings: SimulatedReadings; distance: number } {
  const uniform = uniformSource(seed);
  const normal = randomNormal.source(uniform)(0, 1);
  const distance = bench.distance + bench.distanceSetting * (2 * uniform() - 1);
  const leds = placeLeds(panel.source);
  const { irradiance, mains } = bench;
  const at = (x: number, y: number) => lightAt(panel, leds, { x, y, distance }, bench.output, irradiance.receiver);

  const readLight = (light: number) =>
    roundTo(light * (1 + irradiance.calibration) * (1 + irradiance.repeatability * normal()), irradiance.resolution);
  const readWatts = (watts: number) =>
    roundTo(watts * (1 + mains.calibration) * (1 + mains.repeatability * normal()), mains.resolution);
  const show = (value: number, display: Display): Shown => {
    const shown = roundTo(value, display.resolution);
    return shown < display.floor ? { value: display.floor, below: true } : { value: shown, below: false };
  };

  const grid = gridPoints(panel.source, bench.grid, bench.inset).map((row) =>
    row.map(({ x, y }) => {
      const light = at(x, y).combined;
      return Array.from({ length: bench.grid.repeats }, () => readLight(light));
    }),
  );

  const highest: Record<Mode, number> = { red: 0, nearInfrared: 0, combined: 0 };
  // An even number, so that the middle of the field is on the raster.
  const steps = (length: number) => 2 * Math.max(1, Math.round(length / bench.sweepStep / 2));
  const across = steps(panel.source.width);
  const down = steps(panel.source.height);
  for (let i = 0; i <= across; i += 1) {
    for (let j = 0; j <= down; j += 1) {
      const light = at(panel.source.width * (i / across - 0.5), panel.source.height * (j / down - 0.5));
      for (const mode of MODES) highest[mode] = Math.max(highest[mode], light[mode]);
    }
  }

  // A sweep lingers where it is brightest and keeps the highest reading, so it also keeps the luckiest of a few.
  const sweep = (light: number) => Math.max(...Array.from({ length: bench.lingers }, () => readLight(light)));

  const draw = trueDraw(panel);
  const perMode = <T>(read: (mode: Mode) => T) =>
    Object.fromEntries(MODES.map((mode) => [mode, read(mode)])) as Record<Mode, T>;
  // Fields of unrelated frequency add as squares; so do rms values. Power densities and sound energies just add.
  const squares = ({ room, panel: own }: Level) => Math.hypot(room, own);
  const energies = ({ room, panel: own }: Level) => 10 * Math.log10(10 ** (room / 10) + 10 ** (own / 10));
  const wobble = (value: number, relative: number) => value * (1 + relative * normal());
  const offOn = (level: Level, add: (level: Level) => number, display: Display, relative: number) => ({
    off: show(wobble(level.room, relative), display),
    on: show(wobble(add(level), relative), display),
  });

  const readings: SimulatedReadings = {
    peak: perMode((mode) => sweep(highest[mode])),
    grid,
    wavelengths: {
      red: readWavelength(panel.wavelengths.red),
      nearInfrared: readWavelength(panel.wavelengths.nearInfrared),
    },
    mains: { ...perMode((mode) => readWatts(draw[mode])), standby: readWatts(draw.standby) },
    magnetic: offOn(panel.magnetic, squares, bench.magnetic, 0.03),
    electric: offOn(panel.electric, squares, bench.electric, 0.05),
    radio: offOn(panel.radio, ({ room, panel: own }) => room + own, bench.radio, 0.1),
    sound: offOn(panel.sound, energies, bench.sound, 0.008),
    flicker: {
      ...(panel.flicker.frequency !== undefined && { frequency: roundTo(panel.flicker.frequency, 1) }),
      percent: perMode(() => show(wobble(panel.flicker.percent, 0.02), bench.flicker)),
    },
  };
  // Last, so that a bench with a sweep gives the same other readings as one without.
  if (bench.distances) {
    readings.distances = bench.distances.map((it) => {
      const set = it + bench.distanceSetting * (2 * uniform() - 1);
      const light = lightAt(panel, leds, { x: 0, y: 0, distance: set }, bench.output, irradiance.receiver).combined;
      return { distance: it, centre: readLight(light) };
    });
  }
  if (bench.beyond) {
    const { room = 0, placing = 0 } = bench;
    const showLight = (light: number) => show(readLight(light), irradiance);
    readings.beyond = bench.beyond.map(({ edge, past, repeats = 1, off = false }) => {
      const place = beyondPlace(panel.source, edge, past + placing * (2 * uniform() - 1));
      const light = at(place.x, place.y).combined + room;
      const on = Array.from({ length: repeats }, () => showLight(light));
      return { edge, past, on, ...(off && { off: showLight(room) }) };
    });
  }
  return { distance, readings };

  function readWavelength({ peak, fwhm }: { peak: number; fwhm: number }) {
    return {
      peak: roundTo(peak + 0.3 * normal(), bench.wavelength.resolution),
      fwhm: roundTo(fwhm + 0.3 * normal(), bench.wavelength.resolution),
    };
  }
}
