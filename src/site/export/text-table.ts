/** A text by its place in the table; with the numbers that stand in it, one after another, where they are a panel's own. */
export type TextRef = number | [place: number, ...numbers: string[]];

/** Texts that are said once for many panels. */
export interface TextTable {
  /** A text whose numbers differ from panel to panel: the table has `#` in their places. */
  filled(text: string): TextRef;
  /** A text that stands in the table as it is. */
  whole(text: string): number;
  /** All of them, by their places. */
  texts(): string[];
}

/** Lists of notes of one panel, each said once, since most of its figures have one of a few. */
export function noteTable() {
  const lists = new Map<string, TextRef[]>();
  return {
    /** The place of a list. */
    placeOf(notes: TextRef[]): number {
      const key = JSON.stringify(notes);
      if (!lists.has(key)) lists.set(key, notes);
      return [...lists.keys()].indexOf(key);
    },
    lists: (): TextRef[][] => [...lists.values()],
  };
}
export type NoteTable = ReturnType<typeof noteTable>;

const NUMBERS = /#|\d+(?:[.,]\d+)*/g;

export function textTable(): TextTable {
  const places = new Map<string, number>();
  const whole = (text: string): number => {
    const known = places.get(text);
    if (known !== undefined) return known;
    const place = places.size;
    places.set(text, place);
    return place;
  };
  return {
    whole,
    filled: (text) => {
      const numbers = text.match(NUMBERS);
      return numbers ? [whole(text.replace(NUMBERS, '#')), ...numbers] : whole(text);
    },
    texts: () => [...places.keys()],
  };
}
