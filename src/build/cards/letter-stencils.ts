import type { Path } from 'canvaskit-wasm';
import { type Letter, letterOutline } from '../../site/cards/lettering.ts';
import type { StencilCutter } from './cut-stencils.ts';
import type { Stencil } from './sheet.ts';

/**
 * Places of a letter in two pixels, which is a byte: a quarter of a pixel to either side is less than anyone sees, and most
 * letters of a card are found to be drawn already.
 */
const PLACES = 4;

/** Bytes of letters that are kept. A hundred panels' have 4 MB. */
const MOST = 16e6;

/** Letters of one size, px, each by its place; nothing for a blank. */
type Sized = Map<Letter['key'], Array<Stencil | undefined>>;

/** Letters, each drawn once at a size and a place in two pixels. */
export class LetterStencils {
  readonly #cutter: StencilCutter;
  /** What the library makes lies in its own memory until it is deleted. */
  readonly #outlines = new Map<Letter['key'], Path | undefined>();
  readonly #sizes = new Map<number, Sized>();
  #bytes = 0;

  constructor(cutter: StencilCutter) {
    this.#cutter = cutter;
  }

  /** All that are kept of a size. */
  ofSize(size: number): Sized {
    if (this.#bytes > MOST) {
      this.#sizes.clear();
      this.#bytes = 0;
    }
    const known = this.#sizes.get(size);
    if (known) return known;
    const sized: Sized = new Map();
    this.#sizes.set(size, sized);
    return sized;
  }

  /** A letter of a size, and how many bytes to the right it lies; none for a blank. */
  at(sized: Sized, letter: Letter, size: number, x: number): { stencil: Stencil | undefined; right: number } {
    const steps = Math.round(x * (PLACES / 2));
    const place = steps & (PLACES - 1);
    const places = sized.get(letter.key) ?? [];
    if (places.length === 0) sized.set(letter.key, places);
    if (!(place in places)) places[place] = this.#cut(letter, size, place);
    return { stencil: places[place], right: (steps - place) / PLACES };
  }

  #cut(letter: Letter, size: number, place: number): Stencil | undefined {
    const outline = this.#outline(letter);
    if (!outline) return undefined;
    const stencil = this.#cutter.cut(outline, { x: place / (PLACES / 2), y: 0, scale: size / letter.units });
    this.#bytes += stencil?.levels.length ?? 0;
    return stencil;
  }

  #outline(letter: Letter): Path | undefined {
    if (this.#outlines.has(letter.key)) return this.#outlines.get(letter.key);
    const data = letterOutline(letter);
    const outline = data === '' ? undefined : this.#cutter.outline(data);
    this.#outlines.set(letter.key, outline);
    return outline;
  }
}
