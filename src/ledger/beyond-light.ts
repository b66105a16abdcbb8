import { acceptedReadings, pointReadings } from '../content/read/grid-points.ts';
import type { BeyondPlace } from '../content/schema/beyond.ts';
import type { Reading } from '../content/schema/quantity.ts';
import type { SessionLight } from '../measure/beam/session-light.ts';

/** Readings past the edges as the model takes them: places without an accepted reading are left out. */
export function beyondLight(places: readonly BeyondPlace[]): NonNullable<SessionLight['beyond']> {
  return places.flatMap((place) => {
    const on = acceptedReadings(place.on);
    if (on.length === 0) return [];
    const isBound = pointReadings(place.on).some((it) => it.rejected === undefined && it.reading.bound !== undefined);
    const room = roomLight(place, places);
    return [
      {
        edge: place.edge,
        past: place.past.value,
        on,
        ...(isBound && { isBound }),
        ...(room && { off: taken(room.reading) }),
      },
    ];
  });
}

/** What is taken away: a reading, or the middle of what a display leaves open that stays under its first step. */
const taken = ({ value, bound }: Reading): number => (bound === undefined ? value : value / 2);

/**
 * The reading with the panel off that counts at a place: its own, or that of the farthest place past the same edge
 * that has one, since the room's light hardly changes along a hand's breadth. Undefined where none was taken there.
 */
export function roomLight(
  place: BeyondPlace,
  places: readonly BeyondPlace[],
): { reading: Reading; from: BeyondPlace } | undefined {
  const from = place.off
    ? place
    : places
        .filter((it) => it.edge === place.edge && it.off)
        .toSorted((a, b) => a.past.value - b.past.value)
        .at(-1);
  return from?.off && { reading: from.off, from };
}
