/** A piece of a text that gives way to another. */
export interface Splice {
  start: number;
  end: number;
  text: string;
}

/**
 * The text with its pieces replaced; all that lies between them stays as it is.
 *
 * @throws RangeError where two pieces overlap
 */
export function splice(text: string, splices: readonly Splice[]): string {
  let done = '';
  let at = 0;
  for (const it of splices.toSorted((a, b) => a.start - b.start)) {
    if (it.start < at || it.end < it.start) throw new RangeError('pieces of a text that overlap can’t be replaced');
    done += text.slice(at, it.start) + it.text;
    at = it.end;
  }
  return done + text.slice(at);
}
