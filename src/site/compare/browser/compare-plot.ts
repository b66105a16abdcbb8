/** Mean irradiance against distance of several panels in one plot. No DOM. */
import { distanceCurve } from '../../../measure/beam/distance-curve.ts';
import type { PanelModel } from '../../../measure/beam/panel-model.ts';
import { TABLE_DISTANCES } from '../../../measure/beam/table-distances.ts';
import { fixed } from '../../../words/format.ts';

/** A panel whose light can be drawn. */
export interface DrawnPanel {
  name: string;
  light: PanelModel;
  /** Its place among the panels of the page, from 0: decides how its line is drawn. */
  place: number;
}

/** Mean irradiance against distance, ready to draw; lengths in CSS pixels from the top left. */
export interface CurvesPlot {
  width: number;
  height: number;
  frame: { left: number; top: number; right: number; bottom: number };
  x: Array<{ at: number; text: string }>;
  y: Array<{ at: number; text: string }>;
  curves: Array<{
    place: number;
    path: string;
    dash: string;
    /** Where the curve ends, and the name that is tied to it. */
    end: { x: number; y: number };
    label: { x: number; y: number; text: string };
  }>;
  description: string;
}

const WIDTH = 820;
const HEIGHT = 400;
const FRAME = { left: 52, top: 14, right: WIDTH - 240, bottom: HEIGHT - 44 };
/** From the end of a curve to its name, px. */
const LEADER = 26;
const LABEL_HEIGHT = 18;
const NEAREST: number = TABLE_DISTANCES[0];
const FARTHEST: number = TABLE_DISTANCES[TABLE_DISTANCES.length - 1] as number;

/** Dash patterns by place, told apart without any colour. */
export const DASHES = ['none', '10 5', '2 4', '14 4 2 4', '6 3 2 3 2 3'] as const;

/** Draws the means over each panel's own field; undefined where there is nothing to draw. */
export function curvesPlot(panels: readonly DrawnPanel[]): CurvesPlot | undefined {
  if (panels.length === 0) return undefined;
  const distances = Array.from({ length: FARTHEST - NEAREST + 1 }, (_, i) => NEAREST + i);
  const drawn = panels.map((panel) => ({ panel, points: distanceCurve(panel.light, distances) }));
  const step = niceStep(Math.max(...drawn.flatMap(({ points }) => points.map((it) => it.mean))) / 5);
  const most =
    step * Math.ceil(Math.max(...drawn.map(({ points }) => Math.max(...points.map((it) => it.mean)))) / step);
  const x = (cm: number) => round(FRAME.left + ((FRAME.right - FRAME.left) * cm) / FARTHEST);
  const y = (value: number) => round(FRAME.bottom - ((FRAME.bottom - FRAME.top) * value) / most);
  const curves = drawn.map(({ panel, points }) => {
    const end = points.at(-1) as { distance: number; mean: number };
    return {
      place: panel.place,
      path: `M${points.map((it) => `${x(it.distance)} ${y(it.mean)}`).join('L')}`,
      dash: DASHES[panel.place % DASHES.length] as string,
      end: { x: x(end.distance), y: y(end.mean) },
      label: { x: FRAME.right + LEADER, y: y(end.mean), text: panel.name },
    };
  });
  keepApart(curves.map((it) => it.label));
  const decimals = step >= 1 ? 0 : step >= 0.1 ? 1 : 2;
  return {
    width: WIDTH,
    height: HEIGHT,
    frame: FRAME,
    x: Array.from({ length: FARTHEST / 10 + 1 }, (_, i) => ({ at: x(10 * i), text: String(10 * i) })),
    y: Array.from({ length: Math.round(most / step) + 1 }, (_, i) => ({
      at: y(i * step),
      text: fixed(i * step, decimals),
    })),
    curves,
    description: `Modelled mean irradiance against distance from ${NEAREST} to ${FARTHEST} cm: ${drawn
      .map(
        ({ panel, points }) => `${panel.name} from ${words(points[0]?.mean)} to ${words(points.at(-1)?.mean)} mW/cm²`,
      )
      .join('; ')}`,
  };
}

const words = (value = 0) => fixed(value, value >= 10 ? 0 : 1);

/** A step of 1, 2 or 5 times a power of ten, no smaller than the one given. */
function niceStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  return ([1, 2, 5, 10].find((it) => it * power >= least * (1 - 1e-9)) as number) * power;
}

/** Moves labels apart, upwards from the axis, so that none crosses another. */
function keepApart(labels: Array<{ y: number }>): void {
  let lowest = FRAME.bottom;
  for (const label of labels.toSorted((a, b) => b.y - a.y)) {
    label.y = round(Math.min(label.y, lowest));
    lowest = label.y - LABEL_HEIGHT;
  }
}

const round = (value: number) => Number(value.toFixed(1));
