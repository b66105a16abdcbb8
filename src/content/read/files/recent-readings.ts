/** Bytes that anything counts for besides its lists of numbers. Our own choice. */
const LEAST = 4096;

/** What was read last, as far as it goes into so many bytes; what was asked for longest ago goes first. */
export class RecentReadings<T> {
  readonly #known = new Map<string, { it: T; bytes: number }>();
  readonly #most: number;
  #bytes = 0;

  /** @param most bytes of all of them; the newest stays whatever it has */
  constructor(most: number) {
    this.#most = most;
  }

  get(key: string): T | undefined {
    return this.#known.get(key)?.it;
  }

  set(key: string, it: T): void {
    this.#leave(key);
    const bytes = LEAST + bytesIn(it);
    this.#known.set(key, { it, bytes });
    this.#bytes += bytes;
    for (const [oldest] of this.#known) {
      if (this.#bytes <= this.#most || oldest === key) return;
      this.#leave(oldest);
    }
  }

  #leave(key: string): void {
    const known = this.#known.get(key);
    if (!known) return;
    this.#bytes -= known.bytes;
    this.#known.delete(key);
  }
}

/** Bytes of the lists of numbers in plain data. */
function bytesIn(it: unknown): number {
  if (ArrayBuffer.isView(it)) return it.byteLength;
  if (Array.isArray(it)) return typeof it[0] === 'number' ? 8 * it.length : sum(it);
  return typeof it === 'object' && it !== null ? sum(Object.values(it)) : 0;
}

const sum = (all: readonly unknown[]): number => all.reduce<number>((bytes, it) => bytes + bytesIn(it), 0);
