import { describe, expect, test } from 'vitest';
import type { AnyReadFile } from '../../../src/content/read/files/file-kind.ts';
import { soundClips } from '../../../src/content/schema/files/sound-clips.ts';
import { type FileContext, findAnew } from '../../../src/ledger/files/file-maker.ts';
import { soundClipsMaker } from '../../../src/ledger/files/sound-clips.ts';
import { type Figure, isFigure } from '../../../src/measure/figure.ts';
import { soundInShort, toneAnswer } from '../../../src/site/files/sound-words.ts';
import { say } from '../../../src/words/say.ts';
import { randomNumbers } from '../../measure/random-numbers.ts';
import { soundOf } from '../../support/bench-files/sounds.ts';

const RATE = 16000;
const numbers = randomNumbers(21);

type Part = 'on' | 'off' | 'calibration';
interface Clip {
  samples: Float32Array;
  clipped?: number;
  rate?: number;
}

const noise = (level: number, tones: Array<{ frequency: number; amplitude: number }> = []) => ({
  samples: soundOf({ rate: RATE, seconds: 1.5, noise: level, tones, numbers }),
});
/** 94 dB at an amplitude of 0.2, so that full scale (a mean square of 1) is 94 + 17.0 dB. */
const CALIBRATOR = {
  samples: soundOf({ rate: RATE, seconds: 1, noise: 0, tones: [{ frequency: 1000, amplitude: 0.2 }], numbers }),
};
const WHISTLE = { frequency: 3000, amplitude: 0.02 };

function made(clips: Partial<Record<Part, Clip>>, { uncertainty = '0.6 dB', typed = [] as Figure[] } = {}) {
  const files = Object.entries(clips).map(([part, clip]) => ({
    kind: 'sound',
    field: ['soundClips', part],
    data: () => ({ rate: RATE, clipped: 0, format: '16-bit', ...clip }),
  })) as unknown as AnyReadFile[];
  const block = soundClips.parse({
    on: 'on.wav',
    ...(clips.off && { off: 'off.wav' }),
    ...(clips.calibration && {
      calibration: { file: 'tone.wav', level: '94 dB', ...(uncertainty && { uncertainty }) },
    }),
  });
  const context = {
    id: 'p/2026-01-02',
    session: { soundClips: block },
    typed,
    findIn: findAnew,
  } as unknown as FileContext;
  const { figures, view, flags } = soundClipsMaker.make(files, context);
  const byMetric = new Map(figures.map((it) => [it.metric, it]));
  return {
    view,
    figure: (metric: string) => byMetric.get(metric as never),
    flags: flags?.(byMetric) ?? [],
    why: (metric: string) => {
      const it = byMetric.get(metric as never);
      return it && !isFigure(it) ? it.reason : undefined;
    },
  };
}

describe('sound clips of a session', () => {
  test('become levels by the calibrator, with its uncertainty and their scatter', () => {
    const tone = {
      samples: soundOf({ rate: RATE, seconds: 1.5, noise: 0, tones: [{ frequency: 1000, amplitude: 0.02 }], numbers }),
    };
    const { figure } = made({ on: tone, calibration: CALIBRATOR });
    const on = figure('sound-clip-on');
    if (!isFigure(on)) throw new Error('no level');
    // A tenth of the calibrator's amplitude: 20 dB less.
    expect(on.value).toBeCloseTo(74, 1);
    expect(on.standardUncertainty).toBeCloseTo(0.3, 2);
  });

  test('have the room taken off, by the bounds of the sound of the panel', () => {
    const quiet = made({ on: noise(0.02), off: noise(0.002), calibration: CALIBRATOR });
    const [on, panel] = [quiet.figure('sound-clip-on'), quiet.figure('sound-clip-panel')];
    expect(isFigure(on) && isFigure(panel) && on.value - panel.value).toBe(0);
    const loud = made({ on: noise(0.02), off: noise(0.016), calibration: CALIBRATOR });
    expect(loud.figure('sound-clip-panel')).toMatchObject({ bound: 'below' });
  });

  test('tell of a prominent tone, and flag what one number hides', () => {
    const { figure, flags, view } = made({ on: noise(0.01, [WHISTLE]), off: noise(0.001), calibration: CALIBRATOR });
    const tone = figure('tone-frequency');
    expect(isFigure(tone) && tone.value).toBeCloseTo(3000, -1);
    expect(flags.map((it) => it.check)).toEqual(['tone-prominent']);
    expect(flags[0] && say(flags[0].finding)).toMatch(/^A tone at 3 kHz stands \d+\.\d dB above/);
    expect(soundInShort(view)).toBe('Tone at 3 kHz, prominent');
    expect(toneAnswer(view)).toMatch(/^A tone at 3 kHz, prominent: /);
  });

  test('leave a tone to the room that has it too', () => {
    const { why, flags, view } = made({ on: noise(0.01, [WHISTLE]), off: noise(0.001, [WHISTLE]) });
    expect(why('tone-to-noise')).toMatchObject({ code: 'no-tone-found' });
    expect(flags).toEqual([]);
    expect(soundInShort(view)).toBe('No prominent tone up to 6.5 kHz');
  });

  test('say that a tone may be the room’s where the room was not recorded', () => {
    const { figure, view } = made({ on: noise(0.01, [WHISTLE]) });
    expect(figure('tone-to-noise')).toMatchObject({ notes: [{ code: 'room-not-recorded' }] });
    expect(toneAnswer(view)).toContain('it may be the room’s');
  });

  test('leave out a tone that no ear hears', () => {
    const faint = { frequency: 3000, amplitude: 0.000002 };
    const { why } = made({ on: noise(0.0000005, [faint]), calibration: CALIBRATOR });
    expect(why('tone-to-noise')).toMatchObject({ code: 'no-tone-found' });
  });

  test('give no level without a calibrator, and none with a bad one', () => {
    expect(made({ on: noise(0.01) }).why('sound-clip-on')).toEqual({ code: 'clip-not-calibrated' });
    const hum = made({ on: noise(0.01), calibration: noise(0.1) });
    expect(hum.why('sound-clip-on')).toEqual({ code: 'clip-calibration-unusable', fault: 'no-tone' });
    expect(hum.flags.map((it) => it.check)).toEqual(['clip-calibration']);
    const loud = made({ on: noise(0.01), calibration: { ...CALIBRATOR, clipped: 9 } });
    expect(loud.why('sound-clip-on')).toMatchObject({ fault: 'clipped' });
  });

  test('have no interval where the calibrator’s own is not stated', () => {
    const { figure } = made({ on: noise(0.01), calibration: CALIBRATOR }, { uncertainty: '' });
    expect(figure('sound-clip-on')).toMatchObject({
      standardUncertainty: null,
      uncertaintyAbsent: { code: 'calibrator-not-stated' },
    });
  });

  test('are withheld where they are overdriven or too short', () => {
    const over = made({ on: { ...noise(0.01), clipped: 12 }, calibration: CALIBRATOR });
    expect(over.why('sound-clip-on')).toEqual({ code: 'clip-overdriven' });
    expect(over.why('tone-to-noise')).toEqual({ code: 'clip-overdriven' });
    expect(over.flags.map((it) => it.check)).toEqual(['clip-overdriven']);
    expect(toneAnswer(over.view)).toBe('The clip is overdriven, so that tones can’t be told.');
    const short = made({ on: { samples: noise(0.01).samples.slice(0, RATE / 2) }, calibration: CALIBRATOR });
    expect(short.why('sound-clip-on')).toMatchObject({ code: 'clip-too-short' });
    expect(short.why('tone-to-noise')).toMatchObject({ code: 'clip-too-short' });
  });

  test('are in doubt where they were not recorded alike, or the meter says something else', () => {
    const unlike = made({ on: noise(0.01), off: { ...noise(0.001), rate: 8000 } });
    expect(unlike.flags.map((it) => it.check)).toEqual(['clips-alike']);
    const clips = { on: noise(0.01), calibration: CALIBRATOR };
    const highest = made(clips).figure('sound-clip-highest');
    if (!isFigure(highest)) throw new Error('no level');
    const meter = (value: number) =>
      [
        {
          ...highest,
          id: 'p/2026-01-02/sound-on',
          metric: 'sound-on',
          value,
          budget: [],
          inputs: ['p/2026-01-02/sound.on'],
        },
      ] as Figure[];
    expect(made(clips, { typed: meter(highest.value + 0.5) }).flags).toEqual([]);
    expect(made(clips, { typed: meter(highest.value + 3) }).flags.map((it) => it.check)).toEqual([
      'file-against-typed',
    ]);
  });
});
