import type { Statement } from '../../measure/statement.ts';
import { IMPOSSIBLE_MARK } from '../marks.ts';
import { nameOf } from '../names.ts';
import type { WordsOf } from '../speaker.ts';

/** What putting the ledger together may say; `say` puts what stands within into words. */
export const ledgerWords = (
  say: (it: Statement) => string,
): WordsOf<
  | 'still-a-draft'
  | 'withdrawn'
  | 'size-class-not-known'
  | 'range-not-known'
  | 'impossible-as-it-stands'
  | 'input-not-measured'
  | 'calibrated-later'
  | 'frequency-error-not-stated'
  | 'read-at'
  | 'reading-distance-not-recorded'
  | 'grid-not-measured'
  | 'field-not-measured'
  | 'field-too-small'
  | 'not-worked-out'
  | 'standby-only-a-bound'
  | 'standby-as-large'
  | 'current-session-only'
  | 'no-session-yet'
  | 'no-price'
  | 'first-session'
  | 'no-power-to-compare'
  | 'other-conditions'
  | 'light-carried-over'
> => ({
  'still-a-draft': () => 'still a draft',
  withdrawn: () => 'withdrawn from the guide',
  'size-class-not-known': () => 'its size class is not known',
  'range-not-known': ({ because }) => `its range is not known: ${say(because)}`,
  'impossible-as-it-stands': ({ finding }) =>
    `${IMPOSSIBLE_MARK} impossible as it stands. ${say(finding).replace(/\.$/, '')}`,
  'calibrated-later': ({ first }) => `the meter was first calibrated on ${first}, after this session`,
  'frequency-error-not-stated': () => 'the meter’s file states none for the frequency',
  'read-at': ({ distance }) => `read at ${distance}`,
  'reading-distance-not-recorded': () => 'the distance of the reading is not recorded',
  'grid-not-measured': () => 'the grid was not measured',
  'field-not-measured': () => 'the LED field was not measured',
  'field-too-small': ({ inset }) => `the LED field is too small for points ${inset} inside its edges`,
  'not-worked-out': () => 'not worked out',
  'standby-only-a-bound': () => 'standby is known only as a bound',
  'standby-as-large': () => 'standby draws as much as the mode itself, as far as the meter tells',
  'current-session-only': () => 'calculated for the current session only',
  'no-session-yet': () => 'there is no bench session yet',
  'no-price': () => 'no price is recorded',
  'first-session': () => 'the first session',
  'no-power-to-compare': () => 'one of the two has no optical power',
  'other-conditions': () => 'measured under other conditions',
  'light-carried-over': () => 'the light was not read again',
  'input-not-measured': ({ metric }) => {
    const name = nameOf(metric);
    // "Mains draw, both channels" is set off at both of its ends.
    return `${name}${name.includes(',') ? ',' : ''} was not measured`;
  },
});
