import type { CanvasKit, MallocObj, Paint, Path, Surface } from 'canvaskit-wasm';
import { FULL } from './palette.ts';
import type { Stencil } from './sheet.ts';

/** Where an outline stands: where its origin lies and how long its unit is, px. */
export interface Standing {
  x: number;
  y: number;
  scale: number;
}

/** An edge as it is drawn, in the outline's units; its dashes and gaps in turn, where it is broken. */
export interface Edge {
  width: number;
  dashes?: readonly number[];
}

/** Part of a sheet that is wanted, px. */
export interface Frame {
  width: number;
  height: number;
}

/** Of how many widths a sharp corner of an edge may stand out: half of the library's limit, 4. */
const CORNER = 2;

/** How much of a pixel is covered, of 255, in steps of a stencil. */
const LEVELS = Uint8Array.from({ length: 256 }, (_, it) => Math.round((it / 255) * FULL));

/** A sheet of the library's memory. */
interface Table extends Frame {
  memory: MallocObj;
  surface: Surface;
}

/** Pixels that are looked at together. */
const PIECE = 4;

/** Has a library say what outlines cover, on one sheet of its memory that is blank between them. */
export class StencilCutter {
  readonly #kit: CanvasKit;
  readonly #ink: Paint;
  #table: Table | undefined;

  constructor(kit: CanvasKit) {
    this.#kit = kit;
    this.#ink = new kit.Paint();
    this.#ink.setAntiAlias(true);
  }

  /** An outline from data of a path. */
  outline(data: string): Path {
    const path = this.#kit.Path.MakeFromSVGString(data);
    if (!path) throw new Error(`not the data of a path: ${data.slice(0, 60)}`);
    return path;
  }

  /** What an outline covers, or its edge, of a frame or wherever it lies. */
  cut(outline: Path, { x, y, scale }: Standing, edge?: Edge, frame?: Frame): Stencil | undefined {
    const [left = 0, top = 0, right = 0, bottom = 0] = outline.getBounds();
    const around = edge ? CORNER * edge.width : 0;
    const x0 = PIECE * Math.floor(within((left - around) * scale + x, frame?.width) / PIECE);
    const y0 = Math.floor(within((top - around) * scale + y, frame?.height));
    const width = PIECE * Math.ceil((within((right + around) * scale + x, frame?.width) - x0) / PIECE);
    const height = Math.ceil(within((bottom + around) * scale + y, frame?.height)) - y0;
    if (width <= 0 || height <= 0) return undefined;
    const { surface, memory, width: row } = this.#tableOf(width, height);
    const canvas = surface.getCanvas();
    canvas.save();
    canvas.clipRect(this.#kit.LTRBRect(0, 0, width, height), this.#kit.ClipOp.Intersect, false);
    canvas.translate(x - x0, y - y0);
    canvas.scale(scale, scale);
    if (edge) this.#drawEdge(surface, outline, edge);
    else canvas.drawPath(outline, this.#ink);
    canvas.restore();
    surface.flush();
    // Asked for after drawing: the library's memory may have moved.
    const covered = memory.toTypedArray() as Uint32Array;
    return { left: x0 / 2, top: y0, across: width / 2, down: height, levels: taken(covered, row, width, height) };
  }

  #drawEdge(surface: Surface, outline: Path, { width, dashes }: Edge): void {
    const line = this.#ink.copy();
    line.setStyle(this.#kit.PaintStyle.Stroke);
    line.setStrokeWidth(width);
    const broken = dashes ? this.#kit.PathEffect.MakeDash([...dashes]) : undefined;
    if (broken) line.setPathEffect(broken);
    surface.getCanvas().drawPath(outline, line);
    broken?.delete();
    line.delete();
  }

  /** A sheet at least so large, blank. */
  #tableOf(width: number, height: number): Table {
    const known = this.#table;
    if (known && known.width >= width && known.height >= height) return known;
    const size = { width: Math.max(width, known?.width ?? 0), height: Math.max(height, known?.height ?? 0) };
    known?.surface.delete();
    if (known) this.#kit.Free(known.memory);
    const { AlphaType, ColorSpace, ColorType } = this.#kit;
    const memory = this.#kit.Malloc(Uint32Array, (size.width * size.height) / PIECE);
    memory.toTypedArray().fill(0);
    const kind = { alphaType: AlphaType.Premul, colorSpace: ColorSpace.SRGB, colorType: ColorType.Alpha_8 };
    const surface = this.#kit.MakeRasterDirectSurface({ ...size, ...kind }, memory, size.width);
    if (!surface) throw new Error(`nothing can be drawn on ${size.width} × ${size.height} pixels`);
    this.#table = { memory, surface, ...size };
    return this.#table;
  }
}

const within = (it: number, end: number | undefined) => (end === undefined ? it : Math.min(Math.max(0, it), end));

/** Takes what was drawn off a sheet of the library, which is blank then. @param row pixels of one of its rows */
function taken(covered: Uint32Array, row: number, width: number, height: number): Uint8Array {
  const levels = new Uint8Array((width / 2) * height);
  const across = width / PIECE;
  for (let y = 0, to = 0; y < height; y++) {
    for (let i = (y * row) / PIECE, end = i + across; i < end; i++, to += 2) {
      const four = covered[i] as number;
      if (four === 0) continue;
      covered[i] = 0;
      const level = (shift: number) => LEVELS[(four >>> shift) & 255] as number;
      levels[to] = (level(0) << 4) | level(8);
      levels[to + 1] = (level(16) << 4) | level(24);
    }
  }
  return levels;
}
