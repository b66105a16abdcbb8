/** Puts other content in places of the page, and what stood there before back. */

/** What stood in a place before, to be put back. */
const before = new WeakMap<HTMLElement, Node[]>();

/** Puts other content in a place, remembering what the page came with. */
export function replace(place: HTMLElement, content: ReadonlyArray<Node | string>): void {
  if (!before.has(place)) before.set(place, [...place.childNodes]);
  place.replaceChildren(...content);
}

/** Puts back what the page came with. */
export function restore(place: HTMLElement): void {
  const it = before.get(place);
  if (it) place.replaceChildren(...it);
}

/** What the page came with in a place. */
export const original = (place: HTMLElement): readonly Node[] => before.get(place) ?? [...place.childNodes];
