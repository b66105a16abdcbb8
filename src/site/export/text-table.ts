import { placeTable } from '../shared/browser/place-table.ts';
import type { TextRef } from '../shared/browser/text-ref.ts';

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
export const noteTable = () => placeTable<TextRef[]>((notes) => JSON.stringify(notes));
export type NoteTable = ReturnType<typeof noteTable>;

const NUMBERS = /#|\d+(?:[.,]\d+)*/g;

/** @param table of the texts */
export function textTable({ list, placeOf: whole } = placeTable<string>((text) => text)): TextTable {
  return {
    whole,
    filled: (text) => {
      const numbers = text.match(NUMBERS);
      return numbers ? [whole(text.replace(NUMBERS, '#')), ...numbers] : whole(text);
    },
    texts: () => list,
  };
}
