/** A picture as the numbers of its colours, a byte a pixel, on paper. What lies outside is left out. */
export class Plane {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;

  constructor(width: number, height: number) {
    this.width = width;
    this.height = height;
    this.pixels = blank(width * height);
  }

  /** Fills whole pixels. */
  fill(left: number, top: number, right: number, bottom: number, colour: number): void {
    const from = Math.max(0, left);
    const to = Math.min(this.width, right);
    if (from >= to) return;
    for (let y = Math.max(0, top); y < Math.min(this.height, bottom); y++) {
      this.pixels.fill(colour, y * this.width + from, y * this.width + to);
    }
  }

  /**
   * Lays ink on what is there, on a row of pixels.
   *
   * @param covered how far each of them is covered, 0 to `COVERED`
   * @param table what becomes of colours under the ink (`coveredBy`)
   */
  ink(left: number, y: number, covered: Uint8Array, count: number, table: Uint8Array): void {
    if (y < 0 || y >= this.height) return;
    const { pixels } = this;
    const at = y * this.width + left;
    const end = Math.min(count, this.width - left);
    for (let i = Math.max(0, -left); i < end; i++) {
      const part = covered[i] as number;
      if (part > 0) pixels[at + i] = table[((pixels[at + i] as number) << 4) | part] as number;
    }
  }
}

let spare = new Uint8Array(0);

/** Memory for one picture, all paper. The same one each time: getting two megabytes costs as much as drawing on them. */
function blank(size: number): Uint8Array {
  if (spare.length < size) spare = new Uint8Array(size);
  return spare.subarray(0, size).fill(0);
}
