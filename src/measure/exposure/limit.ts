import type { FigureOrGap } from '../figure.ts';

/**
 * A published limit, level or line that something here is held against or comes from. Its numbers stand beside the
 * formula that uses them; who published it, when, and how well its text is known is in words/limits/citations.ts.
 */
export type LimitId =
  | 'infrared-eye'
  | 'skin-heating'
  | 'retina'
  | 'flicker-low-risk'
  | 'flicker-no-effect'
  | 'flicker-seizures'
  | 'magnetic-level'
  | 'electric-level'
  | 'radio-level'
  | 'sleeping-places'
  | 'background-sound';

/**
 * One figure held against one published limit. It gives no verdict. Each hazard has a type of its own, which adds what
 * its words need (words/limits/).
 */
export interface HeldFigure {
  /** The figure's metric; for pulsing, `pulsing-<mode>`. */
  id: string;
  figure: FigureOrGap;
  /** Undefined where the figure is held against none. */
  limit: LimitId | undefined;
}
