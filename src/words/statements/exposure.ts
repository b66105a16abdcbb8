import { ROW_EDGE } from '../../measure/exposure/flicker-lines.ts';
import { LONG_EXPOSURE, LONGEST_TIMED } from '../../measure/exposure/infrared.ts';
import { relation } from '../../measure/exposure/made-of.ts';
import { number } from '../../measure/numbers.ts';
import type { Statement } from '../../measure/statement.ts';
import { amount, asRead, hertzWords } from '../limits/amounts.ts';
import { conditionWords, frequencyTaken } from '../limits/field-frequency.ts';
import type { WordsOf } from '../speaker.ts';

/** Infrared at the eye and heat. */
const INFRARED_WORDS: WordsOf<
  | 'near-infrared-not-measured'
  | 'infrared-above-a-bound'
  | 'infrared-not-known-nearer'
  | 'infrared-not-read-there'
  | 'infrared-share-range'
  | 'infrared-share-range-equation'
  | 'infrared-beyond-reach'
  | 'light-beyond-reach'
  | 'heat-missed'
  | 'places-off-middle'
  | 'infrared-raised-from-middle'
  | 'exposure-time-untimed'
  | 'exposure-time-untimed-equation'
  | 'exposure-time-no-lower-end'
  | 'exposure-time-all-at-end'
  | 'retina-needs-radiance'
  | 'retina-from-field'
  | 'retina-from-emitters'
  | 'retina-from-one'
  | 'retina-unlike-emitters'
  | 'retina-one-brightest'
  | 'emitter-edge'
  | 'emitter-edge-taken'
  | 'combined-not-measured'
> = {
  'near-infrared-not-measured': () => 'near-infrared alone was not measured',
  'infrared-above-a-bound': () => 'near-infrared alone is only known to be above a bound',
  'infrared-not-known-nearer': ({ than }) =>
    `not known nearer than the reading at ${number(than)} cm; not less than there`,
  'infrared-not-read-there': () => 'a range, for it was not read at this distance',
  'infrared-share-range': ({ low, high }) => `from ${number(low)} % to ${number(high)} %`,
  'infrared-share-range-equation': ({ distance, from, low, high }) =>
    `s(${number(distance)} cm) < s(${number(from)} cm) at its cautious end = ${number(high)} %; s(${number(distance)} cm) > ${number(low)} %`,
  'infrared-beyond-reach': () => 'Infrared beyond the meter’s reach',
  'light-beyond-reach': () => 'Light beyond the meter’s reach',
  'heat-missed': () => 'heat that the panel radiates and the meter misses is not in it',
  'places-off-middle': () => 'Places off the middle',
  'infrared-raised-from-middle': () =>
    'near-infrared was read before the middle only, and raised by as much as the highest reading lay above the middle at the panel’s own distance',
  'exposure-time-untimed': () => `${LONGEST_TIMED} s stands for “not limited by time in this standard”`,
  'exposure-time-untimed-equation': ({ irradiance, bound }) =>
    `E ${relation(bound)} ${number(irradiance)} W/m² ≤ ${LONG_EXPOSURE} W/m²: not limited by time`,
  'exposure-time-no-lower-end': () =>
    'the irradiance is only known to be above a bound, so that the time has no lower end',
  'exposure-time-all-at-end': () => `all of its interval lies at ${LONGEST_TIMED} s, where the formula ends`,
  'retina-needs-radiance': () => 'needs radiance; only irradiance on a plane was measured',
  'retina-from-field': () => 'a bound from below, as if the whole LED field were evenly bright; no all-clear',
  'retina-from-emitters': ({ count }) =>
    `a bound from below, as if all ${count} emitters were equally bright; no all-clear`,
  'retina-from-one': () => 'a bound from above, as if one emitter straight ahead gave all the light there',
  'retina-unlike-emitters': () => 'How much brighter one emitter is than the others',
  'retina-one-brightest': () => 'Emitters that are brighter from the side',
  'emitter-edge': () => 'Width of an emitter as it looks lit',
  'emitter-edge-taken': ({ halfWidth }) => `±${number(100 * halfWidth)} % of what was read, rectangular`,
  'combined-not-measured': () => 'both channels together were not measured',
};

/** What holding figures against published limits may say; `say` puts what stands within into words. */
export const exposureWords = (
  say: (it: Statement) => string,
): typeof INFRARED_WORDS &
  WordsOf<
    | 'flicker-not-measured'
    | 'flicker-frequency-not-recorded'
    | 'flicker-lines-visible-only'
    | 'flicker-multiple-unknown'
    | 'flicker-frequency-a-bound'
    | 'flicker-without-frequency'
    | 'flicker-no-line-above'
    | 'flicker-near-step'
    | 'flicker-frequency'
    | 'not-measured-panel-on'
    | 'not-measured-panel-off'
    | 'field-share-holds-if'
    | 'field-radio-lowest-level'
    | 'field-share-at-shown-frequency'
    | 'sound-on-a-bound'
    | 'sound-room-unknown'
    | 'sound-room-beyond-reach'
    | 'sound-room-too-quiet'
    | 'sound-room-too-loud'
    | 'sound-not-told-from-room'
    | 'sound-quiet-room-equation'
  > => ({
  ...INFRARED_WORDS,
  'flicker-not-measured': () => 'flicker was not measured',
  'flicker-frequency-not-recorded': () => 'no frequency is recorded',
  'flicker-lines-visible-only': () => 'the lines speak of visible light',
  'flicker-multiple-unknown': ({ because }) => `not known, for ${say(because)}`,
  'flicker-frequency-a-bound': () => 'the frequency is only known to be beyond a bound',
  'flicker-without-frequency': () => 'without a frequency there is no line',
  'flicker-no-line-above': ({ hertz }) => `no line applies, for the standard has none above ${hertz} Hz`,
  'flicker-near-step': ({ hertz, multiple, bound }) =>
    `${number(hertz)} Hz is close to ${ROW_EDGE} Hz, where the line steps; just below it the multiple would be ${bound ? `${bound} ` : ''}${number(multiple, 3)}`,
  'flicker-frequency': () => 'Frequency of the flicker',
  'not-measured-panel-on': () => 'not measured with the panel on',
  'not-measured-panel-off': () => 'not measured with the panel off',
  'field-share-holds-if': ({ frequency }) => `holds if ${conditionWords(frequency)}; ${frequencyTaken(frequency)}`,
  'field-radio-lowest-level': () => frequencyTaken(undefined),
  'field-share-at-shown-frequency': ({ hertz }) =>
    `the meter showed ${hertzWords(hertz)}, and the share is for that one`,
  'sound-on-a-bound': ({ level, bound }) =>
    `the reading with the panel on is only a bound, ${asRead({ value: level, bound, unit: 'dB(A)' })}`,
  'sound-room-unknown': ({ because }) => `the room can’t be taken off: ${say(because)}`,
  'sound-room-beyond-reach': () => 'the room was louder than the meter reads',
  'sound-room-too-quiet': () => 'only an upper bound is known, for the room was too quiet for the meter',
  'sound-room-too-loud': () => 'only an upper bound is known, for the room is too loud for the full correction',
  'sound-not-told-from-room': ({ atMost }) => `not distinguishable from the room: at most ${amount(atMost, 'dB(A)')}`,
  'sound-quiet-room-equation': ({ on, room }) =>
    `L ≤ L_on = ${number(on)} dB(A), the room being below ${number(room)} dB(A)`,
});
