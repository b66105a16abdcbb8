/** Sketches of fields: how they add up, what stays live, what a meter makes of bursts. */
import { arrow, box, dot, line, path, type Sketch, scale, text } from './sketch.ts';

const [ROOM, ON] = [0.3, 0.5];
const fieldAt = scale(0, 1, 30, 330);

export const magneticField: Sketch = {
  width: 340,
  height: 142,
  words:
    'Fields have directions. With 0.30 µT from the room and 0.50 µT with the panel on, the panel’s own may be 0.20, if both point one way, or 0.80, if they point against each other. So nothing is subtracted: the figure is the reading. Invented fields.',
  pieces: [
    arrow('ink', fieldAt(0), 34, fieldAt(ROOM), 34),
    arrow('accent', fieldAt(ROOM), 34, fieldAt(ON), 34),
    arrow('accent', fieldAt(0), 100, fieldAt(ON + ROOM), 100),
    arrow('ink', fieldAt(ON + ROOM), 114, fieldAt(ON), 114),
    line('dash', fieldAt(ON), 14, fieldAt(ON), 138),
    line('soft', fieldAt(0), 14, fieldAt(0), 138),
    text(fieldAt(ROOM / 2), 26, 'room 0.30', 'middle'),
    text(fieldAt(ON) + 8, 38, 'panel 0.20'),
    text(fieldAt(ON) - 8, 91, 'panel 0.80', 'end'),
    text(fieldAt(ON + ROOM) - 2, 133, 'room 0.30', 'end'),
    text(fieldAt(ON) + 8, 66, 'on: 0.50 µT'),
  ],
};

/** A panel from its side with its lead to a socket; the lead is drawn strong where it is live. */
const supply = (y: number, isIn: boolean, isLit: boolean) => [
  box('ink', 16, y - 14, 12, 28),
  box(isIn ? 'accent-fill' : 'ink', isIn ? 28 : 44, y - 5, 14, 10),
  path(isIn ? 'accent' : 'soft', `M${isIn ? 42 : 58} ${y}C80 ${y} 84 ${y + 12} 122 ${y + 6}`),
  box('ink', 122, y - 18, 10, 36),
  ...[-11, 0, 11].map((at) => dot(isLit ? 'accent-fill' : 'soft', 136, y + at, 3)),
];

export const electricField: Sketch = {
  width: 340,
  height: 166,
  words:
    'A panel that is off but plugged in can still give a field, for its lead is live. So the room is read with it unplugged where that can be, here 4 V/m. It stands beside the reading with both channels on, 31 V/m, and isn’t subtracted. Invented fields.',
  pieces: [
    ...supply(28, false, false),
    ...supply(82, true, false),
    ...supply(136, true, true),
    text(152, 33, 'unplugged: 4 V/m'),
    text(152, 87, 'off: its lead is live'),
    text(152, 141, 'on: 31 V/m'),
  ],
};

/** A burst is on for a fifth of the time, so that the average is a fifth of the peak. */
const BURSTS = { every: 40, long: 8, high: 100 };

export const radioField: Sketch = {
  width: 340,
  height: 150,
  words:
    'Wireless parts send in bursts. A meter that keeps the peak and one that averages read far apart, here by a factor of five; the instrument’s file says which it does. What the room sends is in both, and is read alone with the panel off. An example.',
  pieces: [
    line('soft', 24, 126, 252, 126),
    ...Array.from({ length: 6 }, (_, i) =>
      box('accent-fill', 30 + BURSTS.every * i, 126 - BURSTS.high, BURSTS.long, BURSTS.high),
    ),
    line('dash', 24, 126 - BURSTS.high, 252, 126 - BURSTS.high),
    line(
      'ink',
      24,
      126 - (BURSTS.high * BURSTS.long) / BURSTS.every,
      252,
      126 - (BURSTS.high * BURSTS.long) / BURSTS.every,
    ),
    text(258, 31, 'the peak'),
    text(258, 111, 'average'),
    text(252, 144, 'time', 'end'),
  ],
};
