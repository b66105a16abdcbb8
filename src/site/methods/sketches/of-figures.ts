/** Sketches of what figures say: interval, tie, frontier, step-up, dose, share of a limit, flicker, wavelengths. */
import { box, curve, dot, interval, line, path, type Sketch, text } from './sketch.ts';

export const intervalSketch: Sketch = {
  width: 340,
  height: 132,
  words:
    '52.0 ± 3.1: the stroke is the value, the line its 95 % interval, from 48.9 to 55.1. In about 95 of 100 such cases the true value lies on the line.',
  pieces: [
    line('soft', 30, 84, 310, 84),
    ...[30, 100, 170, 240, 310].flatMap((x, i) => [
      line('soft', x, 80, x, 88),
      text(x, 104, String(44 + 4 * i), 'middle'),
    ]),
    ...interval(56, 116, 224, 170),
    text(170, 38, '52.0', 'middle'),
    text(116, 46, '48.9', 'end'),
    text(224, 46, '55.1'),
    text(170, 124, '± 3.1 is half of the line', 'middle'),
  ],
};

export const tie: Sketch = {
  width: 340,
  height: 190,
  words:
    'A tie is told by the ratio of two prices a watt, not by their own intervals: what both readings share drops out. Where the interval of the ratio holds 1, the readings can’t tell the two apart.',
  pieces: [
    text(12, 32, 'A'),
    ...interval(28, 60, 130, 95),
    text(12, 58, 'B'),
    ...interval(54, 86, 168, 127),
    text(184, 46, 'they overlap'),
    line('dash', 120, 78, 120, 178),
    text(120, 188, 'ratio 1', 'middle'),
    text(12, 112, 'B/A'),
    ...interval(108, 132, 178, 154),
    text(190, 112, 'above 1: no tie'),
    text(12, 156, 'C/A'),
    ...interval(152, 104, 150, 126),
    text(190, 156, 'holds 1: a tie'),
  ],
};

export const frontier: Sketch = {
  width: 340,
  height: 180,
  words:
    'Price against light. On the stepped line lie the panels that no other beats on both; a panel under it costs as much as another and gives less.',
  pieces: [
    line('soft', 40, 150, 310, 150),
    line('soft', 40, 10, 40, 150),
    path('accent', 'M70 150V128H120V92H180V60H260V28H310'),
    ...(
      [
        [70, 128],
        [120, 92],
        [180, 60],
        [260, 28],
      ] as const
    ).map(([x, y]) => dot('accent-fill', x, y, 5)),
    ...(
      [
        [150, 116],
        [226, 104],
      ] as const
    ).map(([x, y]) => dot('ink', x, y, 5)),
    text(236, 108, 'beaten'),
    text(176, 24, 'frontier', 'end'),
    text(310, 168, 'price', 'end'),
    text(48, 18, 'light'),
  ],
};

export const stepUp: Sketch = {
  width: 340,
  height: 180,
  words:
    'A step-up: the euros between two panels over the watts between them. Where that is less than a watt of the smaller one costs, the larger is worth a thought.',
  pieces: [
    line('soft', 40, 150, 310, 150),
    line('soft', 40, 10, 40, 150),
    line('dash', 100, 120, 240, 120),
    line('dash', 240, 120, 240, 44),
    line('accent', 100, 120, 240, 44),
    dot('accent-fill', 100, 120, 5),
    dot('accent-fill', 240, 44, 5),
    text(170, 138, '+ €340', 'middle'),
    text(248, 88, '+ 50 W'),
    text(310, 168, 'price', 'end'),
    text(48, 18, 'light'),
  ],
};

export const dose: Sketch = {
  width: 340,
  height: 170,
  words:
    'Radiant exposure is strength times time: 50 mW/cm² for 200 s and 25 mW/cm² for 400 s both come to 10 J/cm². No exposure is suggested here.',
  pieces: [
    line('soft', 40, 140, 320, 140),
    line('soft', 40, 10, 40, 140),
    box('light', 40, 40, 80, 100),
    box('ink', 40, 40, 80, 100),
    box('dash', 40, 90, 160, 50),
    text(80, 70, '10 J/cm²', 'middle'),
    text(208, 106, 'half as strong,'),
    text(208, 126, 'twice as long'),
    text(320, 158, 'time', 'end'),
    text(48, 24, 'mW/cm²'),
  ],
};

export const share: Sketch = {
  width: 340,
  height: 110,
  words:
    'A reading as a share of a published limit, which stands at the mark. A bar past the mark is over the limit. Neither is a verdict: limits do not cover everything.',
  pieces: [
    line('soft', 20, 32, 320, 32),
    box('accent-fill', 20, 28, 96, 8),
    text(126, 24, '40 %'),
    line('soft', 20, 70, 320, 70),
    box('accent-fill', 20, 66, 284, 8),
    text(314, 62, '120 %', 'end'),
    line('ink', 256, 14, 256, 84),
    text(256, 102, 'the limit', 'middle'),
  ],
};

export const flicker: Sketch = {
  width: 340,
  height: 150,
  words:
    'Light over time. Flicker in per cent is the swing over the sum of highest and lowest; its frequency is how often it swings in a second.',
  pieces: [
    line('soft', 30, 130, 310, 130),
    curve('accent', 30, 270, (x) => 62 - 26 * Math.sin((x - 30) / 19.1)),
    line('dash', 30, 36, 310, 36),
    line('dash', 30, 88, 310, 88),
    text(276, 30, 'highest'),
    text(276, 104, 'lowest'),
    text(170, 146, 'time', 'middle'),
  ],
};

const bell = (x: number, at: number, width: number, height: number) => height * Math.exp(-(((x - at) / width) ** 2));

export const wavelengths: Sketch = {
  width: 340,
  height: 160,
  words:
    'A spectrum: one peak in the red, which the eye sees, and one in the near-infrared, which it does not. The width is taken at half of the height.',
  pieces: [
    line('soft', 20, 130, 320, 130),
    curve('accent', 20, 180, (x) => 130 - bell(x, 96, 16, 96)),
    curve('dash', 180, 320, (x) => 130 - bell(x, 252, 26, 84)),
    line('soft', 82, 82, 110, 82),
    text(116, 80, 'width'),
    text(96, 26, 'red', 'middle'),
    text(252, 38, 'near-infrared', 'middle'),
    text(96, 148, '660 nm', 'middle'),
    text(252, 148, '850 nm', 'middle'),
  ],
};

export const warmUp: Sketch = {
  width: 340,
  height: 150,
  words: 'Light from cold: it falls as the LEDs get warm, and figures are taken once it has settled.',
  pieces: [
    line('soft', 30, 124, 310, 124),
    line('soft', 30, 10, 30, 124),
    curve('accent', 30, 310, (x) => 84 - 56 * Math.exp(-(x - 30) / 62)),
    line('dash', 196, 24, 196, 124),
    text(202, 36, 'settled:'),
    text(202, 54, 'figures from here'),
    text(310, 142, 'minutes', 'end'),
    text(38, 20, 'light'),
  ],
};
