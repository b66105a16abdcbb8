import wavefile from 'wavefile';
import { clipLevel } from '../../../src/measure/sound/clip-level.ts';
import { criticalBandwidth } from '../../../src/measure/sound/critical-band.ts';
import { randomNumbers } from '../../measure/random-numbers.ts';
import type { GeneratedFile } from './generated-file.ts';

/** What a panel of the demonstration sounds like at the microphone. */
interface Sounding {
  panel: string;
  /** dB(A), panel on and off. */
  on: number;
  off: number;
  /** Tones of its fans and drivers, by their tone-to-noise ratio in dB. */
  tones: ReadonlyArray<{ frequency: number; ratio: number }>;
  seed: number;
}

const SOUNDINGS: readonly Sounding[] = [
  { panel: 'ruddlestone-r150', on: 49.1, off: 31.5, tones: [{ frequency: 410, ratio: 6 }], seed: 71 },
  { panel: 'ostrel-vagg', on: 44.6, off: 32.1, tones: [], seed: 72 },
  // The whistle that the notes speak of: loud against its neighbours, hardly anything in dB(A).
  { panel: 'quennick-tope', on: 50.8, off: 31.9, tones: [{ frequency: 8200, ratio: 15 }], seed: 73 },
];

const RATE = 22050;
/** What the calibrator gives, dB, and its amplitude, of full scale. */
const CALIBRATOR = 94;
const AMPLITUDE = 0.6;
/** Above this frequency, Hz, the noise of fans falls off. */
const CORNER = 900;

/** Noise of a density of 1 at low frequencies, a square of full scale a hertz, through a filter of the first order. */
function rush(seconds: number, seed: number): Float64Array {
  const numbers = randomNumbers(seed);
  const keep = Math.exp((-2 * Math.PI * CORNER) / RATE);
  let last = 0;
  return Float64Array.from({ length: Math.round(seconds * RATE) }, () => {
    last = keep * last + (1 - keep) * Math.sqrt(RATE / 2) * numbers.normal();
    return last;
  });
}

/** Its density at a frequency. */
function densityAt(frequency: number): number {
  const keep = Math.exp((-2 * Math.PI * CORNER) / RATE);
  const angle = (2 * Math.PI * frequency) / RATE;
  return (1 - keep) ** 2 / (1 - 2 * keep * Math.cos(angle) + keep ** 2);
}

function atLevel(samples: Float64Array, level: number): Float32Array {
  const before = clipLevel({ rate: RATE, samples: Float32Array.from(samples) })?.level ?? 0;
  // The calibrator's amplitude stands for its level.
  const wanted = level - CALIBRATOR + 10 * Math.log10(AMPLITUDE ** 2 / 2);
  const factor = 10 ** ((wanted - before) / 20);
  return Float32Array.from(samples, (it) => factor * it);
}

function wav(samples: Float32Array): Uint8Array {
  const file = new wavefile.WaveFile();
  file.fromScratch(
    1,
    RATE,
    '16',
    Int16Array.from(samples, (it) => Math.round(32767 * Math.max(-1, Math.min(1, it)))),
  );
  return file.toBuffer();
}

/** Sound clips of panels, of the room and of a calibrator, recorded at one gain. */
export function soundClips(): GeneratedFile[] {
  return SOUNDINGS.flatMap(({ panel, on, off, tones, seed }) => {
    const running = rush(1.35, seed);
    for (const { frequency, ratio } of tones) {
      const amplitude = Math.sqrt(2 * 10 ** (ratio / 10) * densityAt(frequency) * criticalBandwidth(frequency));
      running.forEach((it, i) => {
        running[i] = it + amplitude * Math.sin((2 * Math.PI * frequency * i) / RATE);
      });
    }
    const tone = Float32Array.from(
      { length: RATE / 2 },
      (_, i) => AMPLITUDE * Math.sin((2 * Math.PI * 1000 * i) / RATE),
    );
    return [
      { panel, name: 'running.wav', bytes: wav(atLevel(running, on)) },
      { panel, name: 'room.wav', bytes: wav(atLevel(rush(1.1, seed + 100), off)) },
      { panel, name: 'calibrator.wav', bytes: wav(tone) },
    ];
  });
}
