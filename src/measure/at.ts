/**
 * An element that must be there.
 *
 * @throws RangeError where the list has no element at the place, or holds `undefined` there
 */
export function at<T>(list: ArrayLike<T>, place: number): T {
  const it = list[place];
  if (it === undefined) throw new RangeError(`nothing at ${place} of ${list.length}`);
  return it;
}
