import { at } from '../at.ts';
import { type ExponentNodes, emptyNodes, fillNodes, LATTICE_SIZE, type Nodes } from './gaussian-sum.ts';
import type { PanelModel } from './panel-model.ts';
import { BASIS_EXPONENTS } from './profile-basis.ts';

/** A part of a beam, and the power in it, W; of either sign. */
export interface BeamPart {
  of: ExponentNodes;
  power: number;
}

/** The parts of a panel's light that there are. */
export function beamParts({ power, weights }: Pick<PanelModel, 'power' | 'weights'>): BeamPart[] {
  return BASIS_EXPONENTS.map((of, k) => ({ of, power: power * at(weights, k) })).filter((it) => it.power !== 0);
}

const one = emptyNodes();
const sums = new Float64Array(LATTICE_SIZE);

/**
 * Fills `nodes` for a whole beam at one distance: parts share the points of the lattice, so that what a panel's LEDs do
 * at a point is worked out once for all of them. Weights hold each part's power times its exponent and one, W.
 *
 * @param distance cm
 * @param reach largest lateral distance that matters, cm
 * @throws RangeError for a distance out of reach
 */
export function mixNodes(nodes: Nodes, parts: readonly BeamPart[], distance: number, reach: number): void {
  let [first, last] = [LATTICE_SIZE, -1];
  for (const { of, power } of parts) {
    fillNodes(one, of, distance, reach);
    const factor = power * (of.exponent + 1);
    for (let k = 0; k < one.count; k++) {
      const index = one.index[k] as number;
      sums[index] = (sums[index] as number) + factor * (one.weight[k] as number);
      if (index < first) first = index;
      if (index > last) last = index;
    }
  }
  let count = 0;
  for (let index = first; index <= last; index++) {
    const weight = sums[index] as number;
    if (weight === 0) continue;
    nodes.index[count] = index;
    nodes.weight[count++] = weight;
    sums[index] = 0;
  }
  nodes.count = count;
}
