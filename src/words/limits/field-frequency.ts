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

/** How the frequency is taken; a sentence without its full stop, since why is on the method’s page. Undefined for radio. */
export function frequencyTaken(frequency: FieldFrequency | undefined): string {
  if (!frequency) {
    return `the radio meter gives no frequency, so the lowest level for power density is taken, ${LOWEST_RADIO_LEVEL} W/m²`;
  }
  return frequency.from === 'instrument'
    ? 'where the meter showed a frequency, all of the reading is taken to be at it'
    : 'the meter gave no frequency, so both ends are told';
}
