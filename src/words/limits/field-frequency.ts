import type { FieldFrequency } from '../../measure/exposure/field-levels.ts';
import { LOWEST_RADIO_LEVEL, SLOPE_TO } from '../../measure/exposure/reference-levels.ts';
import { hertzWords } from './amounts.ts';

/** What a share takes for granted of the field's frequency: stands behind "if". */
export function conditionWords(frequency: FieldFrequency): string {
  switch (frequency.from) {
    case 'driver':
      return `all of it lies above ${hertzWords(SLOPE_TO)}, as from a driver`;
    case 'mains':
      return `all of it is at the mains’ ${frequency.hertz} Hz`;
    case 'instrument':
      return `all of it is at the ${hertzWords(frequency.hertz)} that the meter showed`;
  }
}

/** How the frequency is taken; a sentence without its full stop. Undefined for radio. */
export function frequencyTaken(frequency: FieldFrequency | undefined): string {
  if (!frequency) {
    return `the radio meter gives no frequency; the lowest of the levels for power density, ${LOWEST_RADIO_LEVEL} W/m², is taken, and above 2 GHz the share would be a fifth of this one; the levels are for averages over 30 min, away from the source`;
  }
  return frequency.from === 'instrument'
    ? 'where the meter showed a frequency, all of the reading is taken to be at it'
    : 'where the meter gave no frequency, both ends are told; drivers work at tens of kilohertz, where the level is lowest, so that the strict end comes first';
}
