import { type FigureOrGap, isFigure } from '../measure/figure.ts';
import { showFigure } from './format.ts';
import { say } from './say.ts';

/** A figure's text, or the gap's reason. */
export function showText(it: FigureOrGap | undefined, currency: string): string {
  return isFigure(it) ? showFigure(it, currency).text : reasonText(it);
}

/** Why a figure is not there. */
export function reasonText(it: FigureOrGap | undefined): string {
  return it && !isFigure(it) ? say(it.reason) : 'not measured';
}
