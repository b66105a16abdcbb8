import FFT from 'fft.js';
import { at } from '../at.ts';
import type { PlaneValues } from './evenness.ts';

/** How LEDs repeat: middle to middle, cm. */
export interface Pitch {
  across: number;
  down: number;
  /** Every second row lies half a pitch aside. */
  staggered: boolean;
}

/** A dot pattern, or that none stands out of the noise. */
export interface DotPattern {
  /** Amplitude of the strongest wave at the LEDs' pitch over the mean light, 0 to 1; where `isBound`, it is less. */
  contrast: number;
  isBound: boolean;
  /** Crest to crest of that wave, cm. */
  period: number;
  /** Standard uncertainty of the contrast by what else the plane holds around that pitch. */
  noise: number;
}

/** Fewest pixels a pitch; with fewer the dots are not in the picture. */
export const FEWEST_A_PITCH = 4;
/** Fewest pitches a side that make a pattern. */
export const FEWEST_PITCHES = 4;
/** A wave is looked for so far about where it is expected: a wall that is not quite parallel, corners set by hand. */
export const SEARCHED = 0.15;
/**
 * A wave counts from so many times the median around it: amplitudes of noise have a Rayleigh distribution, of which one
 * in 65,000 is above four medians.
 */
export const STANDS_OUT = 4;
/** Smallest wave that is told, over the mean light: packing a photo and its 256 steps make waves of up to that. Our own choice. */
export const SMALLEST_WAVE = 0.005;
/** Median of a Rayleigh distribution over its parameter. */
const RAYLEIGH_MEDIAN = Math.sqrt(2 * Math.LN2);

/**
 * Waves that LEDs so laid out cast at their coarsest, in cycles a cm: the shortest vectors of the reciprocal lattice. Of
 * LEDs that are red and near-infrared in turn a camera sees every second one, whose waves are as coarse again.
 */
function waves({ across, down, staggered }: Pitch): Array<readonly [number, number]> {
  const [x, y] = [1 / across, 1 / down];
  const diagonal = [
    [x / 2, y / 2],
    [x / 2, -y / 2],
    [0, y / 2],
  ] as const;
  if (!staggered) return [[x, 0], [0, y], ...diagonal];
  return [[x, y / 2], [x, -y / 2], [0, y], ...diagonal];
}

/**
 * How strongly the LEDs' pitch shows on a lit plane, from its two-dimensional Fourier transform: the light is taken over
 * its mean within two pitches around, which leaves waves of that pitch as they are; windowed (Hann), and the highest
 * amplitude is read near where the pitch puts it, with a parabola through the logarithms beside it.
 *
 * @returns undefined where the pixels are too coarse, or the plane holds too few pitches
 */
export function dotPattern(plane: PlaneValues, pitch: Pitch): DotPattern | undefined {
  const { columns, rows, width, height } = plane;
  const longest = Math.max(pitch.across, pitch.down);
  const shortest = Math.min(pitch.across, pitch.down);
  if (shortest < (FEWEST_A_PITCH * width) / columns || shortest < (FEWEST_A_PITCH * height) / rows) return undefined;
  if (width < FEWEST_PITCHES * longest || height < FEWEST_PITCHES * longest) return undefined;
  const box = boxOf(plane, pitch);
  const amplitudes = amplitudesOf(overLocalMean(plane, box), columns, rows);
  const { size } = amplitudes;
  // Cycles a cm to bins, and back.
  const bins = { x: (size * width) / columns, y: (size * height) / rows };
  const found = waves(pitch)
    .map(([x, y]) => highestAbout(amplitudes, x * bins.x, y * bins.y, widthOfWave(size, columns, rows)))
    .sort((a, b) => b.amplitude - a.amplitude)[0];
  if (!found) return undefined;
  const around = Math.hypot(found.x, found.y);
  const floor = medianAround(amplitudes, around, found, widthOfWave(size, columns, rows));
  const least = Math.max(SMALLEST_WAVE, STANDS_OUT * floor);
  const isBound = found.amplitude < least;
  // A mean over whole pixels is never just one pitch wide, and takes or adds a little of the wave.
  const kept = 1 - boxResponse(box.x, found.x / size) * boxResponse(box.y, found.y / size);
  return {
    contrast: isBound ? least : found.amplitude / kept,
    isBound,
    period: 1 / Math.hypot(found.x / bins.x, found.y / bins.y),
    noise: floor / RAYLEIGH_MEDIAN,
  };
}

/** The window makes a wave so many bins wide, to either side. */
const widthOfWave = (size: number, columns: number, rows: number) => Math.ceil((2 * size) / Math.min(columns, rows));

/** Pixels to either side of one that a local mean takes in: about two pitches in all, after which everything repeats. */
function boxOf({ columns, rows, width, height }: PlaneValues, pitch: Pitch): { x: number; y: number } {
  return {
    x: Math.max(1, Math.round((pitch.across * columns) / width)),
    y: Math.max(1, Math.round((pitch.down * rows) / height)),
  };
}

/** What such a mean leaves of a wave, by its cycles a pixel (the kernel of Dirichlet). */
function boxResponse(half: number, frequency: number): number {
  const many = 2 * half + 1;
  const sine = Math.sin(Math.PI * frequency);
  return sine === 0 ? 1 : Math.sin(Math.PI * frequency * many) / (many * sine);
}

/** Each value over the mean around it, less one. */
function overLocalMean({ columns, rows, values }: PlaneValues, box: { x: number; y: number }): Float64Array {
  const sums = new Float64Array((columns + 1) * (rows + 1));
  const side = columns + 1;
  for (let row = 0; row < rows; row += 1) {
    let line = 0;
    for (let column = 0; column < columns; column += 1) {
      line += at(values, row * columns + column);
      sums[(row + 1) * side + column + 1] = at(sums, row * side + column + 1) + line;
    }
  }
  return Float64Array.from({ length: columns * rows }, (_, place) => {
    const [column, row] = [place % columns, Math.floor(place / columns)];
    // As far to either side, or the mean would lie aside of the place near an edge.
    const reachX = Math.min(box.x, column, columns - 1 - column);
    const reachY = Math.min(box.y, row, rows - 1 - row);
    const [left, right, top, bottom] = [column - reachX, column + reachX + 1, row - reachY, row + reachY + 1];
    const sum =
      at(sums, bottom * side + right) -
      at(sums, top * side + right) -
      at(sums, bottom * side + left) +
      at(sums, top * side + left);
    const local = sum / ((right - left) * (bottom - top));
    return local > 0 ? at(values, place) / local - 1 : 0;
  });
}

interface Amplitudes {
  /** Bins a side; places count from nought, negative ones from the end. */
  size: number;
  values: Float64Array;
}

const hann = (i: number, length: number) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / length);

function amplitudesOf(values: Float64Array, columns: number, rows: number): Amplitudes {
  const size = 2 ** Math.ceil(Math.log2(Math.max(columns, rows)));
  const fft = new FFT(size);
  const rowOut = fft.createComplexArray();
  const rowIn = fft.createComplexArray();
  const plane = new Float64Array(2 * size * rows);
  let weights = 0;
  for (let row = 0; row < rows; row += 1) {
    rowIn.fill(0);
    for (let column = 0; column < columns; column += 1) {
      const weight = hann(row, rows) * hann(column, columns);
      weights += weight;
      rowIn[2 * column] = at(values, row * columns + column) * weight;
    }
    fft.transform(rowOut, rowIn);
    plane.set(rowOut, 2 * size * row);
  }
  const amplitudes = new Float64Array(size * size);
  for (let column = 0; column < size; column += 1) {
    rowIn.fill(0);
    for (let row = 0; row < rows; row += 1) {
      const from = 2 * (size * row + column);
      rowIn[2 * row] = at(plane, from);
      rowIn[2 * row + 1] = at(plane, from + 1);
    }
    fft.transform(rowOut, rowIn);
    for (let row = 0; row < size; row += 1) {
      // Half of a wave lies at the opposite frequency.
      amplitudes[row * size + column] = (2 * Math.hypot(at(rowOut, 2 * row), at(rowOut, 2 * row + 1))) / weights;
    }
  }
  return { size, values: amplitudes };
}

function amplitudeAt({ size, values }: Amplitudes, x: number, y: number): number {
  return at(values, ((y + size) % size) * size + ((x + size) % size));
}

/** The highest amplitude near a frequency, in bins, between bins by a parabola through the logarithms. */
function highestAbout(amplitudes: Amplitudes, x: number, y: number, wide: number) {
  const reach = Math.max(SEARCHED * Math.hypot(x, y), wide / 2);
  let best = { x: Math.round(x), y: Math.round(y), amplitude: 0 };
  for (let j = Math.ceil(y - reach); j <= y + reach; j += 1) {
    for (let i = Math.ceil(x - reach); i <= x + reach; i += 1) {
      if (Math.hypot(i - x, j - y) > reach) continue;
      const amplitude = amplitudeAt(amplitudes, i, j);
      if (amplitude > best.amplitude) best = { x: i, y: j, amplitude };
    }
  }
  const raise = (dx: number, dy: number) => {
    const [below, here, above] = [-1, 0, 1].map((step) =>
      Math.log(Math.max(1e-300, amplitudeAt(amplitudes, best.x + step * dx, best.y + step * dy))),
    ) as [number, number, number];
    const bend = below - 2 * here + above;
    return bend < 0 ? Math.min(0.5, -((below - above) ** 2) / (8 * bend)) : 0;
  };
  return { ...best, amplitude: best.amplitude * Math.exp(raise(1, 0) + raise(0, 1)) };
}

/** Median of the amplitudes as far from nought as a wave, without the waves themselves. */
function medianAround(amplitudes: Amplitudes, around: number, wave: { x: number; y: number }, wide: number): number {
  const { size } = amplitudes;
  const reach = Math.min(size / 2 - 1, Math.ceil(1.4 * around));
  const found: number[] = [];
  for (let y = -reach; y <= reach; y += 1) {
    for (let x = 0; x <= reach; x += 1) {
      const far = Math.hypot(x, y);
      if (far < 0.6 * around || far > 1.4 * around) continue;
      if (Math.hypot(x - wave.x, y - wave.y) <= wide) continue;
      found.push(amplitudeAt(amplitudes, x, y));
    }
  }
  found.sort((a, b) => a - b);
  return found[Math.floor(found.length / 2)] ?? 0;
}
