import { CLIP_ENDINGS, type SoundClipEntry } from '../../schema/files/sound-clips.ts';
import { withBytes } from './file-bytes.ts';
import type { FileFault, FileReader } from './file-kind.ts';
import { LONGEST_CLIP, type WavFault, type WavSound, wavHead, wavSamples } from './wav-samples.ts';

declare module './file-kind.ts' {
  interface BenchFileData {
    sound: WavSound;
  }
  interface BenchFileEntry {
    sound: SoundClipEntry;
  }
}

declare module '../../../measure/statement.ts' {
  interface StatementData {
    /** Of several channels the one with more sound was taken, counted from 1. */
    'clip-one-channel': { channels: number; channel: number };
    /** Seconds that were looked at, of so many. */
    'clip-start-alone': { kept: number; seconds: number };
  }
}

const AS_WAV = 'sound as WAV: 8, 16, 24 or 32 bits, or floating point';

/** A sound clip. */
export const soundClipReader: FileReader<'sound'> = {
  kind: 'sound',
  called: 'a sound clip',
  places: [
    { path: ['soundClips', 'on'], words: 'the panel on' },
    { path: ['soundClips', 'off'], words: 'the room, panel off' },
    { path: ['soundClips', 'calibration'], words: 'the calibrator’s tone' },
  ],
  endings: CLIP_ENDINGS,
  read({ path }) {
    const sound = withBytes(path, wavSamples);
    if ('kind' in sound) return { fault: wavFault(sound) };
    const { channels, channel, seconds } = sound;
    return {
      data: sound,
      notes: [
        ...(channels > 1 ? [{ code: 'clip-one-channel', channels, channel } as const] : []),
        ...(seconds > LONGEST_CLIP ? [{ code: 'clip-start-alone', kept: LONGEST_CLIP, seconds } as const] : []),
      ],
    };
  },
  recognise({ path, bytes }) {
    const start = Buffer.from(bytes.subarray(0, 12)).toString('latin1');
    if (!/^(?:RIFF|RIFX|RF64).{4}WAVE/s.test(start)) return undefined;
    const sound = withBytes(path, wavHead);
    if ('kind' in sound) return { confidence: 0.9, understood: `a sound clip, but ${wavFault(sound).found}` };
    const { seconds, rate, format, channels } = sound;
    const many = channels === 1 ? 'mono' : `${channels} channels`;
    return {
      confidence: 1,
      understood: `a sound clip of ${seconds.toFixed(1)} s, ${rate} samples a second, ${format}, ${many}`,
    };
  },
};

function wavFault(fault: WavFault): FileFault {
  switch (fault.kind) {
    case 'packed':
      return {
        found: `sound that is packed (${fault.what})`,
        wanted: AS_WAV,
        hint: 'packing changes tones: export it unpacked (PCM) from what recorded it',
      };
    case 'cut-short':
      return {
        found: `${fault.there.toFixed(2)} s of the ${fault.said.toFixed(2)} s that its head promises`,
        wanted: 'a whole clip',
        hint: 'it may have been cut short on its way: copy it again',
      };
    case 'empty':
      return { found: 'no sound: a head alone', wanted: 'a clip of a second or more' };
    case 'not-numbers':
      return { found: 'samples that are no numbers', wanted: AS_WAV };
    case 'odd-rate':
      return { found: `${fault.rate} samples a second`, wanted: 'at least 1,000 a second; 44,100 or 48,000 is usual' };
    default:
      return { found: 'no WAV file, by its content', wanted: AS_WAV, hint: 'export the recording as WAV (PCM)' };
  }
}
