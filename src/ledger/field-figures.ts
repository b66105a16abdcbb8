import type { FigureOrGap } from '../measure/figure.ts';

/** Width, height and area of the LED field; gaps where it was not measured. */
export interface FieldFigures {
  width: FigureOrGap;
  height: FigureOrGap;
  area: FigureOrGap;
}
