import { at } from '../at.ts';
import { MILLI } from '../unit-factors.ts';
import { type BeamPart, mixNodes } from './beam-nodes.ts';
import type { EmitterPart, Field } from './emitter.ts';
import { type ExponentNodes, emptyNodes, fillNodes, LATTICE_ROOT, LATTICE_SIZE, LATTICE_T } from './gaussian-sum.ts';

/** A place on a plane parallel to the panel, cm from its middle. */
export interface Spot {
  x: number;
  y: number;
}

/**
 * A panel that is asked for the same few values again and again, at other distances and for other beams: what does
 * not depend on those is worked out once.
 */
export interface PlaneModel {
  /**
   * Values at a distance for each W that the panel gives off, mW/cm2: the mean over the rectangle first, then the
   * irradiance at each spot, in the order of the spots. Relative error below 1e-6 (see gaussian-sum.ts).
   *
   * @param distance cm
   * @param out room for the values: one more than there are spots
   */
  fill(exponent: ExponentNodes, distance: number, out: Float64Array): void;
  /** The same for a whole beam, mW/cm2: at once, not part by part. */
  fillBeam(beam: readonly BeamPart[], distance: number, out: Float64Array): void;
}

/**
 * @param rectangle about the middle, over which to average; cm
 * @param spots where to ask for the irradiance
 */
export function planeModel(terms: readonly EmitterPart[], rectangle: Field, spots: readonly Spot[]): PlaneModel {
  // The halves of a symmetric panel are alike: corners of a grid are then worked out once.
  const isSymmetric = terms.every((term) => term.x.isSymmetric && term.y.isSymmetric);
  const fold = (at: number) => (isSymmetric ? Math.abs(at) : at) + 0;
  const [xs, xOf] = distinct(spots.map((it) => fold(it.x)));
  const [ys, yOf] = distinct(spots.map((it) => fold(it.y)));
  const [pairs, pairOf] = distinct(spots.map((_, i) => at(xOf, i) * ys.length + at(yOf, i)));
  const pairX = Uint16Array.from(pairs, (it) => Math.floor(it / ys.length));
  const pairY = Uint16Array.from(pairs, (it) => xs.length + (it % ys.length));
  const area = rectangle.width * rectangle.height;
  const a = rectangle.width / 2;
  const b = rectangle.height / 2;

  const reachX = Math.max(...terms.map((it) => it.x.reach)) + Math.max(a, ...xs.map(Math.abs));
  const reachY = Math.max(...terms.map((it) => it.y.reach)) + Math.max(b, ...ys.map(Math.abs));
  const reach = Math.hypot(reachX, reachY);

  // For each point of the lattice and each term: the profiles at every x and y, and the part of the mean.
  const row = xs.length + ys.length + 1;
  const size = row * terms.length;
  const factors = new Float64Array(size * LATTICE_SIZE);
  const isKnown = new Uint8Array(LATTICE_SIZE);
  const prepare = (index: number) => {
    const t = LATTICE_T[index] as number;
    const root = LATTICE_ROOT[index] as number;
    let at = index * size;
    for (const { share, x, y } of terms) {
      for (let i = 0; i < xs.length; i++) factors[at++] = share * x.at(t, root, xs[i] as number);
      for (let i = 0; i < ys.length; i++) factors[at++] = y.at(t, root, ys[i] as number);
      factors[at++] = (share * x.over(t, root, -a, a) * y.over(t, root, -b, b)) / area;
    }
    isKnown[index] = 1;
  };

  const nodes = emptyNodes();
  const sums = new Float64Array(pairs.length);
  /** @param scale mW/cm2 for each unit of the nodes' weights */
  const sumNodes = (scale: number, out: Float64Array) => {
    sums.fill(0);
    let mean = 0;
    for (let k = 0; k < nodes.count; k++) {
      const index = nodes.index[k] as number;
      if (isKnown[index] === 0) prepare(index);
      const weight = nodes.weight[k] as number;
      const end = (index + 1) * size;
      for (let base = index * size; base < end; base += row) {
        mean += weight * (factors[base + row - 1] as number);
        for (let i = 0; i < sums.length; i++) {
          const product =
            (factors[base + (pairX[i] as number)] as number) * (factors[base + (pairY[i] as number)] as number);
          sums[i] = (sums[i] as number) + weight * product;
        }
      }
    }
    out[0] = scale * mean;
    for (let i = 0; i < spots.length; i++) out[i + 1] = scale * (sums[pairOf[i] as number] as number);
  };
  return {
    fill(of, distance, out) {
      fillNodes(nodes, of, distance, reach);
      sumNodes((MILLI * (of.exponent + 1)) / (2 * Math.PI * distance * distance), out);
    },
    fillBeam(beam, distance, out) {
      mixNodes(nodes, beam, distance, reach);
      sumNodes(MILLI / (2 * Math.PI * distance * distance), out);
    },
  };
}

/** The different values among some, and for each of them its place in that list. */
function distinct(values: readonly number[]): [number[], number[]] {
  const list = [...new Set(values)];
  return [list, values.map((it) => list.indexOf(it))];
}
