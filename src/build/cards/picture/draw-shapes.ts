import { pointsOnPath } from 'points-on-path';
import type { Ink, Shapes } from '../../../site/cards/marks.ts';
import type { PieceElement } from '../../../site/shared/browser/pieces.ts';
import { coverOf, type Point } from './cover.ts';
import { coveredBy } from './palette.ts';
import type { Plane } from './plane.ts';
import { strokePolygons } from './stroke.ts';

/** What tells how far lines may be off a curve, in units of shapes: a fiftieth of one. */
const TOLERANCE = 0.006;
/** Corners of a circle. */
const CORNERS = 96;

/**
 * Lays shapes on a picture.
 *
 * @param scale px for a unit of the drawing
 * @throws where a shape is of a kind that is not drawn here, or an ink is not one of the guide's
 */
export function drawShapes(plane: Plane, { pieces, x, y, scale: own }: Shapes, scale: number): void {
  const unit = own * scale;
  const place = ([px, py]: Point): Point => [(x + px * own) * scale, (y + py * own) * scale];
  for (const it of pieces) {
    const lines = linesOf(it).map((line) => line.map(place));
    const { fill, stroke, dashes, width, strength } = styleOf(it);
    if (fill && it.tag !== 'line') inked(plane, lines, fill, strength);
    const broken = dashes.map((length) => length * unit);
    if (stroke) {
      const strokes = lines.flatMap((line) => strokePolygons(line, width * unit, broken));
      inked(plane, strokes, stroke);
    }
  }
}

/** How a shape is drawn: what it says, and what SVG has where it says nothing. */
function styleOf({ attributes }: PieceElement) {
  const ink = (it: PieceElement['attributes'][string]) => (it === undefined || it === 'none' ? undefined : (it as Ink));
  return {
    fill: ink(attributes.fill),
    strength: Number(attributes['fill-opacity'] ?? 1),
    stroke: ink(attributes.stroke),
    width: Number(attributes['stroke-width'] ?? 1),
    dashes: String(attributes['stroke-dasharray'] ?? '')
      .split(/[\s,]+/)
      .filter((it) => it !== '')
      .map(Number),
  };
}

function inked(plane: Plane, polygons: readonly (readonly Point[])[], ink: Ink, strength = 1): void {
  const table = coveredBy(ink, strength);
  coverOf(polygons, (left, y, covered, count) => plane.ink(left, y, covered, count, table));
}

/** The outline of a shape in straight lines, in its units; a closed one ends where it begins. */
function linesOf({ tag, attributes }: PieceElement): Point[][] {
  const at = (name: string, without = 0) => Number(attributes[name] ?? without);
  switch (tag) {
    case 'line':
      return [
        [
          [at('x1'), at('y1')],
          [at('x2'), at('y2')],
        ],
      ];
    case 'rect': {
      const [x, y, width, height] = [at('x'), at('y'), at('width'), at('height')];
      return [
        [
          [x, y],
          [x + width, y],
          [x + width, y + height],
          [x, y + height],
          [x, y],
        ],
      ];
    }
    case 'circle':
      return [round(at('cx'), at('cy'), at('r'), at('r'))];
    case 'ellipse':
      return [round(at('cx'), at('cy'), at('rx'), at('ry'))];
    case 'path':
      return pointsOnPath(String(attributes.d), TOLERANCE);
    default:
      throw new Error(`pictures of cards have no ${tag}: draw it in draw-shapes.ts`);
  }
}

function round(cx: number, cy: number, rx: number, ry: number): Point[] {
  const points = Array.from({ length: CORNERS }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / CORNERS;
    return [cx + rx * Math.cos(angle), cy + ry * Math.sin(angle)];
  });
  return [...points, points[0] as Point];
}
