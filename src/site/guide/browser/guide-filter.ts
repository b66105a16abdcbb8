import { type GuideState, SETS, type SetName } from './guide-address.ts';
import type { RowData } from './row-data.ts';

/** A row that can be filtered: what it holds, and the size class whose table it stands in. */
export interface FilterRow extends RowData {
  sizeClass: string;
}

/** Names of the filters that every guide has; those that take numbers come before them. */
const FIXED = [...SETS, 'since', 'claims'] as const;

/** Names of all filters; each is a bit of what a row fails. */
export function filterNames(ranges: readonly string[]): string[] {
  return [...ranges, ...FIXED];
}

/** A measured peak counts for a wavelength within this, nm: our own choice, half of an LED's usual width. */
export const WAVELENGTH_REACH = 15;

/** What the filters leave. */
export interface Filtered {
  /** 1 for a row that is left. */
  isLeft: Uint8Array;
  /** How many are. */
  count: number;
  /** For each filter, the rows that it alone keeps out, and those that are left: with it open, these would be left. */
  without: ReadonlyMap<string, number>;
}

const isWithin = (value: number | undefined, from: number | undefined, to: number | undefined) =>
  value !== undefined && (from === undefined || value >= from) && (to === undefined || value <= to);

/** Whether a row has one of the values of a set. */
export function hasValue(row: FilterRow, name: SetName, value: string): boolean {
  switch (name) {
    case 'class':
      return row.sizeClass === value;
    case 'maker':
      return row.maker === value;
    case 'nm':
      return row.wavelengths.some((it) => Math.abs(it - Number(value)) <= WAVELENGTH_REACH);
    case 'flicker':
      return row.flicker === value;
  }
}

/** What a row has to meet, and its bit. Only filters that are set are here: most of them are not, most of the time. */
type Test = [bit: number, isMet: (row: FilterRow) => boolean];

/** The filters that are set. A row whose value is not known does not meet a filter on it. */
function testsOf(state: GuideState, ranges: readonly string[], bitOf: (name: string) => number): Test[] {
  const tests: Test[] = [];
  for (const name of ranges) {
    const range = state.ranges[name];
    if (range) tests.push([bitOf(name), (row) => isWithin(row.numbers[name], range.from, range.to)]);
  }
  for (const name of SETS) {
    const wanted = state.sets[name];
    if (!wanted || wanted.length === 0) continue;
    // Makers, classes, flicker: any of them. Wavelengths: all of them, since one asks for a panel that has both.
    tests.push([
      bitOf(name),
      name === 'nm'
        ? (row) => wanted.every((value) => hasValue(row, name, value))
        : (row) => wanted.some((value) => hasValue(row, name, value)),
    ]);
  }
  const { since } = state;
  if (since) tests.push([bitOf('since'), (row) => row.tested !== undefined && row.tested >= since]);
  if (state.hasHeld) tests.push([bitOf('claims'), (row) => row.hasHeld === true]);
  return tests;
}

/** Filters rows, and counts on the way what each filter does. */
export class RowFilter {
  readonly rows: readonly FilterRow[];
  readonly #ranges: readonly string[];
  readonly #bits: ReadonlyMap<string, number>;
  readonly #failures: Uint32Array;

  /**
   * @param ranges names of the filters that take numbers
   */
  constructor(rows: readonly FilterRow[], ranges: readonly string[]) {
    this.rows = rows;
    this.#ranges = ranges;
    this.#bits = new Map(filterNames(ranges).map((name, i) => [name, 1 << i]));
    this.#failures = new Uint32Array(rows.length);
  }

  /** What a state leaves. */
  apply(state: GuideState): Filtered {
    const isLeft = new Uint8Array(this.rows.length);
    const alone = new Map<number, number>();
    const tests = testsOf(state, this.#ranges, (name) => this.#bitOf(name));
    let count = 0;
    this.rows.forEach((row, i) => {
      let failures = 0;
      for (const [bit, isMet] of tests) if (!isMet(row)) failures |= bit;
      this.#failures[i] = failures;
      if (failures === 0) {
        isLeft[i] = 1;
        count++;
      } else if ((failures & (failures - 1)) === 0) alone.set(failures, (alone.get(failures) ?? 0) + 1);
    });
    const without = new Map([...this.#bits].map(([name, bit]) => [name, count + (alone.get(bit) ?? 0)]));
    return { isLeft, count, without };
  }

  #bitOf(name: string): number {
    const bit = this.#bits.get(name);
    if (bit === undefined) throw new RangeError(`there is no filter "${name}"`);
    return bit;
  }

  /**
   * How many panels a choice would leave, all other filters as they stood at the last `apply`: the one value of a set
   * in place of what is chosen there (of wavelengths, on top of it), or a yes.
   */
  leftBy(name: SetName | 'claims', value: string, state: GuideState): number {
    const bit = this.#bitOf(name);
    const others = name === 'nm' ? (state.sets.nm ?? []).filter((it) => it !== value) : [];
    let count = 0;
    this.rows.forEach((row, i) => {
      if (((this.#failures[i] as number) & ~bit) !== 0) return;
      const holds =
        name === 'claims'
          ? row.hasHeld === true
          : hasValue(row, name, value) && others.every((it) => hasValue(row, 'nm', it));
      if (holds) count++;
    });
    return count;
  }
}
