/** A list of numbers of which nobody knows how long it gets, in the memory of plain numbers. */
export class GrowingNumbers {
  #values: Float64Array;
  #length = 0;

  constructor(room = 1024) {
    this.#values = new Float64Array(room);
  }

  get length(): number {
    return this.#length;
  }

  /** The last one; NaN where there is none. */
  get last(): number {
    return this.#values[this.#length - 1] ?? Number.NaN;
  }

  push(value: number): void {
    if (this.#length === this.#values.length) {
      const more = new Float64Array(Math.ceil(1.6 * this.#values.length));
      more.set(this.#values);
      this.#values = more;
    }
    this.#values[this.#length++] = value;
  }

  /** All of them, in an array of their own. */
  done(): Float64Array {
    return this.#values.slice(0, this.#length);
  }
}
