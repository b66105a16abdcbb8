/**
 * A panel as a plain sum of LEDs, for checks from outside: nothing here is shared with src/measure.
 * Lengths in cm, powers in W, irradiance in mW/cm², angles in degrees. The origin is the middle of the
 * LED field; x runs to the right and y upwards as one faces the panel; LEDs lie in the plane d = 0.
 */
import { randomNormal } from 'd3-random';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** The two channels of a panel, as its switches name them. */
export const CHANNELS = ['red', 'nearInfrared'] as const;
export type ChannelName = (typeof CHANNELS)[number];

/** What a panel gives off, as if it were known exactly. */
export interface LightSource {
  /** LED field, outer edge of the first LED to outer edge of the last. */
  width: number;
  height: number;
  /** LEDs across and down. */
  columns: number;
  rows: number;
  /** Width of one LED with its lens. */
  ledSize: number;
  /** `alternate`: red and near-infrared in turn, as on a chessboard; `dual`: both dies in every LED. */
  layout: 'alternate' | 'dual';
  /** Half the beam angle: from the axis to half intensity. */
  halfAngle: number;
  /** Power that leaves the LEDs of a channel when it is on alone. */
  power: Record<ChannelName, number>;
  /** Share of that power which each channel keeps when both are on (drivers that fold back, hotter dies). */
  together: number;
  /** Relative standard deviation of the power from LED to LED; the channel's total stays as given. */
  spread: number;
  /** How much brighter the LEDs in the middle are driven, 0.3 for 30 %; the channel's total stays as given. */
  hotMiddle?: number;
  /** Seed of the spread: the same seed is the same piece. */
  seed: number;
}

/** One LED of the field and the power of its dies. */
export interface Led {
  x: number;
  y: number;
  power: Record<ChannelName, number>;
}

/** What is true of a source at one distance. */
export interface Truth {
  /** Power that leaves all LEDs with both channels on, W. */
  emitted: number;
  /** Irradiance averaged over the LED-area rectangle at the distance, mW/cm². */
  meanOverField: number;
  /** Power through that rectangle, W. */
  throughField: number;
  /** Share of the emitted power that passes through it. */
  capture: number;
}

/** Uniform numbers of [0, 1) from a seed. Neighbouring seeds start alike, so the first draws are thrown away. */
export function uniformSource(seed: number): () => number {
  const generator = xoroshiro128plus(seed);
  for (let i = 0; i < 64; i += 1) generator.next();
  return () => uniformFloat64(generator);
}

/**
 * Order m of the generalised Lambertian source whose intensity falls to a half at `halfAngle` degrees:
 * m = -ln 2 / ln cos(halfAngle). Kahn and Barry 1997, Proceedings of the IEEE 85(2), 265 (formula from memory).
 */
export function lambertianExponent(halfAngle: number): number {
  if (!(halfAngle > 0 && halfAngle < 90))
    throw new RangeError(`a half angle between 0 and 90 degrees, not ${halfAngle}`);
  return -Math.LN2 / Math.log(Math.cos((halfAngle * Math.PI) / 180));
}

/** The LEDs of a source with their powers, each channel alone. Same source, same LEDs. */
export function placeLeds(source: LightSource): Led[] {
  const normal = randomNormal.source(uniformSource(source.seed))(0, 1);
  const along = (count: number, length: number, index: number) =>
    count === 1 ? 0 : -length / 2 + source.ledSize / 2 + (index * (length - source.ledSize)) / (count - 1);

  const leds: Led[] = [];
  for (let row = 0; row < source.rows; row += 1) {
    for (let column = 0; column < source.columns; column += 1) {
      const x = along(source.columns, source.width, column);
      const y = -along(source.rows, source.height, row);
      // A Gaussian whose standard deviation is a quarter of the field, both ways.
      const middle = 1 + (source.hotMiddle ?? 0) * Math.exp(-8 * ((x / source.width) ** 2 + (y / source.height) ** 2));
      const weight = () => middle * Math.max(0.2, 1 + source.spread * normal());
      const red = source.layout === 'dual' || (row + column) % 2 === 0;
      const nearInfrared = source.layout === 'dual' || !red;
      leds.push({ x, y, power: { red: red ? weight() : 0, nearInfrared: nearInfrared ? weight() : 0 } });
    }
  }
  for (const channel of CHANNELS) {
    const sum = leds.reduce((total, led) => total + led.power[channel], 0);
    for (const led of leds) led.power[channel] *= sum === 0 ? 0 : source.power[channel] / sum;
  }
  return leds;
}

/**
 * Irradiance of each channel alone at a point of the plane at `distance`, mW/cm²: the sum over the LEDs of
 * I0 cos^m(angle) cos(angle) / r², with I0 = (m + 1) P / (2 pi). `receiver` is the exponent of the sensor's own
 * cosine: 1 for a perfect one, a little more for one that loses oblique light.
 */
export function channelIrradiance(
  leds: readonly Led[],
  exponent: number,
  point: { x: number; y: number; distance: number },
  receiver = 1,
): Record<ChannelName, number> {
  const sum: Record<ChannelName, number> = { red: 0, nearInfrared: 0 };
  for (const led of leds) {
    const squared = (point.x - led.x) ** 2 + (point.y - led.y) ** 2 + point.distance ** 2;
    const cosine = point.distance / Math.sqrt(squared);
    const perWatt = (((exponent + 1) / (2 * Math.PI)) * cosine ** (exponent + receiver)) / squared;
    for (const channel of CHANNELS) sum[channel] += 1000 * led.power[channel] * perWatt;
  }
  return sum;
}

/** What is true of the source with both channels on, by the midpoint rule over `cells` x `cells` of the field. */
export function truthOf(source: LightSource, distance: number, output = 1, cells = 40): Truth {
  const leds = placeLeds(source);
  const exponent = lambertianExponent(source.halfAngle);
  const share = source.together * output;
  let sum = 0;
  for (let i = 0; i < cells; i += 1) {
    for (let j = 0; j < cells; j += 1) {
      const x = source.width * ((i + 0.5) / cells - 0.5);
      const y = source.height * ((j + 0.5) / cells - 0.5);
      const at = channelIrradiance(leds, exponent, { x, y, distance });
      sum += share * (at.red + at.nearInfrared);
    }
  }
  const meanOverField = sum / cells ** 2;
  const emitted = share * (source.power.red + source.power.nearInfrared);
  const throughField = (meanOverField * source.width * source.height) / 1000;
  return { emitted, meanOverField, throughField, capture: throughField / emitted };
}
