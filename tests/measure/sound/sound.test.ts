import { describe, expect, test } from 'vitest';
import { aWeighting } from '../../../src/measure/sound/a-weighting.ts';
import { calibrationTone } from '../../../src/measure/sound/calibration-tone.ts';
import { clipLevel } from '../../../src/measure/sound/clip-level.ts';
import {
  criticalBand,
  criticalBandwidth,
  hearingThreshold,
  prominentFrom,
} from '../../../src/measure/sound/critical-band.ts';
import { findTones, tonesUpTo, toneToNoiseRatio } from '../../../src/measure/sound/tones.ts';
import { soundOf } from '../../support/bench-files/sounds.ts';
import { randomNumbers } from '../random-numbers.ts';

const RATE = 22050;
const found = (samples: Float32Array, rate = RATE) => findTones({ rate, samples })?.tones ?? [];

describe('the A-weighting', () => {
  // IEC 61672-1:2013, Table 3 to 0.1 dB (secondary sources), and its equation at the exact centres 1000 · 10^(0.3 n).
  test.each([
    [-5, -39.4, -39.44],
    [-4, -26.2, -26.194],
    [-3, -16.1, -16.098],
    [-2, -8.6, -8.63],
    [-1, -3.2, -3.233],
    [0, 0, 0],
    [1, 1.2, 1.2],
    [2, 1.0, 0.97],
    [3, -1.1, -1.111],
    [4, -6.6, -6.603],
  ])('of octave %d is %d dB', (octave, table, computed) => {
    const level = aWeighting(1000 * 10 ** (0.3 * octave));
    expect(Math.abs(level - table)).toBeLessThanOrEqual(0.05);
    expect(level).toBeCloseTo(computed, 2);
  });
});

describe('critical bands', () => {
  test.each([
    [1000, 162.2],
    [500, 117.3],
    [120, 101.04],
  ])('about %d Hz are %d Hz wide', (frequency, width) => {
    expect(criticalBandwidth(frequency)).toBeCloseTo(width, 1);
    const { from, to } = criticalBand(frequency);
    expect(to - from).toBeCloseTo(criticalBandwidth(frequency), 9);
    if (frequency > 500) expect(from * to).toBeCloseTo(frequency ** 2, 3);
    else expect((from + to) / 2).toBeCloseTo(frequency, 9);
  });

  test.each([
    [120, 15.67],
    [100, 16.33],
    [999, 8.004],
    [1000, 8],
    [8200, 8],
  ])('a tone at %d Hz is prominent from %d dB', (frequency, level) => {
    expect(prominentFrom(frequency)).toBeCloseTo(level, 2);
  });

  test('the worked example: 48 of 50 dB at 1 kHz', () => {
    expect(toneToNoiseRatio(48, 50, { critical: 162.2, total: 162.2, tone: 4 })).toBeCloseTo(2.221, 3);
  });

  test('hearing is best near 3.5 kHz and worse at both ends', () => {
    expect(hearingThreshold(3500)).toBeLessThan(-3);
    expect(hearingThreshold(1000)).toBeCloseTo(3.4, 0);
    expect(hearingThreshold(100)).toBeCloseTo(23, 0);
  });
});

describe('the level of a clip', () => {
  test.each([
    [8000, 1000, 0],
    [RATE, 125.893, -16.098],
    [44100, 7943.28, -1.111],
    [48000, 3981.07, 0.97],
  ])('at %d a second, of a tone at %d Hz', (rate, frequency, weighting) => {
    const samples = soundOf({
      rate,
      seconds: 1,
      noise: 0,
      tones: [{ frequency, amplitude: 0.1 }],
      numbers: randomNumbers(1),
    });
    // A sine's mean square is half of its amplitude's square.
    expect(clipLevel({ rate, samples })?.level).toBeCloseTo(10 * Math.log10(0.005) + weighting, 1);
  });

  test('of white noise is its power under the weighting', () => {
    const samples = soundOf({ rate: RATE, seconds: 4, noise: 0.02, numbers: randomNumbers(2) });
    let weighted = 0;
    for (let f = 20; f < RATE / 2; f += 1) weighted += 10 ** (aWeighting(f) / 10) / (RATE / 2);
    const level = clipLevel({ rate: RATE, samples });
    expect(level?.level).toBeCloseTo(10 * Math.log10(0.02 ** 2 * weighted), 1);
    expect(level?.highest).toBeGreaterThan(level?.level ?? 0);
    expect(level?.scatter).toBeLessThan(0.5);
  });

  test('is not told of a click, or of nothing', () => {
    expect(clipLevel({ rate: RATE, samples: new Float32Array(100) })).toBeUndefined();
    expect(clipLevel({ rate: RATE, samples: new Float32Array(RATE) })).toBeUndefined();
  });

  test('of a calibrator is that of its tone alone', () => {
    const tones = [{ frequency: 1000, amplitude: 0.25 }];
    const clip = soundOf({ rate: RATE, seconds: 0.5, noise: 0.003, tones, numbers: randomNumbers(3) });
    const tone = calibrationTone({ rate: RATE, samples: clip });
    expect(tone?.frequency).toBeCloseTo(1000, 0);
    expect(tone?.level).toBeCloseTo(10 * Math.log10(0.25 ** 2 / 2), 1);
    expect(tone?.share).toBeGreaterThan(0.99);
    const noise = soundOf({ rate: RATE, seconds: 0.5, noise: 0.1, numbers: randomNumbers(3) });
    expect(calibrationTone({ rate: RATE, samples: noise })?.share).toBeLessThan(0.2);
  });
});

describe('tones', () => {
  // The ratio by its definition: the tone's mean square over the noise's in a critical band of that width.
  test.each([
    [8200, 0.01, 0.02],
    [3100, 0.009, 0.02],
    [1200, 0.004, 0.02],
    [240, 0.02, 0.02],
  ])('at %d Hz have the ratio that they were made with', (frequency, amplitude, noise) => {
    const numbers = randomNumbers(frequency);
    const samples = soundOf({ rate: 44100, seconds: 2, noise, tones: [{ frequency, amplitude }], numbers });
    const made = 10 * Math.log10(amplitude ** 2 / 2 / ((noise ** 2 * criticalBandwidth(frequency)) / 22050));
    const [tone] = found(samples, 44100);
    expect(tone?.frequency).toBeCloseTo(frequency, -1);
    expect(Math.abs((tone?.ratio ?? 0) - made)).toBeLessThan(1);
    expect(tone?.isProminent).toBe(made >= prominentFrom(frequency));
    expect(tone?.level).toBeCloseTo(10 * Math.log10(amplitude ** 2 / 2), 0);
  });

  test('are not found in white noise, 200 times over', () => {
    let prominent = 0;
    let listed = 0;
    for (let i = 0; i < 200; i += 1) {
      const tones = found(soundOf({ rate: 8000, seconds: 1, noise: 0.05, numbers: randomNumbers(100 + i) }), 8000);
      listed += tones.length;
      prominent += tones.filter((it) => it.isProminent).length;
    }
    expect(prominent).toBe(0);
    expect(listed).toBeLessThanOrEqual(2);
  });

  test('waver, and are one all the same', () => {
    const tones = [{ frequency: 3000, amplitude: 0.02, waver: 4 }];
    const all = found(soundOf({ rate: RATE, seconds: 3, noise: 0.01, tones, numbers: randomNumbers(5) }));
    expect(all.filter((it) => it.isProminent)).toHaveLength(1);
    expect(all[0]?.frequency).toBeCloseTo(3000, -2);
  });

  test('that are heard as one count together, others in the band as neither', () => {
    const numbers = randomNumbers(6);
    const one = [{ frequency: 1000, amplitude: 0.02 }];
    const alone = found(soundOf({ rate: RATE, seconds: 3, noise: 0.01, tones: one, numbers }))[0];
    const near = [...one, { frequency: 1015, amplitude: 0.02 }];
    const pair = found(soundOf({ rate: RATE, seconds: 3, noise: 0.01, tones: near, numbers }));
    expect(pair).toHaveLength(1);
    expect((pair[0]?.ratio ?? 0) - (alone?.ratio ?? 0)).toBeCloseTo(3, 0);
    // At 212 Hz tones 21 Hz apart are still one.
    const low = [{ frequency: 212, amplitude: 0.02 }];
    const lowAlone = found(soundOf({ rate: RATE, seconds: 3, noise: 0.01, tones: low, numbers }))[0];
    const far = [...low, { frequency: 245, amplitude: 0.02 }];
    const two = found(soundOf({ rate: RATE, seconds: 3, noise: 0.01, tones: far, numbers }));
    expect(two).toHaveLength(2);
    expect(two[0]?.ratio).toBeCloseTo(lowAlone?.ratio ?? 0, -0.5);
  });

  test('have no noise about them where there is none', () => {
    const tones = [{ frequency: 2000, amplitude: 0.1 }];
    const [tone] = found(soundOf({ rate: RATE, seconds: 2, noise: 0, tones, numbers: randomNumbers(7) }));
    expect(Number.isFinite(tone?.ratio)).toBe(true);
    expect(tone?.isProminent).toBe(true);
  });

  test('are looked for as far as the rate reaches', () => {
    expect(tonesUpTo(48000)).toBe(11220);
    expect(tonesUpTo(22050)).toBeGreaterThan(8200);
    expect(tonesUpTo(8000)).toBeLessThan(3600);
    expect(found(new Float32Array(100))).toEqual([]);
  });
});
