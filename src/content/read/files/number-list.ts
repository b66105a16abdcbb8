const CHUNK = 65_536;

/** Numbers one by one, without an array that is copied each time it grows: a log has millions. */
export class NumberList {
  private readonly full: Float64Array[] = [];
  private current = new Float64Array(CHUNK);
  private used = 0;

  get length(): number {
    return this.full.length * CHUNK + this.used;
  }

  push(value: number): void {
    if (this.used === CHUNK) {
      this.full.push(this.current);
      this.current = new Float64Array(CHUNK);
      this.used = 0;
    }
    this.current[this.used++] = value;
  }

  /** All of them in one array; the list is empty afterwards, so that they are in memory once. */
  take(): Float64Array {
    const all = new Float64Array(this.length);
    let at = 0;
    while (this.full.length > 0) {
      const chunk = this.full.shift() as Float64Array;
      all.set(chunk, at);
      at += chunk.length;
    }
    all.set(this.current.subarray(0, this.used), at);
    this.used = 0;
    return all;
  }
}
