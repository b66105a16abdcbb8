import sharp from 'sharp';
import type { Drawing } from '../../site/cards/drawing.ts';

/**
 * Few colours without dither: drawings have no more, and letters keep clean edges. A third of the time and size of the
 * library's defaults for palettes.
 */
const PNG = { palette: true, colours: 16, dither: 0, effort: 1, compressionLevel: 6 } as const;

/** A drawing as a PNG so wide, px: drawn at that size, since to make a larger one smaller takes as long again. */
export function pictureOf(drawing: Drawing, pixels: number): Promise<Buffer> {
  return sharp(Buffer.from(drawing.svg('', '', pixels)))
    .png(PNG)
    .toBuffer();
}
