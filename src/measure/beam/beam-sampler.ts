import { valueAt } from '../at.ts';
import type { Random } from '../random.ts';
import { emptySupposed, LATENTS, type Supposed, suppose } from './beam-prior.ts';
import type { ReadingModel } from './reading-model.ts';

/** Beams drawn from what is thought possible before anything is read. */
const FIRST = 1500;
/** Beams that stand for what the readings leave open. */
export const BEAMS = 320;
/** Each step of tempering leaves at least this share of the beams as an effective sample. */
const LEAST_SHARE = 0.5;
/** Moves of every beam after a step, and after the last one. */
const MOVES = 3;
const LAST_MOVES = 4;

/** Beams that the readings allow, each as likely as another. */
export interface AllowedBeams {
  latents: Float64Array[];
  /** The least chi-square of any that was tried. */
  leastChiSquare: number;
}

/**
 * Beams as likely as the readings make them, by sequential Monte Carlo: many are drawn beforehand, and the readings
 * are let in step by step, each time so far that half of the beams still count; then those that count are multiplied
 * and moved, with a probability that keeps them as likely as they should be.
 *
 * Sources: Del Moral, Doucet and Jasra 2006, Journal of the Royal Statistical Society B 68(3), 411; moves along the
 * difference of two others, ter Braak 2006, Statistics and Computing 16(3), 239 (both from memory).
 */
export function allowedBeams(model: ReadingModel, random: Random): AllowedBeams {
  const supposed: Supposed = emptySupposed();
  let least = Number.POSITIVE_INFINITY;
  const likelihood = (latent: Float64Array) => {
    const it = model.likelihood(suppose(latent, supposed));
    if (it.chiSquare < least) least = it.chiSquare;
    return Number.isFinite(it.log) ? it.log : -1e9;
  };
  let latents = Array.from({ length: FIRST }, () => Float64Array.from({ length: LATENTS }, () => random.normal()));
  let logs = Float64Array.from(latents, likelihood);
  let tempered = 0;
  while (tempered < 1) {
    const next = nextStep(logs, tempered, latents.length === FIRST ? BEAMS : LEAST_SHARE * BEAMS);
    const chosen = resample(logs, next - tempered, BEAMS, random);
    latents = chosen.map((i) => Float64Array.from(latents[i] as Float64Array));
    logs = Float64Array.from(chosen, (i) => valueAt(logs, i));
    tempered = next;
    const moves = tempered < 1 ? MOVES : LAST_MOVES;
    for (let move = 0; move < moves; move++) moveAll(latents, logs, tempered, likelihood, random, move);
  }
  return { latents, leastChiSquare: least };
}

/** How far the readings can be let in so that the effective sample is not smaller than `wanted`. */
function nextStep(logs: Float64Array, from: number, wanted: number): number {
  if (effective(logs, 1 - from) >= wanted) return 1;
  let [low, high] = [0, 1 - from];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (effective(logs, middle) >= wanted) low = middle;
    else high = middle;
  }
  return Math.min(1, from + Math.max(low, 1e-4));
}

/** Effective size of a sample whose weights are exp(by * logs): the square of their sum over the sum of squares. */
function effective(logs: Float64Array, by: number): number {
  let top = Number.NEGATIVE_INFINITY;
  for (const it of logs) if (it > top) top = it;
  let sum = 0;
  let squares = 0;
  for (const it of logs) {
    const weight = Math.exp(by * (it - top));
    sum += weight;
    squares += weight * weight;
  }
  return (sum * sum) / squares;
}

/** Places of `count` beams, by systematic resampling. */
function resample(logs: Float64Array, by: number, count: number, random: Random): number[] {
  let top = Number.NEGATIVE_INFINITY;
  for (const it of logs) if (it > top) top = it;
  const weights = logs.map((it) => Math.exp(by * (it - top)));
  const total = weights.reduce((sum, it) => sum + it, 0);
  const step = total / count;
  let wanted = step * random.uniform();
  let sum = 0;
  const chosen: number[] = [];
  for (let i = 0; i < weights.length; i++) {
    sum += valueAt(weights, i);
    while (chosen.length < count && wanted < sum) {
      chosen.push(i);
      wanted += step;
    }
  }
  while (chosen.length < count) chosen.push(weights.length - 1);
  return chosen;
}

/** One move of each beam, in turn: along the difference of two others, and about its place with the prior's shape. */
function moveAll(
  latents: Float64Array[],
  logs: Float64Array,
  tempered: number,
  likelihood: (latent: Float64Array) => number,
  random: Random,
  move: number,
): void {
  const n = latents.length;
  const gamma = move % 2 === 0 ? 1.68 / Math.sqrt(LATENTS) : 0.9;
  for (let i = 0; i < n; i++) {
    const here = latents[i] as Float64Array;
    const next = new Float64Array(LATENTS);
    let log = 0;
    if (move % 3 === 2) {
      // Keeps the normal distribution of each latent as it is, so that only the readings decide.
      const turn = 0.15 + 0.5 * random.uniform();
      const rest = Math.sqrt(1 - turn * turn);
      for (let k = 0; k < LATENTS; k++) next[k] = rest * valueAt(here, k) + turn * random.normal();
    } else {
      const one = latents[Math.floor(n * random.uniform())] as Float64Array;
      const other = latents[Math.floor(n * random.uniform())] as Float64Array;
      for (let k = 0; k < LATENTS; k++) {
        const before = valueAt(here, k);
        const after = before + gamma * (valueAt(one, k) - valueAt(other, k)) + 0.02 * random.normal();
        next[k] = after;
        log += (before * before - after * after) / 2;
      }
    }
    const found = likelihood(next);
    log += tempered * (found - valueAt(logs, i));
    if (Math.log(random.uniform()) < log) {
      latents[i] = next;
      logs[i] = found;
    }
  }
}
