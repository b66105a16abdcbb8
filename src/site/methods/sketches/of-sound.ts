/** Sketches of sound: the reading, the clip, the panel without its room, a tone. Numbers are those of the worked examples. */
import { energyCorrection } from '../../../measure/exposure/background-sound.ts';
import { prominentFrom } from '../../../measure/sound/critical-band.ts';
import { box, dot, line, measure, type Sketch, scale, text, through } from './sketch.ts';

const [ROOM, ON] = [44, 50];

/** Levels of a spell one after another, dB(A); the highest of each is what the meter keeps. */
const OFF_LEVELS = [41, 42.2, 40.6, 41.8, ROOM, 42.4, 41.1, 42.8, 41.5];
const ON_LEVELS = [46.2, 47.8, 47, 48.9, 48.1, ON, 48.4, 49.1, 47.6, 48.8, 47.9];

const soundAt = scale(38, 52, 128, 20);

export const sound: Sketch = {
  width: 340,
  height: 150,
  words:
    'Max hold keeps the loudest moment of each spell: 44 dB(A) of the room, then 50 dB(A) with the panel on. The figure is the second, as it was read, the room included; the first stands beside it. Invented levels.',
  pieces: [
    line('soft', 30, 128, 310, 128),
    through(
      'accent',
      OFF_LEVELS.map((level, i) => [34 + 12 * i, soundAt(level)]),
    ),
    through(
      'accent',
      ON_LEVELS.map((level, i) => [166 + 13 * i, soundAt(level)]),
    ),
    line('dash', 30, soundAt(ROOM), 134, soundAt(ROOM)),
    line('dash', 160, soundAt(ON), 310, soundAt(ON)),
    text(82, soundAt(ROOM) - 8, 'room: 44 dB(A)', 'middle'),
    text(235, soundAt(ON) - 8, 'panel on: 50 dB(A)', 'middle'),
    text(310, 146, 'time', 'end'),
  ],
};

/** The calibrator’s level, and what it and a clip were recorded at. */
const TONE = { sounds: 94, recorded: -9 };
const CLIP = { recorded: -23 };
const SHIFT = TONE.sounds - TONE.recorded;
const clipAt = scale(-40, 0, 30, 310);

export const soundClip: Sketch = {
  width: 340,
  height: 134,
  words:
    'The calibrator’s tone sounds at 94 dB, as is known, and is recorded at −9 dB of full scale. What lies between, 103 dB, makes a level of every clip that the same microphone records at the same gain. Invented levels.',
  pieces: [
    ...[44, 96].flatMap((y) => [
      line('soft', 30, y, 310, y),
      ...[-40, -30, -20, -10, 0].map((it) => line('soft', clipAt(it), y - 4, clipAt(it), y + 4)),
    ]),
    ...[TONE, CLIP].flatMap(({ recorded }) => [
      line('accent', clipAt(recorded), 44, clipAt(recorded), 96),
      dot('accent-fill', clipAt(recorded), 44, 5),
      dot('accent-fill', clipAt(recorded), 96, 5),
    ]),
    text(clipAt(TONE.recorded), 30, 'tone −9', 'middle'),
    text(clipAt(CLIP.recorded), 30, 'clip −23', 'middle'),
    text(30, 30, 'recorded'),
    text((clipAt(TONE.recorded) + clipAt(CLIP.recorded)) / 2, 75, `+ ${SHIFT}`, 'middle'),
    text(clipAt(TONE.recorded), 122, `${TONE.sounds}`, 'middle'),
    text(clipAt(CLIP.recorded), 122, `${CLIP.recorded + SHIFT}`, 'middle'),
    text(30, 122, 'dB(A)'),
  ],
};

/** Energy of a level as a share of that with the panel on. */
const share = (level: number) => 10 ** ((level - ON) / 10);
const energyAt = scale(0, 1, 24, 316);
const ALONE = ON - energyCorrection(ON - ROOM);

export const soundOfPanel: Sketch = {
  width: 340,
  height: 128,
  words:
    'Levels are taken off one another as energies, drawn as lengths here. Of 50 dB(A) with the panel on, a room of 44 dB(A) is a quarter; the rest is the panel’s, 48.7 dB(A). Under 6 dB apart it is told as a bound: at most so much. Invented levels.',
  pieces: [
    box('ink', energyAt(0), 14, energyAt(1) - energyAt(0), 34),
    text(170, 36, 'panel on: 50 dB(A)', 'middle'),
    line('dash', energyAt(share(ROOM)), 48, energyAt(share(ROOM)), 112),
    box('dash', energyAt(0), 72, energyAt(share(ROOM)) - energyAt(0), 34),
    box('light', energyAt(share(ROOM)), 72, energyAt(1) - energyAt(share(ROOM)), 34),
    box('ink', energyAt(share(ROOM)), 72, energyAt(1) - energyAt(share(ROOM)), 34),
    text(energyAt(share(ROOM) / 2), 94, 'room: 44', 'middle'),
    text(energyAt((1 + share(ROOM)) / 2), 94, `panel alone: ${ALONE.toFixed(1)}`, 'middle'),
  ],
};

/** The noise of narrow bands, dB, and a tone among them; 6 units for each dB between tone and noise. */
const NOISE = [9, 14, 11, 15, 10, 13, 16, 12, 14, 11, 15, 13, 10, 14, 12, 16, 11];
const NOISE_SUM = 88;
const TONE_TIP = NOISE_SUM - 6 * prominentFrom(1000);

export const tones: Sketch = {
  width: 340,
  height: 152,
  words:
    'A tone against all the noise of the critical band about it, the width within which an ear takes sounds together. From 1 kHz on a tone is prominent at 8 dB or more above that noise; below 1 kHz the line is higher.',
  pieces: [
    box('light', 62, 22, 52, 104),
    line('soft', 16, 126, 164, 126),
    ...NOISE.map((level, i) => line('ink', 16 + 9 * i, 126, 16 + 9 * i, 126 - level)),
    line('accent', 88, 126, 88, TONE_TIP),
    line('accent', 62, NOISE_SUM, 114, NOISE_SUM),
    line('dash', 88, TONE_TIP, 176, TONE_TIP),
    line('dash', 114, NOISE_SUM, 176, NOISE_SUM),
    ...measure(176, TONE_TIP, 176, NOISE_SUM),
    text(96, TONE_TIP - 8, 'the tone'),
    text(186, 58, 'from 1 kHz on'),
    text(186, 77, '8 dB: prominent'),
    text(124, 108, 'noise of the band, in all'),
    text(88, 146, 'critical band', 'middle'),
  ],
};
