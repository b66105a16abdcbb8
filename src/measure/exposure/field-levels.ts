import { type Figure, isFigure } from '../figure.ts';
import { MILLI } from '../unit-factors.ts';
import type { FieldKind, FieldReading } from './field-reading.ts';
import type { Limit } from './limit.ts';
import {
  ELECTRIC_LEVEL,
  electricReferenceLevel,
  LOWEST_ELECTRIC_LEVEL,
  LOWEST_MAGNETIC_LEVEL,
  LOWEST_RADIO_LEVEL,
  MAGNETIC_LEVEL,
  magneticReferenceLevel,
  RADIO_LEVEL,
  STATED_FREQUENCIES,
} from './reference-levels.ts';
import { amount } from './words.ts';

/** Frequencies of the mains, Hz. */
export type MainsFrequency = 50 | 60;

/** A level that a reading is held against, and what is taken for granted with it. */
export interface Level {
  /** In the unit of the reading. */
  value: number;
  /** "all of it lies above 3 kHz, as from a driver": behind "if". Undefined where there is no if. */
  condition: string | undefined;
}

/** The levels for one field. */
export interface Levels {
  limit: Limit;
  /** What the share is taken of that is sorted and warned by. */
  strict: Level;
  /** The other end, where the frequency is not known and two ends are told. */
  mild: Level | undefined;
  /** How the frequency is taken: a sentence part. */
  frequency: string;
}

const LOW_FREQUENCY = {
  magnetic: { limit: MAGNETIC_LEVEL, at: magneticReferenceLevel, lowest: LOWEST_MAGNETIC_LEVEL },
  electric: { limit: ELECTRIC_LEVEL, at: electricReferenceLevel, lowest: LOWEST_ELECTRIC_LEVEL },
} as const;

/**
 * The levels that a reading is held against. With a frequency that the meter showed, the level there. Without, two
 * ends: the strict one is the lowest level, which holds from 3 kHz on, where drivers work; the mild one that of the
 * mains (ICNIRP 2010). Radio has one, the lowest for power density (ICNIRP 2020).
 *
 * @param frequency Hz, as the meter showed it for the reading with the panel on
 */
export function levelsFor(kind: FieldKind, mains: MainsFrequency, frequency: Figure | undefined): Levels {
  if (kind === 'radio') {
    return {
      limit: RADIO_LEVEL,
      strict: { value: MILLI * LOWEST_RADIO_LEVEL, condition: undefined },
      mild: undefined,
      frequency: `the radio meter gives no frequency; the lowest of the levels for power density, ${LOWEST_RADIO_LEVEL} W/m², is taken, and above 2 GHz the share would be a fifth of this one; the levels are for averages over 30 min, away from the source`,
    };
  }
  const { limit, at, lowest } = LOW_FREQUENCY[kind];
  if (frequency) {
    return {
      limit,
      strict: {
        value: at(frequency.value),
        condition: `all of it is at the ${hertz(frequency)} that the meter showed`,
      },
      mild: undefined,
      frequency: 'where the meter showed a frequency, all of the reading is taken to be at it',
    };
  }
  return {
    limit,
    strict: { value: lowest, condition: 'all of it lies above 3 kHz, as from a driver' },
    mild: { value: at(mains), condition: `all of it is at the mains’ ${mains} Hz` },
    frequency:
      'where the meter gave no frequency, both ends are told; drivers work at tens of kilohertz, where the level is lowest, so that the strict end comes first',
  };
}

/** The frequency that a share can be taken at: one value, from 25 Hz to 100 kHz. */
export function statedFrequency({ frequency }: FieldReading): Figure | undefined {
  if (!frequency || !isFigure(frequency) || frequency.bound) return undefined;
  const { from, to } = STATED_FREQUENCIES;
  return frequency.value >= from && frequency.value <= to ? frequency : undefined;
}

/** The frequency as it was read: "40 kHz" from 1000 Hz up. */
export function hertz({ value }: Figure): string {
  return value >= 1000 ? amount(value / 1000, 'Hz').replace(/Hz$/, 'kHz') : amount(value, 'Hz');
}
