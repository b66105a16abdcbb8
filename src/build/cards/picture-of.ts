import type { Drawing } from '../../site/cards/drawing.ts';
import { MarkDrawer } from './draw-marks.ts';
import { indexedPng, rowsOf } from './indexed-png.ts';
import { Sheet } from './sheet.ts';

/*
 * Pictures of drawings. The library draws into memory of its own, without threads, machine code of one platform or
 * typefaces of the machine: the same drawing, the same bytes, wherever it is built.
 */

/** The library with what it keeps: it takes a tenth of a second to load, and is loaded when a picture is to be made. */
let drawer: Promise<MarkDrawer> | undefined;

/** Memory for all sheets, blank between them. */
let memory = new ArrayBuffer(0);

/** A drawing as a PNG. @param pixels its width @param perInch dots, where it is for paper of one size */
export async function pictureOf(drawing: Drawing, pixels: number, perInch?: number): Promise<Buffer> {
  drawer ??= open();
  return pictureBy(await drawer, drawing, pixels, perInch);
}

async function open(): Promise<MarkDrawer> {
  const { default: init } = await import('canvaskit-wasm');
  return new MarkDrawer(await init());
}

/** Nothing may come between: the next picture is drawn in the same memory. */
function pictureBy(
  drawer: MarkDrawer,
  { width, height, marks }: Drawing,
  pixels: number,
  perInch: number | undefined,
): Buffer {
  const down = Math.round((height * pixels) / width);
  if (memory.byteLength < Sheet.size(pixels, down)) memory = new ArrayBuffer(Sheet.size(pixels, down));
  const sheet = new Sheet(pixels, down, memory);
  try {
    drawer.draw(sheet, marks, pixels / width);
    return indexedPng(rowsOf(sheet), perInch);
  } finally {
    sheet.wipe();
  }
}
