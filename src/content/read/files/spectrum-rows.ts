import type { FileFault } from './file-kind.ts';
import { GrowingNumbers } from './growing-numbers.ts';

/** Fewest rows by which a spectrum shows a peak. Our own choice. */
export const FEWEST_ROWS = 10;
/** More rows than any spectrometer has. */
const MOST_ROWS = 100_000;
/** Rows farther apart than so much, nm, show no LED's peak. Our own choice: half the width of a narrow one. */
const WIDEST_STEP = 10;

/** Rows of a spectrum as they come from a file. */
export interface SpectrumRows {
  /** nm, rising. */
  wavelengths: Float64Array;
  values: Float64Array;
  /** They fell in the file. */
  isTurned: boolean;
}

/** Takes the rows of a spectrum, and refuses those that are none. */
export class SpectrumCollector {
  readonly #wavelengths = new GrowingNumbers(MOST_ROWS);
  readonly #values = new GrowingNumbers(MOST_ROWS);
  #direction = 0;

  /**
   * @param nm wavelength
   * @returns what is wrong with the row
   */
  take(nm: number, value: number): FileFault | undefined {
    const last = this.#wavelengths.last;
    if (!(nm >= 100 && nm <= 20_000)) {
      return {
        found: `a wavelength of ${show(nm)} nm`,
        wanted: 'wavelengths from 100 nm to 20 000 nm',
        hint: 'is this column the wavelength, and its unit as the head says?',
      };
    }
    if (this.#wavelengths.length >= MOST_ROWS) {
      return { found: `more than ${MOST_ROWS} rows`, wanted: 'the rows of one spectrum' };
    }
    if (!Number.isNaN(last)) {
      if (nm === last) {
        return {
          found: `${show(nm)} nm a second time`,
          wanted: 'each wavelength once',
          hint: 'two runs in one file? Keep one; or more digits of the wavelength',
        };
      }
      const direction = Math.sign(nm - last);
      if (this.#direction !== 0 && direction !== this.#direction) {
        return {
          found: `${show(nm)} nm after ${show(last)} nm`,
          wanted: 'wavelengths in their order from row to row',
          hint: 'sort the rows by wavelength, or keep one run where the file holds several',
        };
      }
      this.#direction = direction;
    }
    this.#wavelengths.push(nm);
    this.#values.push(value);
    return undefined;
  }

  /** All rows, the shortest wavelength first; a fault where they make no spectrum. */
  done(): SpectrumRows | { fault: FileFault } {
    const wavelengths = this.#wavelengths.done();
    const values = this.#values.done();
    const count = wavelengths.length;
    if (count < FEWEST_ROWS) {
      const found = `${count} ${count === 1 ? 'row' : 'rows'} of numbers`;
      return { fault: { found, wanted: `a spectrum: ${FEWEST_ROWS} rows at least` } };
    }
    const isTurned = this.#direction < 0;
    if (isTurned) {
      wavelengths.reverse();
      values.reverse();
    }
    const reach = (wavelengths[count - 1] as number) - (wavelengths[0] as number);
    const step = reach / (count - 1);
    if (step > WIDEST_STEP) {
      const found = `rows ${show(step)} nm apart`;
      return { fault: { found, wanted: `rows at most ${WIDEST_STEP} nm apart`, hint: 'export every pixel' } };
    }
    if (values.every((it) => it === values[0])) {
      return {
        fault: { found: 'one value in all rows', wanted: 'the values of a spectrum', hint: 'is it the column meant?' },
      };
    }
    return { wavelengths, values, isTurned };
  }
}

const show = (value: number) => Number(value.toPrecision(6)).toString();
