import type { CanvasKit } from 'canvaskit-wasm';
import type { Drawing } from '../../site/cards/drawing.ts';
import { MarkDrawer } from './draw-marks.ts';
import { indexedPng, type NumberedRows, numbered } from './indexed-png.ts';

/*
 * Pictures of drawings. The library draws into memory of its own, without threads, machine code of one platform or
 * typefaces of the machine: the same drawing, the same bytes, wherever it is built.
 */

/** Of a pixel: red, green, blue and opacity. */
const BYTES = 4;

/** The library with what it keeps: it takes a tenth of a second to load, and is loaded when a picture is to be made. */
let studio: Promise<Studio> | undefined;

/** A drawing as a PNG. @param pixels its width @param perInch dots, where it is for paper of one size */
export async function pictureOf(drawing: Drawing, pixels: number, perInch?: number): Promise<Buffer> {
  studio ??= open();
  return indexedPng((await studio).draw(drawing, pixels), perInch);
}

async function open(): Promise<Studio> {
  const { default: init } = await import('canvaskit-wasm');
  return new Studio(await init());
}

class Studio {
  readonly #kit: CanvasKit;
  readonly #drawer: MarkDrawer;
  /** One sheet for all pictures: to ask for so much memory anew takes as long as to draw. */
  #sheet: ReturnType<CanvasKit['Malloc']> | undefined;

  constructor(kit: CanvasKit) {
    this.#kit = kit;
    this.#drawer = new MarkDrawer(kit);
  }

  /** Nothing may come between: the next picture is drawn on the same sheet. */
  draw({ width, height, marks }: Drawing, pixels: number): NumberedRows {
    const down = Math.round((height * pixels) / width);
    const { AlphaType, ColorSpace, ColorType } = this.#kit;
    const sheet = this.#sheetOf(pixels * down);
    const surface = this.#kit.MakeRasterDirectSurface(
      {
        width: pixels,
        height: down,
        alphaType: AlphaType.Opaque,
        colorSpace: ColorSpace.SRGB,
        colorType: ColorType.RGBA_8888,
      },
      sheet,
      pixels * BYTES,
    );
    if (!surface) throw new Error(`no picture can be ${pixels} × ${down} pixels`);
    const canvas = surface.getCanvas();
    canvas.scale(pixels / width, pixels / width);
    this.#drawer.draw(canvas, marks);
    surface.flush();
    surface.delete();
    // Asked for after drawing: the library's memory may have moved.
    const { buffer, byteOffset } = sheet.toTypedArray();
    return numbered(new Int32Array(buffer, byteOffset, pixels * down), pixels, down);
  }

  #sheetOf(pixels: number): ReturnType<CanvasKit['Malloc']> {
    if (this.#sheet && this.#sheet.length >= pixels) return this.#sheet;
    if (this.#sheet) this.#kit.Free(this.#sheet);
    this.#sheet = this.#kit.Malloc(Int32Array, pixels);
    return this.#sheet;
  }
}
