/** What readings at some distances say of the infrared at another. Numbers only: the planner calculates with it too. */
import { sameDistance } from '../irradiance/same-distance.ts';

/** A share of the limit that was read, %, with the ends of its interval; both are the value where none is known. */
export interface ShareReading {
  /** cm */
  distance: number;
  value: number;
  low: number;
  high: number;
}

/** What is known of the share at a distance. */
export type ShareThere =
  | { kind: 'read'; reading: ShareReading }
  /** Between two readings, or beyond the last: `high` is the cautious end. `from` is the reading that gives it. */
  | { kind: 'range'; low: number; high: number; from: ShareReading }
  /** Nearer than the nearest reading, `than` cm: it is as high or higher, by how much is not known. */
  | { kind: 'nearer'; than: number };

/**
 * The share at a distance, by bounds that need no beam. The highest irradiance of a plane before the panel does not
 * grow as the plane moves away, and falls no faster than that of a point, as 1/d²; so it lies at or under every
 * nearer reading, at or over every farther one, and over every nearer one times (d_0/d)².
 *
 * Holds where the LEDs face straight ahead, each brightest on its axis. The lower bound: each LED's share of E d² at a
 * place rises with d. The upper: on the axis of an evenly lit field, any beam, E is the field's solid angle weighted;
 * anywhere, where beams are powers of the cosine, the plane farther away is the nearer one smoothed (their spread is
 * that of a Student t, which is self-decomposable: Halgreen 1979, from memory). Not for beams that are aimed at one
 * place or brightest off their axis, and not for one reading before the middle, which may lie between two beams.
 *
 * @param readings the highest of the plane each, %, nearest first; at least one
 * @param distance cm
 */
export function shareThere(readings: readonly ShareReading[], distance: number): ShareThere {
  const reading = readings.find((it) => sameDistance(it.distance, distance));
  if (reading) return { kind: 'read', reading };
  const nearer = readings.filter((it) => it.distance < distance);
  const [first, ...others] = nearer;
  if (!first) return { kind: 'nearer', than: Math.min(...readings.map((it) => it.distance)) };
  const from = others.reduce((least, it) => (it.high < least.high ? it : least), first);
  const low = Math.max(
    ...nearer.map((it) => it.low * (it.distance / distance) ** 2),
    ...readings.filter((it) => it.distance > distance).map((it) => it.low),
  );
  return { kind: 'range', low: Math.min(low, from.high), high: from.high, from };
}
