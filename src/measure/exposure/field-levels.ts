import { type Figure, isFigure } from '../figure.ts';
import { MILLI } from '../unit-factors.ts';
import type { FieldKind, FieldReading } from './field-reading.ts';
import type { LimitId } from './limit.ts';
import {
  electricReferenceLevel,
  LOWEST_ELECTRIC_LEVEL,
  LOWEST_MAGNETIC_LEVEL,
  LOWEST_RADIO_LEVEL,
  magneticReferenceLevel,
  STATED_FREQUENCIES,
} from './reference-levels.ts';

/** Frequencies of the mains, Hz. */
export type MainsFrequency = 50 | 60;

/**
 * Where all of a field is taken to be: where drivers work, from 3 kHz on; at the mains' frequency; or at the one that the
 * instrument showed.
 */
export type FieldFrequency =
  | { from: 'driver' }
  | { from: 'mains'; hertz: MainsFrequency }
  | { from: 'instrument'; hertz: number };

/** A level that a reading is held against, and what is taken for granted with it. */
export interface Level {
  /** In the unit of the reading. */
  value: number;
  /** Undefined for radio, whose instruments give none: the level is the lowest there is. */
  frequency: FieldFrequency | undefined;
}

/** The levels for one field. */
export interface Levels {
  limit: LimitId;
  /** What the share is taken of that is sorted and warned by. */
  strict: Level;
  /** The other end, where the frequency is not known and two ends are told. */
  mild: Level | undefined;
}

const LOW_FREQUENCY = {
  magnetic: { limit: 'magnetic-level', at: magneticReferenceLevel, lowest: LOWEST_MAGNETIC_LEVEL },
  electric: { limit: 'electric-level', at: electricReferenceLevel, lowest: LOWEST_ELECTRIC_LEVEL },
} as const;

/**
 * The levels that a reading is held against. With a frequency that the instrument showed, the level there. Without, two
 * ends: the strict one is the lowest level, which holds from 3 kHz on, where drivers work; the mild one that of the
 * mains (ICNIRP 2010). Radio has one, the lowest for power density (ICNIRP 2020).
 *
 * @param frequency Hz, as the instrument showed it for the reading with the panel on
 */
export function levelsFor(kind: FieldKind, mains: MainsFrequency, frequency: Figure | undefined): Levels {
  if (kind === 'radio') {
    return {
      limit: 'radio-level',
      strict: { value: MILLI * LOWEST_RADIO_LEVEL, frequency: undefined },
      mild: undefined,
    };
  }
  const { limit, at, lowest } = LOW_FREQUENCY[kind];
  if (frequency) {
    const hertz = frequency.value;
    return { limit, strict: { value: at(hertz), frequency: { from: 'instrument', hertz } }, mild: undefined };
  }
  return {
    limit,
    strict: { value: lowest, frequency: { from: 'driver' } },
    mild: { value: at(mains), frequency: { from: 'mains', hertz: mains } },
  };
}

/** The frequency that a share can be taken at: one value, from 25 Hz to 100 kHz. */
export function statedFrequency({ frequency }: FieldReading): Figure | undefined {
  if (!frequency || !isFigure(frequency) || frequency.bound) return undefined;
  const { from, to } = STATED_FREQUENCIES;
  return frequency.value >= from && frequency.value <= to ? frequency : undefined;
}
