/** Sketches of what figures are held against: claims, a lamp that is kept, the pattern of a grid. */
import { individualsLimits } from '../../../measure/control/individuals-chart.ts';
import { box, dot, interval, line, measure, type Sketch, scale, text, through } from './sketch.ts';

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
