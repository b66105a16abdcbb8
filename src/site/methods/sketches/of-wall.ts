/** Sketches of a lit wall: its photo, made straight; its LEDs, as a wave; what nine points miss. */
import { CELL } from '../../../measure/wall/evenness.ts';
import { arrow, box, curve, dot, line, measure, path, type Sketch, text } from './sketch.ts';

const BAND_YS = [44, 84] as const;

export const hotSpots: Sketch = {
  width: 340,
  height: 150,
  words:
    'What nine points can miss, a photo of the lit wall shows: here two brighter rows and a dark strip at the foot. The tester says so in words and takes no number from it, for a camera is no meter and hardly sees near-infrared. An invented wall.',
  pieces: [
    box('light', 16, 12, 180, 106),
    ...BAND_YS.flatMap((y) => [
      box('light', 16, y, 180, 13),
      box('light', 16, y + 2, 180, 9),
      box('light', 16, y + 4, 180, 5),
    ]),
    box('ink', 16, 12, 180, 126),
    ...[29, 70, 111].flatMap((y) => [46, 106, 166].map((x) => dot('accent-fill', x, y, 4))),
    line('soft', 199, BAND_YS[0] + 6, 210, 62),
    line('soft', 199, BAND_YS[1] + 6, 210, 66),
    text(214, 68, 'brighter rows'),
    text(214, 109, 'a point'),
    line('soft', 172, 111, 210, 105),
    line('soft', 199, 129, 210, 130),
    text(214, 135, 'a dark strip'),
  ],
};

/** Relative light of the worked example’s squares, row by row. */
const SQUARES = [
  [4, 4, 4, 4],
  [4, 8, 6, 4],
  [4, 4, 4, 2],
];
const ALL = SQUARES.flat();
const MEAN = ALL.reduce((sum, it) => sum + it, 0) / ALL.length;
const DIMMEST = Math.min(...ALL);
const SIDE = 34;

export const wallPhoto: Sketch = {
  width: 340,
  height: 166,
  words: `By four marks of a known rectangle the photo is made straight, then cut into squares of about ${CELL} cm. The dimmest over the mean says how evenly the wall is lit: ${DIMMEST} over ${MEAN.toFixed(2)}, ${Math.round((100 * DIMMEST) / MEAN)} %. It says nothing of how strong the light is. Invented numbers.`,
  pieces: [
    box('soft', 10, 12, 124, 104),
    path('light', 'M34 34L112 24L120 98L26 90Z'),
    path('ink', 'M34 34L112 24L120 98L26 90Z'),
    ...(
      [
        [34, 34],
        [112, 24],
        [120, 98],
        [26, 90],
      ] as const
    ).map(([x, y]) => dot('accent-fill', x, y, 4)),
    arrow('ink', 142, 64, 172, 64),
    ...SQUARES.flatMap((row, j) =>
      row.flatMap((value, i) => [
        box('soft', 184 + SIDE * i, 12 + SIDE * j, SIDE, SIDE),
        text(184 + SIDE * (i + 0.5), 12 + SIDE * j + 22, `${value}`, 'middle'),
      ]),
    ),
    box('accent', 184 + 3 * SIDE, 12 + 2 * SIDE, SIDE, SIDE),
    text(72, 136, 'photo', 'middle'),
    text(320, 138, `the dimmest: ${DIMMEST}`, 'end'),
    text(320, 158, `mean: ${MEAN.toFixed(2)}`, 'end'),
  ],
};

/** Light that swings by an eighth or so about its mean, drawn to scale from darkness up. */
const WAVE = { swing: 0.12, pitch: 40, mean: 88, dark: 146 };
const waveY = (x: number) => WAVE.dark - WAVE.mean * (1 + WAVE.swing * Math.cos((2 * Math.PI * (x - 40)) / WAVE.pitch));
const LEDS = [40, 80, 120, 160, 200, 240];

export const dotPattern: Sketch = {
  width: 340,
  height: 152,
  words:
    'Light along an invented wall that swings with the LEDs behind it, drawn to scale: by 12 % about its mean. The figure is the wave that repeats with the pitch of the LEDs; what is wider than the pattern is taken away first.',
  pieces: [
    box('light', 20, WAVE.dark - WAVE.mean, 240, WAVE.mean),
    ...LEDS.map((x) => dot('accent-fill', x, 14, 5)),
    ...measure(LEDS[1] ?? 0, 28, LEDS[2] ?? 0, 28),
    text(126, 34, 'pitch'),
    line('soft', 20, WAVE.dark, 260, WAVE.dark),
    line('dash', 20, WAVE.dark - WAVE.mean, 284, WAVE.dark - WAVE.mean),
    curve('accent', 20, 260, waveY),
    ...measure(276, WAVE.dark - WAVE.mean * (1 + WAVE.swing), 276, WAVE.dark - WAVE.mean),
    text(286, 54, '12 %'),
    text(268, 82, 'mean'),
    text(140, 112, 'light on the wall', 'middle'),
  ],
};
