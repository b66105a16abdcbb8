import { MILLI } from '../unit-factors.ts';
import { GEOMETRY, type PanelSums, type Sums } from './panel-sums.ts';
import { BASIS, squaredWeights, WeightedRows } from './profile-basis.ts';

/** Some rows of a beam, moved by amounts of each pattern of drive and by lengths of the geometry, in their order. */
export interface MovedRows {
  suppose(weights: Float64Array): void;
  fill(amounts: Float64Array, out: Float64Array): void;
}

/** The rows of some sums, at the beams and amounts that are asked for. */
export function movedRows({ count, base, patterns, geometry }: Sums): MovedRows {
  const sources = [base, ...patterns, ...GEOMETRY.map((it) => geometry[it])];
  const known = new Float64Array(sources.length * count);
  const light = new WeightedRows();
  return {
    suppose(weights) {
      light.take(weights);
      let place = 0;
      for (const rows of sources) for (let row = 0; row < count; row++) known[place++] = light.sum(rows, row);
    },
    fill(amounts, out) {
      for (let row = 0; row < count; row++) {
        let value = known[row] as number;
        for (let p = 0, at = count + row; p < amounts.length; p++, at += count) {
          value += (amounts[p] as number) * (known[at] as number);
        }
        out[row] = value;
      }
    },
  };
}

/** What LEDs that differ do to the places of the targets where they may be brightest; nothing to the others. */
export function grainOf(
  { targets, targetRows, leds }: PanelSums,
  weights: Float64Array,
  difference: number,
): Float64Array {
  const out = new Float64Array(targets.count);
  const squares = new Float64Array(BASIS);
  squaredWeights(weights, squares);
  for (let row = 1; row < targets.count; row++) {
    const place = (row - 1) % targetRows;
    if (place === 0 || place > targets.peaks) continue;
    let square = 0;
    for (let k = 0, at = row * BASIS; k < BASIS; k++, at++) {
      square += (targets.base[at] as number) * (squares[k] as number);
    }
    const scale = MILLI / (2 * Math.PI * (targets.planes[row] as number) ** 2);
    out[row] = difference * Math.sqrt(Math.max(0, (scale * square) / leds));
  }
  return out;
}
