const CHUNK = 65_536;

/**
 * A list of numbers of which nobody knows how long it gets, in the memory of plain numbers. It grows by pieces, so that a log of
 * a hundred megabytes is not copied over and over while it is read.
 */
export class GrowingNumbers {
  #full: Float64Array[] = [];
  #current: Float64Array;
  #used = 0;

  constructor(room = 1024) {
    this.#current = new Float64Array(Math.min(room, CHUNK));
  }

  get length(): number {
    return this.#full.reduce((sum, it) => sum + it.length, this.#used);
  }

  /** The last one; NaN where there is none. */
  get last(): number {
    return this.#current[this.#used - 1] ?? this.#full.at(-1)?.at(-1) ?? Number.NaN;
  }

  push(value: number): void {
    if (this.#used === this.#current.length) {
      this.#full.push(this.#current);
      this.#current = new Float64Array(CHUNK);
      this.#used = 0;
    }
    this.#current[this.#used++] = value;
  }

  /** All of them, in an array of their own; the list is empty afterwards, so that they are not in memory twice. */
  done(): Float64Array {
    const all = new Float64Array(this.length);
    let at = 0;
    for (let piece = this.#full.shift(); piece; piece = this.#full.shift()) {
      all.set(piece, at);
      at += piece.length;
    }
    all.set(this.#current.subarray(0, this.#used), at);
    this.#used = 0;
    return all;
  }
}
