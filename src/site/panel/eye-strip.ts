/** How long until the infrared limit for the eye is used up, by distance, on the strip that all panels share. */
import type { PanelEntry } from '../../ledger/ledger.ts';
import type { LimitResult } from '../../measure/exposure/index.ts';
import { number } from '../../measure/numbers.ts';
import { listed } from '../../words/format.ts';
import { limitTime } from '../../words/limits/infrared-phrases.ts';
import type { PieceElement } from '../shared/browser/pieces.ts';
import { type StripMark, timeStrip } from '../shared/browser/time-strip.ts';

/** The strip with what it can't draw. */
export interface EyeStrip {
  /** Undefined where the standard limits no time at any of the distances. */
  drawing?: PieceElement;
  /** Where it limits none: `60 cm`. */
  untimed?: string;
  /** Some distances were not read: nearer readings count there. */
  isBorrowed: boolean;
}

interface Time {
  distance: number;
  seconds: number;
  isBorrowed: boolean;
}

/** Distances nearer to each other than this, of the smaller, are one for an eye; so are times on the strip. Our own choice. */
const ALIKE = 0.05;

/** Undefined where no time is known. */
export function eyeStrip({ current }: PanelEntry): EyeStrip | undefined {
  const times = timesOf(current?.limits ?? []);
  if (times.length === 0) return undefined;
  const timed = times.filter((it) => Number.isFinite(it.seconds));
  const untimed = times.filter((it) => !Number.isFinite(it.seconds));
  const marks = groupsOf(timed).map((it): StripMark => ({ seconds: it.seconds, label: rangeOf(it.distances) }));
  return {
    ...(marks.length > 0 && {
      drawing: timeStrip(marks, Math.min(...marks.map((it) => it.seconds)), description(timed)),
    }),
    ...(untimed.length > 0 && { untimed: listed(untimed.map((it) => `${number(it.distance)} cm`)) }),
    isBorrowed: timed.some((it) => it.isBorrowed),
  };
}

/** Times at the cautious end, nearest first, each distance once. */
function timesOf(limits: readonly LimitResult[]): Time[] {
  const times = limits
    .flatMap((it): Time[] =>
      it.hazard === 'infrared-time' && it.cautiousSeconds !== undefined
        ? [{ distance: it.distance, seconds: it.cautiousSeconds, isBorrowed: it.there?.kind === 'range' }]
        : [],
    )
    .toSorted((a, b) => a.distance - b.distance);
  return times.filter((it, i) => {
    const before = times[i - 1];
    return !before || it.distance - before.distance >= ALIKE * before.distance;
  });
}

/** Neighbours whose times can't be told apart on the strip share a mark, at the shortest. */
function groupsOf(times: readonly Time[]): Array<{ seconds: number; distances: number[] }> {
  const groups: Array<{ seconds: number; distances: number[] }> = [];
  for (const { distance, seconds } of times) {
    const last = groups.at(-1);
    if (last && Math.abs(seconds - last.seconds) < ALIKE * last.seconds) {
      last.distances.push(distance);
      last.seconds = Math.min(last.seconds, seconds);
    } else groups.push({ seconds, distances: [distance] });
  }
  return groups;
}

/** `15 cm`, `15 to 60 cm`: whole centimetres are enough on the strip. */
function rangeOf(distances: readonly number[]): string {
  const [first = 0, last = 0] = [distances[0], distances.at(-1)];
  return first === last ? `${number(first, 2)} cm` : `${number(first, 2)} to ${number(last, 2)} cm`;
}

function description(times: readonly Time[]): string {
  const each = times.map((it) => `at ${number(it.distance)} cm after ${limitTime(it.seconds)}`);
  return `Looking towards the panel, the infrared limit for the eye is used up at the cautious end ${each.join(', ')}`;
}
