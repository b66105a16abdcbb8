import { fixed } from '../format.ts';
import { hertzWords } from '../limits/amounts.ts';
import { rounded } from '../rounded.ts';
import type { WordsOf } from '../speaker.ts';

/** Why a calibration clip gives no level. */
const FAULTS = {
  'no-tone': 'it holds no clear tone',
  clipped: 'it is overdriven',
  'other-rate': 'it has another number of samples a second than the clip of the panel',
} as const;

/** What sound clips tell. */
export const SOUND_WORDS: WordsOf<
  | 'clip-one-channel'
  | 'clip-start-alone'
  | 'clip-not-calibrated'
  | 'clip-calibration-unusable'
  | 'clip-too-short'
  | 'clip-overdriven'
  | 'clip-missing'
  | 'clip-room-missing'
  | 'no-tone-found'
  | 'calibrator-level'
  | 'calibrator-as-stated'
  | 'calibrator-not-stated'
  | 'clip-scatter'
  | 'clip-scatter-of'
  | 'microphone-response'
  | 'microphone-as-flat'
  | 'room-not-recorded'
  | 'tone-ratio-scatter'
  | 'tone-band-width'
  | 'half-band'
  | 'tone-prominent'
  | 'clip-is-overdriven'
  | 'clips-unlike'
  | 'calibration-clip-unusable'
  | 'one-number-hides-it'
  | 'turn-gain-down'
  | 'record-alike'
  | 'record-calibrator'
> = {
  'clip-one-channel': ({ channels, channel }) => `channel ${channel} of ${channels}, which has more sound`,
  'clip-start-alone': ({ kept, seconds }) => `the first ${kept} s of ${rounded(seconds)} s are looked at`,
  'clip-not-calibrated': () => 'no calibrator was recorded: a clip alone says nothing of how loud it was',
  'clip-calibration-unusable': ({ fault }) => `the calibrator’s clip can’t be used: ${FAULTS[fault]}`,
  'clip-too-short': ({ shortest }) => `the clip is shorter than ${shortest} s, or holds no sound`,
  'clip-overdriven': () => 'the clip is overdriven: how loud it was, and which tones it had, is lost',
  'clip-missing': () => 'no clip with the panel on',
  'clip-room-missing': () => 'the room was not recorded',
  'no-tone-found': ({ from, to }) => `no tone of the panel’s stands out from ${hertzWords(from)} to ${hertzWords(to)}`,
  'calibrator-level': () => 'Level of the calibrator',
  'calibrator-as-stated': ({ level, expanded }) =>
    `${rounded(level)} dB ± ${rounded(expanded)} dB at 95 %, as the session states; normal; common to all clips of the session`,
  'calibrator-not-stated': () => 'how sure the calibrator’s level is, is not stated',
  'clip-scatter': () => 'Scatter of the clip’s level',
  'clip-scatter-of': ({ stretches }) => `from ${stretches} stretches of the clip`,
  'microphone-response': () => 'The microphone',
  'microphone-as-flat': () =>
    'taken for as sensitive at all frequencies as at the calibrator’s, and at one gain for all clips',
  'room-not-recorded': () => 'the room was not recorded with the panel off: the tone may be the room’s',
  'tone-ratio-scatter': () => 'Scatter of the ratio',
  'tone-band-width': () => 'Width of a narrow band',
  'half-band': () => 'half a band either way, rectangular',
  'tone-prominent': ({ frequency, ratio, criterion }) =>
    `A tone at ${hertzWords(Number(frequency.toPrecision(2)))} stands ${fixed(ratio, 1)} dB above the noise about it; from ${fixed(criterion, 1)} dB on it is prominent. One number in dB(A) hides it.`,
  'clip-is-overdriven': ({ clip, samples }) =>
    `${samples} samples of the clip with the panel ${clip} are at full scale: ${clip === 'on' ? 'levels and tones are withheld' : 'the room was louder than it tells'}.`,
  'clips-unlike': ({ one, other }) =>
    `The clips were not recorded alike: ${one}, and ${other}. If the gain was changed as well, their levels can’t be compared.`,
  'calibration-clip-unusable': ({ fault }) => `The calibrator’s clip gives no level: ${FAULTS[fault]}.`,
  'one-number-hides-it': () => 'nothing to mend if the clip is right; say in the notes whether it was heard',
  'turn-gain-down': () => 'record again with less gain',
  'record-alike': () => 'record all clips in one go, with one fixed gain and no automatic level',
  'record-calibrator': () =>
    'record the calibrator’s tone on the microphone, for a second or more, at the same settings',
};
