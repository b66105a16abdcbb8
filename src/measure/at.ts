/**
 * The item at a place of a list that is known to be there.
 *
 * @throws RangeError where it is not, which is a fault of the program
 */
export function itemAt<Item>(list: readonly Item[], index: number): Item {
  const item = list[index];
  if (item === undefined) throw new RangeError(`no item ${index} in a list of ${list.length}`);
  return item;
}

/**
 * The number at a place of an array that is known to be there. Of its own, so that loops over such arrays stay as quick
 * as without the check: the engine compiles a function for the kinds of lists that it has seen.
 *
 * @throws RangeError where it is not, which is a fault of the program
 */
export function valueAt(values: Float64Array, index: number): number {
  const value = values[index];
  if (value === undefined) throw new RangeError(`no value ${index} in an array of ${values.length}`);
  return value;
}
