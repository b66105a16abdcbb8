/** A text by its place in the table; with the numbers that stand in it, one after another, where they are a panel's own. */
export type TextRef = number | [place: number, ...numbers: string[]];

/** A text of the table, with its numbers put in the places of `#`; a place that the table has not is no text. */
export function textOf(ref: TextRef, texts: readonly string[]): string {
  if (typeof ref === 'number') return texts[ref] ?? '';
  const [place, ...numbers] = ref;
  return (texts[place] ?? '').replace(/#/g, () => numbers.shift() ?? '#');
}
