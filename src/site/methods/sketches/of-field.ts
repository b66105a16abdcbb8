/** Sketches of the LED field: how large it is, and what its points miss of it. */
import { CM_PER_INCH } from '../../../measure/unit-factors.ts';
import { box, curve, dot, line, type Sketch, scale, text } from './sketch.ts';

/** The worked example’s fields, cm, drawn to one scale. */
const FIELDS = [
  [20, 30],
  [20, 60],
  [25.1, 80],
] as const;
const FOOT = 124;
const unitsOf = scale(0, 80, 0, 116);
const FIELD_X = [54, 160, 274];

export const sizeClasses: Sketch = {
  width: 340,
  height: 150,
  words:
    'LED fields, drawn to one scale, and borders between classes at 600 and 2000 cm²: panels are ranked with those whose LEDs cover about as much. A field on a border counts with the smaller. Invented classes; each guide states its own.',
  pieces: [
    line('soft', 10, FOOT, 330, FOOT),
    ...FIELDS.flatMap(([across, up], i) => {
      const [x = 0, width, height] = [FIELD_X[i], unitsOf(across), unitsOf(up)];
      return [
        box('light', x - width / 2, FOOT - height, width, height),
        box('ink', x - width / 2, FOOT - height, width, height),
        text(x, FOOT + 20, `${Math.round(across * up)} cm²`, 'middle'),
      ];
    }),
    line('dash', 107, 26, 107, FOOT),
    line('dash', 217, 26, 217, FOOT),
    text(107, 18, 'to 600', 'middle'),
    text(217, 18, 'to 2000', 'middle'),
  ],
};

/** Light along the middle of an invented field 40 cm long, over its value in the middle. */
const LENGTH = 40;
const lightAt = (cm: number) => 0.5 * (Math.tanh((cm + 1) / 7) + Math.tanh((LENGTH + 1 - cm) / 7));
const POINTS = [CM_PER_INCH, LENGTH / 2, LENGTH - CM_PER_INCH];
const meanOf = (values: readonly number[]) => values.reduce((sum, it) => sum + it, 0) / values.length;
const SEEN = meanOf(POINTS.map(lightAt));
const TRUE = meanOf(Array.from({ length: 400 }, (_, i) => lightAt(((i + 0.5) * LENGTH) / 400)));
const placeX = scale(0, LENGTH, 20, 220);
const cmAt = scale(20, 220, 0, LENGTH);
const lightY = scale(0, 1, 128, 22);

export const samplingBias: Sketch = {
  width: 340,
  height: 150,
  words: `Light along an invented field, with three points an inch from its ends and in the middle. Two of three stand near the rim, so their mean lies ${Math.round(100 * (1 - SEEN / TRUE))} % under that of the whole. On a very small field it lies over it. The model tells how far.`,
  pieces: [
    line('soft', 20, 128, 220, 128),
    curve('accent', 20, 220, (x) => lightY(lightAt(cmAt(x)))),
    ...POINTS.flatMap((cm) => [
      line('soft', placeX(cm), 128, placeX(cm), lightY(lightAt(cm))),
      dot('accent-fill', placeX(cm), lightY(lightAt(cm)), 5),
    ]),
    line('ink', 20, lightY(TRUE), 228, lightY(TRUE)),
    line('dash', 20, lightY(SEEN), 228, lightY(SEEN)),
    text(234, lightY(TRUE) - 1, 'mean of all'),
    text(234, lightY(SEEN) + 14, 'of the points'),
    text(120, 146, 'along the field', 'middle'),
  ],
};
