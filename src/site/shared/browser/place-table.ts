/** A list without repetition, of what is called alike, and where each is in it. */
export function placeTable<T>(nameOf: (it: T) => string) {
  const list: T[] = [];
  const places = new Map<string, number>();
  const placeOf = (it: T): number => {
    const name = nameOf(it);
    const place = places.get(name) ?? list.push(it) - 1;
    places.set(name, place);
    return place;
  };
  return { list, placeOf };
}
