/** The plots of a panel's page as drawings: what is many times alike is one path. */
import { pathThrough } from '../shared/browser/path-data.ts';
import { type PieceElement, piece } from '../shared/browser/pieces.ts';
import type { Plot } from '../shared/browser/plot.ts';
import type { DistancePlot } from './distance-plot.ts';
import type { GridMaps, LightMap } from './grid-maps.ts';
import type { PointControl } from './point-control.ts';

/** Half of the side of what stands for a reading on a plot. */
const HALF_MARK = 4.5;

type Area = Pick<Plot, 'width' | 'height' | 'description'>;

const drawing = ({ width, height, description }: Area, ...pieces: ReadonlyArray<PieceElement | undefined | false>) =>
  piece('svg', { viewBox: `0 0 ${width} ${height}`, width, height, role: 'img', 'aria-label': description }, ...pieces);

/** Upright lines, one path. */
const uprights = (className: string, lines: ReadonlyArray<{ x: number; from: number; to: number }>) =>
  lines.length > 0 &&
  piece('path', { class: className, d: lines.map((it) => `M${it.x} ${it.from}V${it.to}`).join('') });

/** The lines across a plot with the words at their left. */
function levels({ frame, y }: Pick<Plot, 'frame' | 'y'>, gap: number): PieceElement[] {
  return [
    piece('path', { class: 'grid', d: y.map(({ at }) => `M${frame.left} ${at}H${frame.right}`).join('') }),
    piece('g', { class: 'y' }, ...y.map(({ at, text }) => piece('text', { x: frame.left - gap, y: at }, text))),
  ];
}

/** Irradiance against distance. */
export function distanceDrawing(plot: DistancePlot): PieceElement {
  const { frame } = plot;
  return drawing(
    plot,
    ...levels(plot, 8),
    piece('path', { class: 'tick', d: plot.x.map(({ at }) => `M${at} ${frame.bottom}v5`).join('') }),
    piece(
      'g',
      { class: 'x' },
      ...plot.x.map(({ at, text }) => piece('text', { x: at, y: frame.bottom + 18 }, text)),
      piece('text', { x: (frame.left + frame.right) / 2, y: frame.bottom + 36 }, 'from the LEDs, cm'),
      piece('text', { transform: `translate(12 ${(frame.top + frame.bottom) / 2}) rotate(-90)` }, 'mW/cm²'),
    ),
    ...[...Map.groupBy(plot.intervals, (it) => it.name)].map(([name, lines]) => uprights(`interval ${name}`, lines)),
    ...plot.curves.flatMap(({ name, path, label: { x, y, text } }) => [
      piece('path', { class: `curve ${name}`, d: path }),
      piece('text', { class: 'name', x, y }, text),
    ]),
    plot.bias && uprights('bias', [plot.bias]),
    ...plot.measured.map(({ x, y, kind }) =>
      kind === 'mean'
        ? piece('rect', { class: 'read', x: tenth(x - HALF_MARK), y: tenth(y - HALF_MARK), width: 9, height: 9 })
        : piece('circle', { class: 'read', cx: x, cy: y, r: HALF_MARK }),
    ),
  );
}

/** Every point's readings against what its row and column make likely. */
export function pointsDrawing(it: PointControl): PieceElement {
  const { frame } = it;
  const dots = (isStruck: boolean) => {
    const own = it.points.flatMap(({ x, readings }) =>
      readings.filter((one) => one.isStruck === isStruck).map(({ y }) => piece('circle', { cx: x, cy: y })),
    );
    return own.length > 0 && piece('g', { class: isStruck ? 'struck' : 'read' }, ...own);
  };
  return drawing(
    it,
    ...levels(it, 6),
    it.boxes !== '' && piece('path', { class: 'bounds', d: it.boxes }),
    it.likely !== '' && piece('path', { class: 'likely', d: it.likely }),
    it.mean !== undefined && piece('path', { class: 'mean', d: `M${frame.left} ${it.mean}H${frame.right}` }),
    dots(false),
    dots(true),
    piece(
      'g',
      { class: 'x' },
      ...it.points.map(({ x, name, isOdd }) => piece('text', { x, y: frame.bottom + 16 }, isOdd ? `${name}†` : name)),
    ),
  );
}

/** The light over the LED field, a shade for each fifth. */
export function mapDrawing({ width, height }: Pick<GridMaps, 'width' | 'height'>, map: LightMap): PieceElement {
  const shades = Map.groupBy(map.cells, (it) => it.shade);
  return drawing(
    { width, height, description: map.description },
    piece('rect', { class: 'l0', width, height }),
    ...[...shades].map(([shade, cells]) =>
      piece('path', {
        class: `l${shade}`,
        d: inRows(cells)
          .map((it) => `M${it.x} ${it.y}h${it.width}v${it.height}h-${it.width}z`)
          .join(''),
      }),
    ),
    ...map.areas.map(({ shade, rings }) =>
      piece('path', { class: `l${shade}`, d: rings.map((it) => `${pathThrough(it)}z`).join('') }),
    ),
    piece('rect', { class: 'edge', width, height }),
    ...map.points.map(({ x, y, text }) => piece('text', { x, y }, text)),
  );
}

/** Cells of one shade that lie side by side are one. */
function inRows(cells: LightMap['cells']): LightMap['cells'] {
  const rows: LightMap['cells'] = [];
  for (const it of cells) {
    const before = rows.at(-1);
    const isNext = before?.y === it.y && before.height === it.height && tenth(before.x + before.width) === it.x;
    if (isNext) rows[rows.length - 1] = { ...before, width: tenth(before.width + it.width) };
    else rows.push(it);
  }
  return rows;
}

const tenth = (value: number) => Number(value.toFixed(1));
