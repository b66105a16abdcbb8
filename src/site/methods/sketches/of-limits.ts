/** Sketches of published limits and lines, and of what is held against them. No verdict in any. */
import { RANGE_EDGES } from '../../../measure/exposure/building-biology.ts';
import { flickerLines, LOW_RISK_TO, NO_EFFECT_TO, ROW_EDGE } from '../../../measure/exposure/flicker-lines.ts';
import {
  infraredLimit,
  LONG_EXPOSURE,
  LONGEST_TIMED,
  longestExposureTime,
} from '../../../measure/exposure/infrared.ts';
import { SKIN_LIMIT_AT_END, SKIN_TIME, skinLimit } from '../../../measure/exposure/skin-limit.ts';
import { box, dot, line, measure, ratioScale, type Sketch, text, through } from './sketch.ts';

const eyeX = ratioScale(10, 10_000, 30, 316);
/** W/m², of which ten are 1 mW/cm². */
const eyeY = ratioScale(60, 4000, 124, 12);
const EYE = 500;
const EYE_TIME = longestExposureTime(EYE);

export const eyeTime: Sketch = {
  width: 340,
  height: 150,
  words:
    'The infrared limit for cornea and lens against the time of exposure, on scales of equal ratios: it falls to 10 mW/cm² for long ones. An invented 50 mW/cm² uses it up in 119 s. It says nothing of the retina. Don’t look into the LEDs.',
  pieces: [
    line('soft', 30, 124, 316, 124),
    line('soft', 30, 8, 30, 124),
    through(
      'accent',
      [10, LONGEST_TIMED].map((it) => [eyeX(it), eyeY(infraredLimit(it))]),
    ),
    line('accent', eyeX(LONGEST_TIMED), eyeY(LONG_EXPOSURE), 316, eyeY(LONG_EXPOSURE)),
    line('dash', 30, eyeY(EYE), eyeX(EYE_TIME), eyeY(EYE)),
    line('dash', eyeX(EYE_TIME), eyeY(EYE), eyeX(EYE_TIME), 124),
    dot('accent-fill', eyeX(EYE_TIME), eyeY(EYE), 5),
    text(36, eyeY(EYE) + 19, `${EYE / 10} mW/cm²`),
    text(eyeX(EYE_TIME), 144, `${Math.round(EYE_TIME)} s`, 'middle'),
    text(eyeX(60), 30, 'the limit'),
    text(316, eyeY(LONG_EXPOSURE) - 10, `${LONG_EXPOSURE / 10} mW/cm²`, 'end'),
    text(316, 144, 'time', 'end'),
  ],
};

const skinX = ratioScale(1, 40, 30, 316);
/** W/m². */
const skinY = ratioScale(600, 20_000, 124, 14);
const SKIN = 1000;

export const skinHeat: Sketch = {
  width: 340,
  height: 150,
  words:
    'The limit for heated skin is for exposures under 10 s and is lowest at their end. An invented peak of 100 mW/cm² is 28 % of it there. For longer ones it doesn’t apply, which is no all-clear. Scales of equal ratios.',
  pieces: [
    line('soft', 30, 124, 316, 124),
    line('soft', 30, 8, 30, 124),
    through(
      'accent',
      [1, SKIN_TIME - 1e-6].flatMap((it) => {
        const limit = skinLimit(it);
        return limit === 'no-limit' ? [] : [[skinX(it), skinY(limit)] as const];
      }),
    ),
    line('dash', skinX(SKIN_TIME), 8, skinX(SKIN_TIME), 124),
    line('ink', 30, skinY(SKIN), skinX(SKIN_TIME), skinY(SKIN)),
    ...measure(skinX(SKIN_TIME) + 10, skinY(SKIN_LIMIT_AT_END), skinX(SKIN_TIME) + 10, skinY(SKIN)),
    text(skinX(SKIN_TIME) + 20, 84, `${Math.round((100 * SKIN) / SKIN_LIMIT_AT_END)} %`),
    text(40, skinY(SKIN) - 9, '100 mW/cm²'),
    text(skinX(3), 28, 'the limit'),
    text(skinX(SKIN_TIME) + 8, 36, 'doesn’t apply'),
    text(skinX(SKIN_TIME), 144, `${SKIN_TIME} s`, 'middle'),
    text(316, 144, 'time', 'end'),
  ],
};

/** The worked example’s bounds, % of the limit: the field evenly bright, its emitters alike, one alone. */
const BOUNDS = { field: 0.2, emitters: 27, one: 1100 };
const shareX = ratioScale(0.1, 3000, 20, 320);
const ICONS = { side: 36, top: 30 };
const icon = (at: number, emitters: ReadonlyArray<readonly [number, number]>, isEven = false) => [
  ...(isEven ? [box('light', shareX(at) - 18, ICONS.top, ICONS.side, ICONS.side)] : []),
  box('ink', shareX(at) - 18, ICONS.top, ICONS.side, ICONS.side),
  ...emitters.map(([x, y]) => dot('accent-fill', shareX(at) + x, ICONS.top + 18 + y, 3)),
];
const PLACES = [-11, 0, 11];

export const retina: Sketch = {
  width: 340,
  height: 156,
  words:
    'The retina’s share of a limit is bounded, not measured. At least: as if the field were evenly bright, or its emitters alike. At most: as if one gave all the light. The truth lies between, so a low bound is no all-clear. Invented panel. Don’t look into the LEDs.',
  pieces: [
    line('soft', 20, 88, 320, 88),
    line('ink', shareX(100), 22, shareX(100), 98),
    text(shareX(100), 14, 'the limit', 'middle'),
    ...icon(BOUNDS.field, [], true),
    ...icon(
      BOUNDS.emitters,
      PLACES.flatMap((x) => PLACES.map((y) => [x, y] as const)),
    ),
    ...icon(BOUNDS.one, [[0, 0]]),
    ...Object.values(BOUNDS).flatMap((it) => [
      line('soft', shareX(it), 66, shareX(it), 88),
      dot('accent-fill', shareX(it), 88, 5),
    ]),
    text(shareX(BOUNDS.field) + 4, 112, '0.20 %', 'middle'),
    text(shareX(BOUNDS.emitters), 112, '27 %', 'middle'),
    text(shareX(BOUNDS.one), 112, '11 times', 'middle'),
    ...measure(shareX(BOUNDS.emitters), 124, shareX(BOUNDS.one), 124),
    text((shareX(BOUNDS.emitters) + shareX(BOUNDS.one)) / 2, 145, 'between: unknown', 'middle'),
  ],
};

const hertzX = ratioScale(10, 10_000, 30, 300);
const depthY = ratioScale(0.1, 100, 126, 14);
const EXAMPLE = { frequency: 100, depth: 12 };
/** A line of the standard: in two parts, since it steps up. */
const flickerLine = (style: 'ink' | 'dash', kind: 'lowRisk' | 'noEffect', last: number) => {
  const at = (frequency: number) => {
    const depth = flickerLines(frequency)[kind];
    return depth === 'no-limit' ? [] : [[hertzX(frequency), depthY(depth)] as const];
  };
  return through(style, [10, ROW_EDGE - 0.01, ROW_EDGE, last].flatMap(at));
};

export const flickerLimit: Sketch = {
  width: 340,
  height: 152,
  words:
    'Depth against frequency, on scales of equal ratios, with a standard’s lines of low risk and, broken, of no effect. An invented 12 % at 100 Hz is 1.5 times the first and 3.6 times the second. The lines speak of visible light. No verdict.',
  pieces: [
    line('soft', 30, 126, 316, 126),
    line('soft', 30, 10, 30, 126),
    flickerLine('ink', 'lowRisk', LOW_RISK_TO),
    flickerLine('dash', 'noEffect', NO_EFFECT_TO),
    dot('accent-fill', hertzX(EXAMPLE.frequency), depthY(EXAMPLE.depth), 5),
    text(hertzX(EXAMPLE.frequency) - 8, depthY(EXAMPLE.depth) - 4, '12 %', 'end'),
    text(hertzX(LOW_RISK_TO) - 28, 22, 'low risk', 'end'),
    text(hertzX(600), 72, 'no effect'),
    text(38, 22, 'depth'),
    text(hertzX(100), 145, '100 Hz', 'middle'),
    text(hertzX(1000), 145, '1000 Hz', 'middle'),
  ],
};

const [LOWEST, ...HIGHER] = RANGE_EDGES.magnetic;
const bedAt = ratioScale(0.01, 1, 20, 320);
const FIELD = 0.3;

export const bedLines: Sketch = {
  width: 340,
  height: 134,
  words:
    'An invented magnetic field, 0.30 µT, among the lines that a private guideline draws for beds, on a scale of equal ratios: 15 times the lowest. The guideline has no official status and was not made for panels. No verdict.',
  pieces: [
    line('soft', 20, 86, 320, 86),
    ...[LOWEST, ...HIGHER].flatMap((edge) => [
      line('ink', bedAt(edge), 62, bedAt(edge), 98),
      text(bedAt(edge), 116, `${edge}`, 'middle'),
    ]),
    text(312, 116, 'µT'),
    dot('accent-fill', bedAt(FIELD), 86, 6),
    ...measure(bedAt(LOWEST), 46, bedAt(FIELD), 46),
    text((bedAt(LOWEST) + bedAt(FIELD)) / 2, 36, `${Math.round(FIELD / LOWEST)} times the lowest`, 'middle'),
    text(bedAt(FIELD) - 8, 74, '0.30', 'end'),
  ],
};
