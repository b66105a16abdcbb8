import { ticks } from 'd3-array';
import type { StandardEntry } from '../../ledger/standard-entry.ts';
import type { ChartPoint, ChartStage } from '../../measure/control/control-chart.ts';
import { fixed, showDate } from '../../words/format.ts';
import { chartValue } from '../../words/standard-words.ts';
import { keepApart, pixels, type Tick } from '../shared/browser/plot.ts';
import { timeAxis } from './time-axis.ts';

/** A day of a chart on the drawing. */
export interface DrawnPoint {
  x: number;
  y: number;
  /** Open circles set the limits, full ones are held against them, a square lies beyond. */
  kind: 'first' | 'judged' | 'beyond';
  /** On the drawing where it lies beyond, in a tooltip everywhere. */
  title: string;
}

/** Words at a place of the drawing. */
export interface DrawnWords {
  x: number;
  y: number;
  text: string;
  anchor: 'start' | 'middle' | 'end';
}

/** A control chart at one size, ready to draw; lengths in CSS pixels from the top left. */
export interface ControlDrawing {
  name: 'wide' | 'narrow';
  width: number;
  height: number;
  frame: { left: number; top: number; right: number; bottom: number };
  x: Tick[];
  y: Tick[];
  /** The bands between the limits, a stage each, with the centre line. */
  bands: Array<{ x: number; width: number; top: number; height: number; centre: number }>;
  /** Names of the lines of the newest stage, at their ends. */
  lines: DrawnWords[];
  /** Where limits were restarted: a line from top to bottom. */
  restarts: number[];
  /** Where the meter was calibrated: a mark on the axis. */
  calibrated: number[];
  /** What the two are called. */
  events: DrawnWords[];
  points: DrawnPoint[];
  /** Words of the points beyond. */
  beyond: DrawnWords[];
}

const SHEETS = [
  { name: 'wide', width: 760, height: 290, right: 80, xRoom: 84, yTicks: 5 },
  { name: 'narrow', width: 350, height: 280, right: 80, xRoom: 68, yTicks: 4 },
] as const;

/** Room beside the frame: of the readings' numbers, of what happened above it, and of the days below it. */
const EDGE = { left: 44, top: 40, bottom: 30 };
/** Between the frame and the outermost points or lines. */
const INSET = 8;
/** Room that a line of words needs, and that a letter needs; the style sheet has letters of 12 px. */
const LINE_HEIGHT = 15;
const LETTER = 6.3;
/** What lies nearer happened together, px. */
const TOGETHER = 12;

/** The chart at both sizes; none where nothing was read. */
export function controlDrawings(entry: StandardEntry): ControlDrawing[] {
  const points = entry.stages.flatMap((it) => it.points);
  if (points.length === 0) return [];
  return SHEETS.map((sheet) => draw(entry, points, sheet));
}

function draw(
  { stages, current, calibrated }: StandardEntry,
  points: readonly ChartPoint[],
  { name, width, height, right, xRoom, yTicks }: (typeof SHEETS)[number],
): ControlDrawing {
  const frame = { left: EDGE.left, top: EDGE.top, right: width - right, bottom: height - EDGE.bottom };
  const [first, last] = [points[0]?.date ?? '', points.at(-1)?.date ?? ''];
  const time = timeAxis([first, last], [frame.left + INSET, frame.right - INSET], xRoom);
  const values = [
    ...points.map((it) => it.value),
    ...stages.flatMap(({ limits }) => (limits ? [limits.lower, limits.upper] : [])),
  ];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const span = high - low || Math.abs(high) || 1;
  const place = (value: number) =>
    pixels(frame.bottom - INSET - ((frame.bottom - frame.top - 2 * INSET) * (value - low)) / span);
  const rounds = ticks(low, low + span, yTicks);
  const decimals = Math.max(0, -Math.floor(Math.log10((rounds[1] ?? 1) - (rounds[0] ?? 0)) + 1e-9));
  const drawn = points.map(
    (it): DrawnPoint => ({
      x: time.place(it.date),
      y: place(it.value),
      kind: it.beyond ? 'beyond' : it.isFirst ? 'first' : 'judged',
      title: `${showDate(it.date)}: ${chartValue(it.value, current)}${it.beyond ? `, ${it.beyond} the limits` : ''}`,
    }),
  );
  return {
    name,
    width,
    height,
    frame,
    x: time.ticks,
    y: rounds.map((it) => ({ at: place(it), text: fixed(it, decimals) })),
    bands: bandsOf(stages, { frame, place, x: time.place }),
    lines: linesOf(current, frame, place),
    restarts: stages.slice(1).map(({ from }) => within(time.place(from), frame)),
    calibrated: calibrated.map(time.place),
    events: eventsOf(stages, calibrated, { frame, x: time.place, width }),
    points: drawn,
    beyond: drawn.filter((it) => it.kind === 'beyond').map((it) => wordsBeside(it, points, drawn, frame)),
  };
}

type Frame = ControlDrawing['frame'];

const within = (x: number, { left, right }: Frame) => Math.min(right, Math.max(left, x));

/** Each stage's limits reach from its first day to the next stage's. */
function bandsOf(
  stages: readonly ChartStage[],
  { frame, place, x }: { frame: Frame; place: (value: number) => number; x: (day: string) => number },
): ControlDrawing['bands'] {
  return stages.flatMap(({ limits, from }, i) => {
    if (!limits) return [];
    const start = i === 0 ? frame.left : within(x(from), frame);
    const next = stages[i + 1];
    const end = next ? within(x(next.from), frame) : frame.right;
    const top = place(limits.upper);
    const height = pixels(place(limits.lower) - top);
    return [{ x: start, width: pixels(end - start), top, height, centre: place(limits.centre) }];
  });
}

function linesOf(stage: ChartStage, frame: Frame, place: (value: number) => number): DrawnWords[] {
  const { limits } = stage;
  if (!limits) return [];
  const named = [
    ['limit', limits.upper],
    ['usual', limits.centre],
    ['limit', limits.lower],
  ] as const;
  const words = named.map(
    ([name, value]): DrawnWords => ({
      x: frame.right + 6,
      y: place(value),
      text: `${name} ${chartValue(value, stage)}`,
      anchor: 'start',
    }),
  );
  keepApart(words, frame.bottom, LINE_HEIGHT);
  return words;
}

/** What happened when, above the frame: in one line where it happened together, in several where words would meet. */
function eventsOf(
  stages: readonly ChartStage[],
  calibrated: readonly string[],
  { frame, x, width }: { frame: Frame; x: (day: string) => number; width: number },
): DrawnWords[] {
  const all = [
    ...calibrated.map((day) => ({ at: within(x(day), frame), text: 'meter calibrated' })),
    ...stages.slice(1).map(({ from }) => ({ at: within(x(from), frame), text: 'new limits' })),
  ].toSorted((a, b) => a.at - b.at);
  const merged: Array<{ at: number; text: string }> = [];
  for (const { at, text } of all) {
    const last = merged.at(-1);
    if (last && at - last.at < TOGETHER) last.text += `, ${text}`;
    else merged.push({ at, text });
  }
  const lines: number[] = [];
  return merged.map(({ at, text }): DrawnWords => {
    const room = text.length * LETTER;
    const isLate = at + room > width;
    const start = isLate ? at - room : at;
    const free = lines.findIndex((end) => end <= start);
    const line = free < 0 ? lines.length : free;
    lines[line] = start + room + LETTER;
    return { x: at, y: frame.top - 8 - line * LINE_HEIGHT, text, anchor: isLate ? 'end' : 'start' };
  });
}

/** The day of a point beyond the limits, on its side that has more room. */
function wordsBeside(
  point: DrawnPoint,
  points: readonly ChartPoint[],
  drawn: readonly DrawnPoint[],
  { left, right }: Frame,
): DrawnWords {
  const text = showDate(points[drawn.indexOf(point)]?.date ?? '');
  const isRight = point.x < (left + right) / 2;
  return { x: point.x + (isRight ? 9 : -9), y: point.y, text, anchor: isRight ? 'start' : 'end' };
}
