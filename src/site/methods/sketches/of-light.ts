/** Sketches of how light is read: the frame, the nine points, the beam, the field, the peak, the distance. */
import { box, curve, dot, line, measure, path, type Sketch, text } from './sketch.ts';

const LEDS = [26, 46, 66, 86, 106, 126];

/** A panel from its side with the plane of the meter before it. */
const side = [
  box('ink', 28, 18, 10, 116),
  ...LEDS.map((y) => dot('accent-fill', 40, y, 3)),
  line('dash', 150, 4, 150, 152),
];

const rays = (inside: string, past: string) => [
  ...side,
  box('light', 40, 20, 110, 112),
  line('accent', 150, 20, 150, 132),
  line('ink', 43, 46, 205, 34),
  line('ink', 43, 86, 205, 86),
  line('ink', 43, 106, 205, 118),
  line('dash', 43, 26, 205, -2),
  line('dash', 43, 126, 205, 158),
  ...measure(40, 160, 150, 160),
  text(95, 174, '6 in', 'middle'),
  text(158, 66, 'the frame'),
  text(212, 90, inside),
  text(212, 20, past),
  text(212, 150, past),
];

export const frame: Sketch = {
  width: 340,
  height: 176,
  words:
    'The frame: as large as the LED field, 6 in in front of it. Light that passes through it is counted; light that spreads past its edges is not.',
  pieces: rays('counted', 'not counted'),
};

export const allLight: Sketch = {
  width: 340,
  height: 176,
  words:
    'All the light: what passes through the frame, 6 in in front, and what spreads past its edges. The first is measured; the second follows from a model, and from readings past the edges where there are any.',
  pieces: rays('counted', 'counted too'),
};

export const capture: Sketch = {
  width: 340,
  height: 176,
  words:
    'Capture: of all the light, the share that passes a frame as large as the LED field, 6 in in front. Of an invented panel’s 76.1 W it is 45.3 W, 60 %. Small fields and wide beams send more of their light past it.',
  pieces: rays('60 % in the frame', 'past it'),
};

const GRID_X = [44, 90, 136];
const GRID_Y = [34, 84, 134];

export const ninePoints: Sketch = {
  width: 340,
  height: 172,
  words:
    'Nine points in the frame, three by three. The outer ones lie an inch inside its edges, so on a large panel they see the rim, which is dimmer than most of the field.',
  pieces: [
    box('light', 24, 14, 132, 140),
    box('ink', 24, 14, 132, 140),
    ...GRID_Y.flatMap((y) => GRID_X.map((x) => dot('accent-fill', x, y, 6))),
    ...measure(24, 164, 44, 164),
    text(50, 168, '1 in'),
    ...measure(166, 14, 166, 34),
    text(174, 29, '1 in from the edge'),
    text(174, 88, 'mean of nine,'),
    text(174, 106, 'both channels on'),
  ],
};

/** A beam from a point, as the outline of its strength over the angle: the cosine to a power. */
function lobe(style: 'accent' | 'dash', x: number, y: number, length: number, power: number) {
  const points = Array.from({ length: 41 }, (_, i) => {
    const angle = ((i - 20) / 20) * (Math.PI / 2);
    const reach = length * Math.max(0, Math.cos(angle)) ** power;
    return `${(x + reach * Math.cos(angle)).toFixed(1)} ${(y + reach * Math.sin(angle)).toFixed(1)}`;
  });
  return path(style, `M${points.join('L')}Z`);
}

/** Powers of the cosine whose half-angles are 30° and 60°: -ln 2 / ln cos of them. */
const NARROW = -Math.LN2 / Math.log(Math.cos(Math.PI / 6));
const WIDE = -Math.LN2 / Math.log(Math.cos(Math.PI / 3));

export const beam: Sketch = {
  width: 340,
  height: 190,
  words:
    'Two beams, as strong ahead. The narrow one has half its strength 30° to the side, its half-angle; the wide one at 60°. The wide beam sends more of its light past the frame.',
  pieces: [
    box('ink', 20, 80, 10, 30),
    lobe('accent', 30, 95, 130, NARROW),
    lobe('dash', 30, 95, 130, WIDE),
    line('soft', 30, 95, 190, 95),
    line('soft', 30, 95, 30 + 150 * Math.cos(Math.PI / 6), 95 - 150 * Math.sin(Math.PI / 6)),
    dot('accent-fill', 30 + 65 * Math.cos(Math.PI / 6), 95 - 65 * Math.sin(Math.PI / 6), 4),
    path('soft', 'M90 95A60 60 0 0 0 82 65'),
    text(98, 88, '30°'),
    text(196, 99, 'ahead'),
    text(166, 22, 'half as strong'),
    text(104, 180, 'broken line: wide, 60°'),
  ],
};

export const ledArea: Sketch = {
  width: 340,
  height: 176,
  words:
    'The LED area reaches from the outer edge of the first LED to the outer edge of the last, both ways. The housing around it does not count.',
  pieces: [
    box('dash', 20, 10, 150, 140),
    box('light', 40, 28, 110, 104),
    box('ink', 40, 28, 110, 104),
    ...[48, 72, 95, 118, 142].flatMap((x) => [36, 66, 94, 124].map((y) => dot('accent-fill', x, y, 8))),
    ...measure(40, 164, 150, 164),
    ...measure(184, 28, 184, 132),
    text(194, 84, 'LED area'),
    text(178, 20, 'housing'),
  ],
};

const PROFILE = (x: number) => 128 - 70 * Math.exp(-(((x - 150) / 92) ** 2)) - 22 * Math.exp(-(((x - 128) / 11) ** 2));

export const peak: Sketch = {
  width: 340,
  height: 170,
  words:
    'Strength of the light across a panel: the peak is the brightest spot that a sweep finds, the mean is that of the whole frame, and evenness is the lowest of the nine points over their mean.',
  pieces: [
    curve('accent', 30, 270, PROFILE),
    line('soft', 30, 134, 270, 134),
    line('dash', 30, 82, 270, 82),
    dot('accent-fill', 128, PROFILE(128), 5),
    text(136, 32, 'peak'),
    text(276, 86, 'mean'),
    dot('ink', 54, PROFILE(54), 5),
    text(62, 128, 'lowest point'),
    text(150, 158, 'across the panel', 'middle'),
  ],
};

export const distance: Sketch = {
  width: 340,
  height: 170,
  words:
    'The same light, farther away: it spreads over more and gets weaker. Close to a panel that is slower than by the square of the distance, since a panel is no point.',
  pieces: [
    box('ink', 20, 50, 10, 60),
    ...[58, 80, 102].map((y) => dot('accent-fill', 32, y, 3)),
    path('light', 'M34 50L300 6V154L34 110Z'),
    line('accent', 90, 40, 90, 120),
    line('accent', 170, 27, 170, 133),
    line('accent', 290, 7, 290, 153),
    line('soft', 34, 50, 300, 6),
    line('soft', 34, 110, 300, 154),
    text(90, 166, '15 cm', 'middle'),
    text(170, 166, '30 cm', 'middle'),
    text(290, 166, '60 cm', 'middle'),
  ],
};
