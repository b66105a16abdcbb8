import type { Edge, Frame, Standing, StencilCutter } from './cut-stencils.ts';
import type { Stencil } from './sheet.ts';

/** Bytes of shapes that are kept: a standing figure is on every panel's card, while sketches seldom come again. */
const MOST = 4e6;

/** Shapes, each drawn once where it comes again in the same place. */
export class ShapeStencils {
  readonly #cutter: StencilCutter;
  readonly #kept = new Map<string, Stencil | undefined>();
  #bytes = 0;

  constructor(cutter: StencilCutter) {
    this.#cutter = cutter;
  }

  /** What a shape covers, or its edge, of a frame; undefined where that is nothing. @param data of its path */
  at(data: string, standing: Standing, { width, height }: Frame, edge?: Edge): Stencil | undefined {
    const key = JSON.stringify([data, standing, width, height, edge]);
    if (this.#kept.has(key)) return this.#kept.get(key);
    const outline = this.#cutter.outline(data);
    const stencil = this.#cutter.cut(outline, standing, edge, { width, height });
    outline.delete();
    if (this.#bytes > MOST) {
      this.#kept.clear();
      this.#bytes = 0;
    }
    this.#kept.set(key, stencil);
    this.#bytes += stencil?.levels.length ?? 0;
    return stencil;
  }
}
