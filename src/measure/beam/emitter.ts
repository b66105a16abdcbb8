import { at } from '../at.ts';
import { bandProfile, evenProfile, type Profile, rawPointProfile } from './profile.ts';

/** The LED field as it was measured: outer edge of the first LED to outer edge of the last, cm. */
export interface Field {
  width: number;
  height: number;
}

/**
 * Light given off evenly by a whole rectangle: for panels whose LEDs are not counted.
 *
 * A grid of LEDs is best matched by a rectangle that reaches half a pitch past the outer LEDs' centres, so half
 * the gap between neighbours past their edges.
 */
export interface ContinuousEmitter {
  kind: 'continuous';
  /** How far the light reaches past each edge of the field, cm; negative where it falls short. */
  beyond: number;
}

/** How the wavelength groups share the places: in turn both ways, row by row, or as bands from the top. */
export type Pattern = 'checkerboard' | 'rows' | 'blocks';

/** A wavelength group and its share of the power; shares are taken relative to their sum. */
export interface WavelengthGroup {
  name: string;
  share: number;
}

/** LEDs on a grid. Their centres lie half an LED inside the edges of the field. */
export interface LedEmitter {
  kind: 'leds';
  columns: number;
  rows: number;
  /** Width of one LED with its lens, cm; 0 puts the centres of the outer LEDs on the edges. */
  ledSize: number;
  /** Every second row has one LED less and lies half a pitch aside. */
  staggered?: boolean;
  /** Left out: all LEDs alike. */
  groups?: readonly WavelengthGroup[];
  /** How the groups are laid out; checkerboard where left out. */
  pattern?: Pattern;
}

export type Emitter = ContinuousEmitter | LedEmitter;

/** One LED. The origin is the middle of the field; x to the right and y upwards as one faces the panel; cm. */
export interface PlacedLed {
  x: number;
  y: number;
  /** Its share of the power of the whole panel. */
  share: number;
  /** Place in the list of groups; 0 where there are none. */
  group: number;
}

/** Part of a panel that is a product of one profile across and one down. All of a panel's shares sum to 1. */
export interface EmitterPart {
  share: number;
  x: Profile;
  y: Profile;
}

/** @throws RangeError unless both sides are above zero and finite */
export function checkField(field: Field): void {
  for (const [name, side] of Object.entries({ width: field.width, height: field.height })) {
    if (!(side > 0 && Number.isFinite(side))) throw new RangeError(`the ${name} of the LED field is above 0 cm`);
  }
}

/**
 * Places the LEDs of a panel, row by row from the top, from the left.
 *
 * @throws RangeError where the LEDs do not fit the field, or the groups do not fit the LEDs
 */
export function placeLeds(emitter: LedEmitter, field: Field): PlacedLed[] {
  checkEmitter(emitter, field);
  const { columns, rows, ledSize, staggered = false, groups, pattern = 'checkerboard' } = emitter;
  const width = field.width - ledSize;
  const height = field.height - ledSize;
  const pitch = columns > 1 ? width / (columns - 1) : 0;
  const leds: PlacedLed[] = [];
  for (let row = 0; row < rows; row++) {
    const isShort = staggered && row % 2 === 1;
    const count = isShort ? columns - 1 : columns;
    const y = rows > 1 ? height / 2 - (row * height) / (rows - 1) : 0;
    for (let column = 0; column < count; column++) {
      const x = (column - (count - 1) / 2) * pitch;
      leds.push({ x, y, share: 0, group: groupAt(pattern, row, column, rows, groups?.length ?? 1) });
    }
  }
  const shares = groups?.map((it) => it.share) ?? [1];
  const total = shares.reduce((sum, it) => sum + it, 0);
  const counts = shares.map((_, group) => leds.filter((led) => led.group === group).length);
  counts.forEach((count, group) => {
    if (count === 0) throw new RangeError(`no LED is left for the group "${groups?.[group]?.name}"`);
  });
  for (const led of leds) led.share = at(shares, led.group) / total / at(counts, led.group);
  return leds;
}

function groupAt(pattern: Pattern, row: number, column: number, rows: number, groups: number): number {
  switch (pattern) {
    case 'checkerboard':
      return (row + column) % groups;
    case 'rows':
      return row % groups;
    case 'blocks':
      return Math.floor((row * groups) / rows);
  }
}

function checkEmitter(emitter: LedEmitter, field: Field): void {
  checkField(field);
  const { columns, rows, ledSize, staggered, groups } = emitter;
  for (const [name, count] of Object.entries({ columns, rows })) {
    if (!(Number.isInteger(count) && count > 0)) throw new RangeError(`the number of ${name} is a whole one from 1`);
  }
  if (staggered && columns < 2) throw new RangeError('staggered rows have at least two LEDs');
  if (!(ledSize >= 0 && ledSize < Math.min(field.width, field.height))) {
    throw new RangeError(`an LED is smaller than its field; found ${ledSize} cm`);
  }
  if (groups && (groups.length === 0 || groups.some((it) => !(it.share > 0 && Number.isFinite(it.share))))) {
    throw new RangeError('there is at least one wavelength group, and the share of each is above zero');
  }
}

/** How much of its share a place gives, by where it lies: from -1 at one edge of the light to 1 at the other. */
export interface Drive {
  x?: (at: number) => number;
  y?: (at: number) => number;
}

/** Bands that stand for continuous light that is not driven evenly. */
const BANDS = 12;

/**
 * The emitter as products of profiles: one for each kind of row, which is one in all for a panel of like LEDs.
 *
 * @param drive factors of either sign; shares and weights are multiplied by them as they are. Even where left out.
 * @throws RangeError where the emitter does not fit the field
 */
export function emitterParts(emitter: Emitter, field: Field, drive: Drive = {}): EmitterPart[] {
  if (emitter.kind === 'continuous') {
    checkField(field);
    const width = field.width + 2 * emitter.beyond;
    const height = field.height + 2 * emitter.beyond;
    if (!(width > 0 && height > 0)) throw new RangeError(`light that falls ${-emitter.beyond} cm short leaves none`);
    return [{ share: 1, x: drivenBand(width, drive.x), y: drivenBand(height, drive.y) }];
  }
  const rows = Map.groupBy(placeLeds(emitter, field), (led) => led.y);
  const kinds = Map.groupBy(rows, ([, row]) => row.map((led) => `${led.x}:${led.share.toPrecision(12)}`).join());
  const across = drive.x ?? even;
  const down = drive.y ?? even;
  return [...kinds.values()].map((alike) => {
    const row = (alike[0] as (typeof alike)[number])[1];
    const power = row.reduce((sum, led) => sum + led.share, 0);
    return {
      share: power * alike.length,
      x: rawPointProfile(
        row.map((led) => led.x),
        row.map((led) => (led.share / power) * across((2 * led.x) / field.width)),
      ),
      y: rawPointProfile(
        alike.map(([y]) => y),
        alike.map(([y]) => down((2 * y) / field.height) / alike.length),
      ),
    };
  });
}

const even = () => 1;

function drivenBand(length: number, drive: ((at: number) => number) | undefined): Profile {
  if (!drive) return evenProfile(length);
  const edges = Array.from({ length: BANDS + 1 }, (_, i) => length * (i / BANDS - 0.5));
  const weights = Array.from({ length: BANDS }, (_, i) => drive((2 * i + 1) / BANDS - 1) / BANDS);
  return bandProfile(edges, weights);
}

/** Whether all LEDs give the same power, so that the brightest place is in the middle. */
export function isEven(emitter: Emitter): boolean {
  if (emitter.kind === 'continuous' || !emitter.groups) return true;
  const { columns, rows, ledSize } = emitter;
  const leds = placeLeds(emitter, { width: ledSize + columns, height: ledSize + rows });
  const first = leds[0]?.share ?? 0;
  return leds.every((led) => Math.abs(led.share - first) <= 1e-9 * first);
}

/** The emitter with its light `by` cm further out on every side, for asking what an error there would do. */
export function widened(emitter: Emitter, by: number): Emitter {
  return emitter.kind === 'continuous'
    ? { ...emitter, beyond: emitter.beyond + by }
    : { ...emitter, ledSize: emitter.ledSize - 2 * by };
}
