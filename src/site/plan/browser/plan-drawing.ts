import { BODY_WIDTH, EVEN_FROM } from '../../../measure/beam/body-map.ts';
import type { Field } from '../../../measure/beam/emitter.ts';
import { html, svg } from '../../shared/browser/dom.ts';
import type { Calculated } from './plan-calculation.ts';

/** Pixels for a centimetre. */
const SCALE = 2;
const MARGIN = 10;

/**
 * The standing figure with the LED field before it, to scale. Where the light is at least EVEN_FROM of the mean over
 * the figure, it is shaded, and hatched so that colour alone does not tell.
 */
export function bodyDrawing({ body }: Calculated, height: number, field: Field): HTMLElement {
  const { columns, rows, values, mean, evenShare } = body;
  const width = BODY_WIDTH;
  const [cellWidth, cellHeight] = [(SCALE * width) / columns, (SCALE * height) / rows];
  const left = MARGIN + Math.max(0, (SCALE * (field.width - width)) / 2);
  const top = MARGIN + Math.max(0, (SCALE * (field.height - height)) / 2);
  const whole = {
    width: 2 * MARGIN + SCALE * Math.max(width, field.width),
    height: 2 * MARGIN + SCALE * Math.max(height, field.height),
  };
  const cells: SVGElement[] = [];
  for (let row = 0; row < rows; row++) {
    const ofRow = values.slice(row * columns, (row + 1) * columns);
    for (const [from, to] of runsFrom(ofRow, EVEN_FROM * mean)) {
      cells.push(
        svg('rect', {
          class: 'even',
          x: left + from * cellWidth,
          y: top + row * cellHeight,
          width: (to - from) * cellWidth,
          height: cellHeight,
        }),
        svg('line', {
          class: 'hatch',
          x1: left + from * cellWidth,
          x2: left + to * cellWidth,
          y1: top + (row + 0.5) * cellHeight,
          y2: top + (row + 0.5) * cellHeight,
        }),
      );
    }
  }
  const words = `${Math.round(100 * evenShare)} % of a flat figure of ${width} by ${height} cm gets at least ${Math.round(100 * EVEN_FROM)} % of the mean over it; the LED field of ${field.width} by ${field.height} cm stands before its middle`;
  const drawing = svg(
    'svg',
    {
      class: 'body',
      role: 'img',
      'aria-label': words,
      viewBox: `0 0 ${whole.width} ${whole.height}`,
      width: whole.width,
      height: whole.height,
    },
    svg('rect', { class: 'figure', x: left, y: top, width: SCALE * width, height: SCALE * height, rx: 16 }),
    ...cells,
    svg('rect', {
      class: 'panel-field',
      x: left + (SCALE * (width - field.width)) / 2,
      y: top + (SCALE * (height - field.height)) / 2,
      width: SCALE * field.width,
      height: SCALE * field.height,
    }),
  );
  return html(
    'figure',
    {},
    drawing,
    html('figcaption', { class: 'small soft' }, `${words}. Rough: a real body is round, and its sides get less.`),
  );
}

/** Stretches of a row of cells that have at least `least`: the first of each, and the one behind its last. */
function runsFrom(row: ArrayLike<number>, least: number): Array<[from: number, to: number]> {
  const runs: Array<[number, number]> = [];
  let start: number | undefined;
  for (const [column, value] of Array.from(row).entries()) {
    if (value >= least) start ??= column;
    else if (start !== undefined) {
      runs.push([start, column]);
      start = undefined;
    }
  }
  if (start !== undefined) runs.push([start, row.length]);
  return runs;
}
