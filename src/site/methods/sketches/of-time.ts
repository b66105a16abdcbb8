/** Sketches of logs: light that settles, a sweep with a slip, a wave out of noise. */
import { SETTLED_SPREAD, SETTLED_WINDOW } from '../../../measure/log/settled-criterion.ts';
import { seededRandom } from '../../../measure/random.ts';
import { arrow, box, curve, dot, line, measure, path, type Sketch, scale, text, through } from './sketch.ts';

/** The worked example’s light, mW/cm², after t seconds: 6 % above what it settles to, with a time constant of 500 s. */
const SETTLED = 80;
const COLD = 84.8;
const lightAfter = (t: number) => SETTLED + (COLD - SETTLED) * Math.exp(-t / 500);
const WINDOW_FALL = 1 - Math.exp(-SETTLED_WINDOW / 500);
/** When the first window begins that moves by no more than the spread of the settled. */
const SETTLES = 500 * Math.log(((COLD - SETTLED) * WINDOW_FALL) / ((SETTLED_SPREAD / 100) * SETTLED));
const timeX = scale(0, 3300, 34, 290);
const secondsAt = scale(34, 290, 0, 3300);
const levelY = scale(79.5, 85, 126, 16);
/** That window: from where to where, and how far the light falls in it. */
const FIRST_WINDOW = [
  timeX(SETTLES),
  levelY(lightAfter(SETTLES)),
  timeX(SETTLES + SETTLED_WINDOW) - timeX(SETTLES),
  levelY(lightAfter(SETTLES + SETTLED_WINDOW)) - levelY(lightAfter(SETTLES)),
] as const;

export const settling: Sketch = {
  width: 340,
  height: 152,
  words:
    'Light from cold: it falls from 84.8 to 80.0 mW/cm², by 5.7 %. It has settled where 15 minutes begin, the box, in which it moves by no more than half a percent; here that is after 19 minutes. Invented light.',
  pieces: [
    line('soft', 34, 126, 316, 126),
    box('light', ...FIRST_WINDOW),
    box('ink', ...FIRST_WINDOW),
    curve('accent', 34, 290, (x) => levelY(lightAfter(secondsAt(x)))),
    line('dash', 34, levelY(COLD), 306, levelY(COLD)),
    line('dash', timeX(SETTLES), levelY(lightAfter(SETTLES)), timeX(SETTLES), 134),
    ...measure(300, levelY(COLD), 300, levelY(SETTLED)),
    text(292, 46, 'drop: 5.7 %', 'end'),
    text(timeX(SETTLES) + 4, levelY(lightAfter(SETTLES)) - 10, '15 min in 0.5 %'),
    text(timeX(SETTLES), 148, `${Math.round(SETTLES / 60)} min`, 'middle'),
  ],
};

/** Samples of a sweep, mW/cm²; the five in the middle are those of the worked example. */
const SAMPLES = [57, 58.4, 59.6, 60.7, 61.4, 61.8, 62, 74, 62.3, 62.1, 61.5, 60.6, 59.3, 57.8];
const SPIKE = SAMPLES.indexOf(74);
const PEAK = Math.max(...SAMPLES.filter((_, i) => i !== SPIKE));
const sampleX = (i: number) => 34 + 16 * i;
const sampleY = scale(55, 75, 126, 18);

export const sweepLog: Sketch = {
  width: 340,
  height: 148,
  words:
    'One sample stands at 74.0 where the two on either side lead to 62.2: a spike, as a slip of the hand makes. The peak is the highest sample that is none, 62.3 mW/cm². Both numbers are told. Invented samples.',
  pieces: [
    line('soft', 24, 126, 260, 126),
    ...SAMPLES.map((value, i) =>
      dot(i === SPIKE ? 'ink' : 'accent-fill', sampleX(i), sampleY(value), i === SPIKE ? 5 : 4),
    ),
    line('dash', sampleX(SPIKE), sampleY(74) + 6, sampleX(SPIKE), sampleY(62.2)),
    line('dash', sampleX(SPIKE + 1) + 6, sampleY(PEAK), 252, sampleY(PEAK)),
    text(sampleX(SPIKE) + 12, sampleY(74) + 5, 'a spike: 74.0'),
    text(256, sampleY(PEAK) + 5, `peak: ${PEAK}`),
    text(260, 144, 'time', 'end'),
  ],
};

const PERIOD = 28;
const swing = (phase: number) => Math.sin(2 * Math.PI * phase);
const random = seededRandom(1);
/** Places in periods and light of a record with noise. */
const RECORD = Array.from({ length: 62 }, (_, i) => i / 13.3).map(
  (at) => [at, 68 - 30 * swing(at) - 6 * random.normal()] as const,
);

export const foldedWave: Sketch = {
  width: 340,
  height: 142,
  words:
    'All periods of a record laid over one another, and their mean. Noise pushes the highest value up and the lowest down; the mean period has most of it taken out, and depth and index are worked out on that.',
  pieces: [
    through(
      'soft',
      RECORD.map(([at, y]) => [12 + PERIOD * at, y]),
    ),
    line('soft', 12, 122, 144, 122),
    arrow('ink', 156, 68, 186, 68),
    path('soft', RECORD.map(([at, y]) => `M${(198 + 124 * (at % 1)).toFixed(0)} ${y.toFixed(0)}h3`).join('')),
    curve('accent', 199, 323, (x) => 68 - 30 * swing((x - 199) / 124)),
    line('soft', 199, 122, 323, 122),
    text(78, 140, 'the record', 'middle'),
    text(261, 140, 'one mean period', 'middle'),
  ],
};
