/** The part of an axis that is in view: it goes closer and wider, and from side to side, and never beyond the axis. No DOM. */

/** Places in view at closest. */
const FEWEST = 8;

export class ViewWindow {
  readonly #whole: readonly [number, number];
  readonly #first: readonly [number, number];
  readonly #shortest: number;
  /** Ends in the axis's own measure: logarithms where it is logarithmic. */
  #ends: readonly [number, number];
  readonly #isLogarithmic: boolean;

  /**
   * @param whole ends of the axis
   * @param places how many readings lie on it
   * @param first what is in view at first
   */
  constructor(
    whole: readonly [number, number],
    places: number,
    { first = whole, isLogarithmic = false }: { first?: readonly [number, number]; isLogarithmic?: boolean } = {},
  ) {
    this.#isLogarithmic = isLogarithmic;
    this.#whole = [this.#in(whole[0]), this.#in(whole[1])];
    this.#shortest = ((this.#whole[1] - this.#whole[0]) * FEWEST) / Math.max(FEWEST, places);
    this.#first = this.#within([this.#in(first[0]), this.#in(first[1])]);
    this.#ends = this.#first;
  }

  get from(): number {
    return this.#out(this.#ends[0]);
  }

  get to(): number {
    return this.#out(this.#ends[1]);
  }

  /** True where all of the axis is in view. */
  get isWhole(): boolean {
    return this.#ends[0] <= this.#whole[0] && this.#ends[1] >= this.#whole[1];
  }

  /** Goes so many times closer, or wider below 1; what lies at a place stays there. */
  zoom(times: number, about: number): void {
    const [from, to] = this.#ends;
    const at = Math.min(to, Math.max(from, this.#in(about)));
    const length = Math.max(this.#shortest, (to - from) / times);
    const share = (at - from) / (to - from);
    this.#ends = this.#within([at - share * length, at + (1 - share) * length]);
  }

  /** Moves by a share of what is in view; to the right where it is positive. */
  move(share: number): void {
    const [from, to] = this.#ends;
    const by = share * (to - from);
    this.#ends = this.#within([from + by, to + by]);
  }

  /** Moves so far that a place is in view. */
  show(place: number): void {
    const [from, to] = this.#ends;
    const at = this.#in(place);
    if (at < from) this.move((at - from) / (to - from));
    else if (at > to) this.move((at - to) / (to - from));
  }

  /** Shows what was in view at first, or else everything. */
  reset(): void {
    const isFirst = this.#ends[0] === this.#first[0] && this.#ends[1] === this.#first[1];
    this.#ends = isFirst ? this.#whole : this.#first;
  }

  #within([from, to]: readonly [number, number]): readonly [number, number] {
    const [first, last] = this.#whole;
    const length = Math.min(to - from, last - first);
    const start = Math.min(Math.max(from, first), last - length);
    return [start, start + length];
  }

  #in(value: number): number {
    return this.#isLogarithmic ? Math.log(value) : value;
  }

  #out(value: number): number {
    return this.#isLogarithmic ? Math.exp(value) : value;
  }
}
