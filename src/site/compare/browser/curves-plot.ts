/** Mean irradiance against distance of several panels in one plot. No DOM. */
import { distanceCurve } from '../../../measure/beam/distance-curve.ts';
import type { PanelModel } from '../../../measure/beam/panel-model.ts';
import { TABLE_DISTANCES } from '../../../measure/beam/table-distances.ts';
import { fixed } from '../../../words/format.ts';
import { pathThrough } from '../../shared/browser/path-data.ts';
import { keepApart, type Plot, plotAxes } from '../../shared/browser/plot.ts';

/** A panel whose light can be drawn. */
export interface DrawnPanel {
  name: string;
  light: PanelModel;
  /** Its place among the panels of the page, from 0: decides how its line is drawn. */
  place: number;
}

/** Mean irradiance against distance, ready to draw; lengths in CSS pixels from the top left. */
export interface CurvesPlot extends Plot {
  curves: Array<{
    place: number;
    path: string;
    dash: string;
    /** Where the curve ends, and the name that is tied to it. */
    end: { x: number; y: number };
    label: { x: number; y: number; text: string };
  }>;
}

/** Room for a plot at a desk and on a phone, px; a name that needs more makes it wider. */
const SIZES = { wide: { width: 820, height: 400 }, narrow: { width: 350, height: 300 } } as const;
/** Of the part within the axes, where names leave as much. */
const LEAST_FRAME = 180;
const LEFT = 52;
/** From the end of a curve to its name, px. */
const LEADER = 26;
/** A piece of the curve before its name, with the gap behind it. */
const SAMPLE = 34;
/** Room for a letter of a name. */
const LETTER = 7.5;
const LABEL_HEIGHT = 18;
const NEAREST: number = TABLE_DISTANCES[0];
const FARTHEST: number = Math.max(...TABLE_DISTANCES);

/** Dash patterns by place, told apart without any colour. */
export const DASHES = ['none', '10 5', '2 4', '14 4 2 4', '6 3 2 3 2 3'] as const;

/** Draws the means over each panel's own field; undefined where there is nothing to draw. */
export function curvesPlot(panels: readonly DrawnPanel[], isNarrow = false): CurvesPlot | undefined {
  if (panels.length === 0) return undefined;
  const distances = Array.from({ length: FARTHEST - NEAREST + 1 }, (_, i) => NEAREST + i);
  const drawn = panels.map((panel) => ({ panel, points: distanceCurve(panel.light, distances) }));
  const highest = Math.max(...drawn.flatMap(({ points }) => points.map((it) => it.mean)));
  const right = LEADER + SAMPLE + LETTER * Math.max(...panels.map((it) => it.name.length));
  const { width, height } = SIZES[isNarrow ? 'narrow' : 'wide'];
  const size = { width: Math.max(width, LEFT + LEAST_FRAME + right), height, right };
  const { area, x, y } = plotAxes(size, FARTHEST, highest);
  const { frame } = area;
  const curves = drawn.map(({ panel, points }) => {
    const places = points.map((it) => [x.place(it.distance), y.place(it.mean)] as const);
    const [endX, endY] = places.at(-1) ?? [frame.left, frame.bottom];
    return {
      place: panel.place,
      path: pathThrough(places),
      dash: dashOf(panel.place),
      end: { x: endX, y: endY },
      label: { x: frame.right + LEADER, y: endY, text: panel.name },
    };
  });
  keepApart(
    curves.map((it) => it.label),
    frame.bottom,
    LABEL_HEIGHT,
  );
  return {
    ...area,
    curves,
    description: `Modelled mean irradiance against distance from ${NEAREST} to ${FARTHEST} cm: ${drawn
      .map(
        ({ panel, points }) => `${panel.name} from ${words(points[0]?.mean)} to ${words(points.at(-1)?.mean)} mW/cm²`,
      )
      .join('; ')}`,
  };
}

const words = (value = 0) => fixed(value, value >= 10 ? 0 : 1);

const dashOf = (place: number) => DASHES[place % DASHES.length] ?? 'none';
