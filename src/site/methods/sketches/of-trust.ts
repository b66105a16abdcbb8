/** Sketches of what figures are held against: claims, a lamp that is kept, a pattern, bounds, flicker’s lines. */
import { individualsLimits } from '../../../measure/control/individuals-chart.ts';
import { flickerLines, LOW_RISK_TO, NO_EFFECT_TO, ROW_EDGE } from '../../../measure/exposure/flicker-lines.ts';
import { box, dot, interval, line, measure, ratioScale, type Sketch, scale, text, through } from './sketch.ts';

const claimX = scale(80, 120, 20, 320);
const MEASURED = { value: 92, half: 6 };
const claimRow = (y: number, claim: number) => [
  ...interval(
    y,
    claimX(MEASURED.value - MEASURED.half),
    claimX(MEASURED.value + MEASURED.half),
    claimX(MEASURED.value),
  ),
  dot('ink', claimX(claim), y, 6),
];

export const claim: Sketch = {
  width: 340,
  height: 156,
  words:
    'A claim, the ring, beside what was measured, 92 ± 6 mW/cm². A claim on the line is held, within the uncertainty. 110 lies off it: 16 % under the claim, which is missed. Only like is held against like. Numbers invented.',
  pieces: [
    line('soft', 20, 128, 320, 128),
    ...[80, 90, 100, 110, 120].flatMap((it) => [
      line('soft', claimX(it), 124, claimX(it), 132),
      text(claimX(it), 149, `${it}`, 'middle'),
    ]),
    ...claimRow(26, 96),
    text(claimX(98) + 14, 31, 'claim 96: held'),
    ...claimRow(78, 110),
    text(claimX(110) + 12, 60, 'claim 110: missed', 'end'),
    ...measure(claimX(MEASURED.value), 96, claimX(110), 96),
    text((claimX(MEASURED.value) + claimX(110)) / 2, 115, '16 % under', 'middle'),
  ],
};

/** The worked example’s lamp, mW/cm²: five first days, and one that is off. */
const FIRST_DAYS = [41, 41.4, 40.9, 41.2, 41.5];
const OFF_DAY = 42.6;
const LIMITS = individualsLimits(FIRST_DAYS);
const chartDay = (i: number) => 44 + 38 * i;
const chartY = scale(40, 42.8, 128, 18);

export const lamp: Sketch = {
  width: 340,
  height: 166,
  words:
    'A lamp that is kept aside, read at each session. Its first days set a mean and limits, 41.2 and 40.2 to 42.2 mW/cm². The day at 42.6 lies beyond, so what this meter read that day is in doubt. Invented readings.',
  pieces: [
    line('dash', 24, chartY(LIMITS.upper), 270, chartY(LIMITS.upper)),
    line('soft', 24, chartY(LIMITS.centre), 270, chartY(LIMITS.centre)),
    line('dash', 24, chartY(LIMITS.lower), 270, chartY(LIMITS.lower)),
    through(
      'soft',
      [...FIRST_DAYS, OFF_DAY].map((it, i) => [chartDay(i), chartY(it)]),
    ),
    ...FIRST_DAYS.map((it, i) => dot('accent-fill', chartDay(i), chartY(it), 5)),
    dot('ink', chartDay(5), chartY(OFF_DAY), 6),
    text(chartDay(5) + 12, chartY(OFF_DAY) + 5, 'in doubt'),
    text(276, chartY(LIMITS.upper) + 13, 'limit'),
    text(276, chartY(LIMITS.centre) + 5, 'mean'),
    text(276, chartY(LIMITS.lower) + 5, 'limit'),
    ...measure(chartDay(0), 140, chartDay(4), 140),
    text((chartDay(0) + chartDay(4)) / 2, 160, 'these set the limits', 'middle'),
  ],
};

/** The worked example’s grid; its last point does not fit its row and column. */
const GRID = [
  [40, 52, 40],
  [51, 66, 51],
  [40, 52, 62],
];

export const oddPoint: Sketch = {
  width: 340,
  height: 148,
  words:
    'By its row and its column the last point should read about 40; it reads 62, which raises †, a doubt. The 66 raises none, as its row and column are bright too. A flag says what is odd; it changes no figure. Invented grid.',
  pieces: [
    box('light', 16, 96, 156, 40),
    box('light', 120, 12, 52, 124),
    box('ink', 16, 12, 156, 124),
    ...GRID.flatMap((row, j) => row.map((it, i) => text(42 + 52 * i, 38 + 42 * j, `${it}`, 'middle'))),
    dot('accent', 146, 117, 17),
    text(186, 44, 'its row and its'),
    text(186, 63, 'column make 40'),
    text(186, 82, 'likely'),
    text(186, 122, '†: a doubt'),
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
