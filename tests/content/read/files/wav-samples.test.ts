import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { wavSamples as wavSamplesOf } from '../../../../src/content/read/files/wav-samples.ts';

const file = (name: string) => readFileSync(new URL(`../../../fixtures/sound/${name}.wav`, import.meta.url));
const wavSamples = (bytes: Uint8Array) =>
  wavSamplesOf({ size: bytes.length, read: (from, length) => bytes.subarray(from, from + length) });
const read = (bytes: Uint8Array) => {
  const sound = wavSamples(bytes);
  if ('kind' in sound) throw new Error(sound.kind);
  return sound;
};

describe('WAV files that another tool made', () => {
  test.each([
    ['unsigned-8', '8-bit', 0.01],
    ['signed-16', '16-bit', 1e-4],
    ['signed-24', '24-bit', 1e-6],
    ['signed-32', '32-bit', 1e-7],
    ['float-32', '32-bit float', 1e-7],
    ['float-64', '64-bit float', 1e-7],
    ['stereo-16', '16-bit', 1e-4],
  ])('%s holds the sine that it was made from', (name, format, tolerance) => {
    const { samples, rate, ...sound } = read(file(name));
    expect(rate).toBe(16000);
    expect(samples).toHaveLength(1600);
    expect(sound).toMatchObject({ format, clipped: 0, channel: 1, seconds: 0.1 });
    samples.forEach((it, i) => {
      expect(Math.abs(it - 0.5 * Math.sin((2 * Math.PI * 1000 * i) / 16000))).toBeLessThan(tolerance);
    });
  });

  test('take the channel with more sound', () => {
    const bytes = file('stereo-16');
    for (let i = 44; i < bytes.length; i += 4) {
      const [left, right] = [bytes.readInt16LE(i), bytes.readInt16LE(i + 2)];
      bytes.writeInt16LE(right, i);
      bytes.writeInt16LE(left, i + 2);
    }
    expect(read(bytes)).toMatchObject({ channels: 2, channel: 2 });
  });

  test('are floats where the long header says so', () => {
    const plain = file('float-32');
    const data = plain.indexOf('data');
    const head = Buffer.alloc(60);
    head.write('RIFF', 0);
    head.writeUInt32LE(52 + plain.length - data, 4);
    head.write('WAVEfmt ', 8);
    head.writeUInt32LE(40, 16);
    plain.copy(head, 20, plain.indexOf('fmt ') + 8, plain.indexOf('fmt ') + 24);
    head.writeUInt16LE(0xfffe, 20);
    head.writeUInt16LE(22, 36);
    head.writeUInt16LE(32, 38);
    // The first number of a floating point's long name, then what all such names end in.
    Buffer.from('0300000000001000800000aa00389b71', 'hex').copy(head, 44);
    const sound = read(Buffer.concat([head, plain.subarray(data)]));
    expect(sound.format).toBe('32-bit float');
    expect(sound.samples[4]).toBeCloseTo(0.5, 6);
  });

  test('tell what is clipped', () => {
    const bytes = file('signed-16');
    for (let i = 0; i < 5; i += 1) bytes.writeInt16LE(i < 3 ? 32767 : -32768, 44 + 2 * i);
    // Two alone may be the sound itself.
    for (let i = 20; i < 22; i += 1) bytes.writeInt16LE(32767, 44 + 2 * i);
    expect(read(bytes).clipped).toBe(5);
  });

  test('have their mean taken off', () => {
    const bytes = file('signed-16');
    for (let i = 44; i < bytes.length; i += 2) bytes.writeInt16LE(bytes.readInt16LE(i) / 2 + 3000, i);
    const { samples } = read(bytes);
    expect(samples.reduce((sum, it) => sum + it, 0) / samples.length).toBeCloseTo(0, 6);
  });
});

test('an hour of sound is read to its first minute, in pieces', () => {
  const start = file('unsigned-8').subarray(0, 44);
  const size = 44 + 3600 * 16000;
  start.writeUInt32LE(size - 44, 40);
  const asked: number[] = [];
  const sound = wavSamplesOf({
    size,
    read(from, length) {
      asked.push(length);
      return from === 0 ? Buffer.concat([start, Buffer.alloc(length - 44, 128)]) : Buffer.alloc(length, 128);
    },
  });
  expect(sound).toMatchObject({ seconds: 3600, samples: { length: 60 * 16000 } });
  const [head = 0, ...pieces] = asked;
  expect(pieces.reduce((sum, it) => sum + it, 0)).toBe(60 * 16000);
  expect(Math.max(head, ...pieces)).toBeLessThanOrEqual(256 * 1024);
});

describe('files that are broken', () => {
  const bytes = file('signed-16');

  test.each([
    ['empty', bytes.subarray(0, 0), 'no-wav'],
    ['a head alone', bytes.subarray(0, 30), 'no-wav'],
    ['without a sample', Buffer.concat([bytes.subarray(0, 40), Buffer.alloc(4)]), 'empty'],
    ['cut short', bytes.subarray(0, 1000), 'cut-short'],
    ['words', Buffer.from('time;level\n0;42'), 'no-wav'],
  ])('%s', (_, broken, kind) => {
    expect(wavSamples(broken)).toMatchObject({ kind });
  });

  test('are told by what is packed, or no number', () => {
    const packed = Buffer.from(bytes);
    packed.writeUInt16LE(7, 20);
    packed.writeUInt16LE(8, 34);
    expect(wavSamples(packed)).toMatchObject({ kind: 'packed' });
    const floats = file('float-32');
    floats.writeFloatLE(Number.NaN, floats.indexOf('data') + 20);
    expect(wavSamples(floats)).toEqual({ kind: 'not-numbers' });
    const odd = Buffer.from(bytes);
    odd.writeUInt32LE(3, 24);
    expect(wavSamples(odd)).toEqual({ kind: 'odd-rate', rate: 3 });
  });

  test('whose recorder did not know how long they get are read as far as they go', () => {
    const open = Buffer.from(bytes);
    open.writeUInt32LE(0xffffffff, 40);
    expect(read(open).samples).toHaveLength(1600);
  });

  test('never throw, whatever is changed', () => {
    const small = bytes.subarray(0, 400);
    small.writeUInt32LE(356, 40);
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(small.length - 1), fc.nat(255)), { minLength: 1, maxLength: 8 }),
        fc.nat(small.length),
        (changes, end) => {
          const changed = Buffer.from(small);
          for (const [place, byte] of changes) changed[place] = byte;
          const sound = wavSamples(end > small.length / 2 ? changed : changed.subarray(0, end));
          expect('kind' in sound || sound.samples.every(Number.isFinite)).toBe(true);
        },
      ),
      { numRuns: 300, seed: 3 },
    );
  });
});
