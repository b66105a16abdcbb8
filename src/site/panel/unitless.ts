import type { ShownFigure } from '../shared/shown-figure.ts';

/** A figure for a column or a line whose head has the unit. */
export function unitless(it: ShownFigure): ShownFigure {
  return it.shown && !it.other ? { ...it, shown: { ...it.shown, unit: '' } } : it;
}
