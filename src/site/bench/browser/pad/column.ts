/** A pasted column of readings, line by line to the places where they go. No DOM. */
import type { RunGrid } from '../run.ts';
import type { Place } from './places.ts';
import { readTyped } from './typed.ts';

/** One pasted value: where it goes, or why it goes nowhere. */
export interface PastedValue {
  text: string;
  place?: Place;
  written?: string;
  fault?: string;
}

/**
 * Holds pasted text against the places from the present one on. A block of as many lines and columns as the grid has is
 * laid on it as it stands; all else goes line by line along the way.
 *
 * @param unit that the meter shows, by place
 */
export function readColumn(
  text: string,
  places: readonly Place[],
  from: number,
  grid: RunGrid,
  unit: (place: Place) => string,
): PastedValue[] {
  const lines = text
    .split(/\r?\n/)
    .map((line) => line.split(/\t|;/).map((it) => it.trim()))
    .filter((cells) => cells.some((it) => it !== ''));
  const isBlock = lines.length === grid.rows && grid.columns > 1 && lines.every((it) => it.length === grid.columns);
  // A heading takes no place.
  const along = lines.flat().filter((it) => it !== '');
  const isValue = (cell: string) => /^[<>]?\s*[+-]?[.,]?\d/.test(cell);
  let taken = 0;
  const targets: Array<{ cell: string; place: Place | undefined }> =
    isBlock && places[from]?.step === 'grid'
      ? lines.flatMap((cells, r) =>
          cells.map((cell, c) => ({ cell, place: places.find((it) => it.path === `grid.rows[${r}][${c}]`) })),
        )
      : along.map((cell) => ({ cell, place: isValue(cell) ? places[from + taken++] : undefined }));
  return targets
    .filter(({ cell }) => cell !== '')
    .map(({ cell, place }) => {
      if (!place)
        return { text: cell, fault: isValue(cell) ? 'There is no place left for it.' : 'No number; left out.' };
      const typed = readTyped(cell, place, unit(place));
      return 'fault' in typed
        ? { text: cell, place, fault: typed.fault }
        : { text: cell, place, written: typed.written };
    });
}
