import { at } from '../log/series.ts';
import { seededRandom } from '../random.ts';

/** What one period of light says of its flicker. */
export interface Modulation {
  /** Modulation depth (percent flicker), %. */
  depth: number;
  /** Flicker index, 0 to 1. */
  index: number;
}

/**
 * Modulation depth and flicker index of one whole period of light, in parts of one length. Depth: highest less lowest over their sum
 * (Michelson; CIE e-ILV). Index: area above the mean over the whole area (IEV 845-22-094); it is the mean distance from the mean
 * over twice the mean.
 *
 * @param light of each part; darkness is zero
 */
export function modulationOf(light: ArrayLike<number>): Modulation {
  let [low, high, sum] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  for (let i = 0; i < light.length; i++) {
    const value = at(light, i);
    low = Math.min(low, value);
    high = Math.max(high, value);
    sum += value;
  }
  const mean = sum / light.length;
  let away = 0;
  for (let i = 0; i < light.length; i++) away += Math.abs(at(light, i) - mean);
  return { depth: (100 * (high - low)) / (high + low), index: away / light.length / 2 / mean };
}

const DRAWS = 100;
/**
 * What noise has added over what a second helping of it adds: 2.4 where a wave has a flat top, for the two together are √2 times
 * as large; less than 1.5 at a round or pointed one. The middle, and how far it may be off.
 */
const FIRST_HELPING = 2;
const FIRST_HELPING_DOUBT = 0.9;

/**
 * What the tries do not show: which parts are the extremes, and how many parts there are, was chosen with the same noise. Set so that
 * nine of ten intervals and more hold the depth of simulated waves.
 */
const WIDER = 1.3;

/** Depth and index with their standard uncertainties, and what noise had added to the depth. */
export interface CorrectedModulation extends Modulation {
  depthUncertainty: number;
  indexUncertainty: number;
  noiseTakenOff: number;
}

/**
 * The same, less what noise adds: it pushes the highest value up and the lowest down. How much, is tried out: noise of the size that
 * is left in each part is added once more, a hundred times (a parametric bootstrap, Efron 1979; from memory).
 *
 * @param scatter standard uncertainty of each part
 * @param seed same record, same numbers
 */
export function correctedModulation(
  light: readonly number[],
  scatter: readonly number[],
  seed: number,
): CorrectedModulation {
  const read = modulationOf(light);
  const random = seededRandom(seed);
  const depths: number[] = [];
  const indices: number[] = [];
  for (let draw = 0; draw < DRAWS; draw++) {
    const noisy = modulationOf(light.map((it, i) => it + at(scatter, i) * random.normal()));
    depths.push(noisy.depth - read.depth);
    indices.push(noisy.index - read.index);
  }
  const [depth, index] = [summed(depths), summed(indices)];
  const noiseTakenOff = FIRST_HELPING * depth.bias;
  return {
    depth: Math.min(100, Math.max(0, read.depth - noiseTakenOff)),
    depthUncertainty: WIDER * Math.hypot(depth.deviation, FIRST_HELPING_DOUBT * depth.bias),
    index: Math.max(0, read.index - index.bias),
    indexUncertainty: Math.hypot(index.deviation, index.bias),
    noiseTakenOff,
  };
}

function summed(all: readonly number[]) {
  const bias = all.reduce((sum, it) => sum + it, 0) / all.length;
  const square = all.reduce((sum, it) => sum + (it - bias) ** 2, 0);
  return { bias, deviation: Math.sqrt(square / (all.length - 1)) };
}
