import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { soundClipReader } from '../../../../src/content/read/files/sound-clip.ts';
import { soundClips } from '../../../../src/content/schema/files/sound-clips.ts';

const fixture = (name: string) => fileURLToPath(new URL(`../../../fixtures/sound/${name}`, import.meta.url));
const read = (name: string, bytes = 4000) => soundClipReader.read({ path: fixture(name), name, bytes }, { file: name });

describe('a sound clip', () => {
  test('says which channel was taken', () => {
    expect(read('stereo-16.wav')).toMatchObject({ notes: [{ code: 'clip-one-channel', channels: 2, channel: 1 }] });
    expect(read('signed-24.wav')).toMatchObject({ notes: [], data: { format: '24-bit' } });
  });

  test('that is no WAV is refused, whatever it is called', () => {
    expect(read('make.py')).toMatchObject({ fault: { found: 'no WAV file, by its content' } });
  });

  test('is told by its content', () => {
    const path = fixture('signed-16.wav');
    const bytes = readFileSync(path);
    expect(soundClipReader.recognise({ path, name: 'x', bytes, size: bytes.length })).toEqual({
      confidence: 1,
      understood: 'a sound clip of 0.1 s, 16000 samples a second, 16-bit, mono',
    });
    expect(soundClipReader.recognise({ path, name: 'x', bytes: bytes.subarray(4), size: 9 })).toBeUndefined();
  });
});

describe('the block of sound clips', () => {
  test('takes names and blocks alike', () => {
    expect(soundClips.parse({ on: 'a.wav', off: { file: 'b.wav' } })).toEqual({
      on: { file: 'a.wav' },
      off: { file: 'b.wav' },
    });
  });

  test('needs the level of its calibration', () => {
    expect(soundClips.safeParse({ on: 'a.wav', calibration: { file: 'c.wav' } }).success).toBe(false);
    expect(soundClips.safeParse({ off: 'a.wav' }).success).toBe(false);
  });
});
