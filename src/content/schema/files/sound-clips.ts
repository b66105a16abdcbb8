import { z } from 'zod';
import { quantity } from '../fields.ts';
import { fileEntry, fileName } from './file-entry.ts';

/** Endings of sound clips. */
export const CLIP_ENDINGS = ['.wav'];

const clip = (meaning: string, example: string) => fileEntry(meaning, example, CLIP_ENDINGS);

const calibration = z
  .strictObject({
    file: fileName('The clip of the calibrator’s tone: WAV, beside index.md.', 'tone.wav', CLIP_ENDINGS),
    level: quantity('sound', 'Level that the calibrator gives, dB.', { min: 40, max: 140 }, '94 dB'),
    uncertainty: quantity(
      'sound',
      'How far that level may be off, 95 % (k = 2), dB; without it the levels have no interval.',
      { positive: true, max: 10 },
      '0.6 dB',
    ).optional(),
  })
  .describe(
    'A tone of known level, recorded by the same microphone at the same gain: without it there are tones, but no levels.',
  );

/** Sound recorded with the panel on and off. */
export const soundClips = z
  .strictObject({
    on: clip('Sound with the panel on, both channels, a few seconds long.', 'running.wav'),
    off: clip('The room with the panel off, recorded alike.', 'room.wav').optional(),
    calibration: calibration.optional(),
    distance: quantity(
      'length',
      'Distance from the panel to the microphone.',
      { positive: true, max: 1000 },
      '1 m',
    ).optional(),
  })
  .describe('Sound clips: the level, and tones that one number hides. Record all with one fixed gain.');

export type SoundClips = z.output<typeof soundClips>;
export type SoundClipEntry = SoundClips['on'] | NonNullable<SoundClips['calibration']>;
