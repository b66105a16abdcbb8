/** Numbers by which the memory grows at a time. */
const ROOM = 65_536;
const BYTES = Float64Array.BYTES_PER_ELEMENT;

/**
 * A list of numbers of which nobody knows how long it gets, in the memory of plain numbers. Addresses for as many as there can
 * be are set aside at once, and memory is taken as the list grows, in its place: a log of a hundred megabytes is never copied,
 * and never there twice.
 */
export class GrowingNumbers {
  readonly #memory: ArrayBuffer;
  readonly #numbers: Float64Array<ArrayBuffer>;
  #used = 0;

  /** @param most that there can be; one more is an error */
  constructor(most: number) {
    this.#memory = new ArrayBuffer(0, { maxByteLength: most * BYTES });
    this.#numbers = new Float64Array(this.#memory);
  }

  get length(): number {
    return this.#used;
  }

  /** The last one; NaN where there is none. */
  get last(): number {
    return this.#numbers[this.#used - 1] ?? Number.NaN;
  }

  /** @throws RangeError where there were to be no more */
  push(value: number): void {
    if (this.#used === this.#numbers.length) {
      const room = Math.min(this.#memory.maxByteLength, (this.#used + ROOM) * BYTES);
      if (room === this.#memory.byteLength) throw new RangeError(`more than ${this.#used} numbers`);
      this.#memory.resize(room);
    }
    this.#numbers[this.#used++] = value;
  }

  /** All of them, in the memory that they have grown in; nothing may be added afterwards. */
  done(): Float64Array<ArrayBuffer> {
    this.#memory.resize(this.#used * BYTES);
    return new Float64Array(this.#memory, 0, this.#used);
  }
}
