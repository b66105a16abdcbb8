import type { BudgetComponent } from '../figure.ts';
import type { Readings, SharedError } from './error-sources.ts';
import type { Layout } from './panel-sums.ts';

/** Draw from the mains, with its errors. */
export interface MainsDraw {
  /** W */
  value: number;
  budget: readonly BudgetComponent[];
}

/** Everything that a panel's light is worked out from. */
export interface OpticsInput {
  /** `<panel>/<date>`, for the keys of budget components. */
  session: string;
  layout: Layout;
  /** Readings of the layout's grid points, in their order. */
  grid?: Readings;
  /** Readings past the edges, in the layout's order, with what the panel off gives taken away. */
  beyond?: Readings;
  /** Readings at the layout's sweep distances, in their order. */
  sweep?: Readings;
  /** What the maker claims: full angle at half intensity, degrees. Nothing rests on it. */
  beamAngle?: number;
  /** Errors that readings share. */
  errors: readonly SharedError[];
  /** Draw from the mains with both channels on; for the efficiency. */
  mains?: MainsDraw;
  seed: number;
}

/** Which readings tell most of the light that misses the frame. */
export type BeamSource = 'beyond' | 'sweep' | 'grid';

/** Fewer readings past the edges than this leave the sweep or the grid to tell more. Our own choice. */
const FEWEST_BEYOND = 3;

/** Which of an input's readings tell most of the light that misses the frame. */
export function beamSource({ beyond, sweep, layout }: OpticsInput): BeamSource {
  if (beyond && (layout.beyond?.length ?? 0) >= FEWEST_BEYOND) return 'beyond';
  return sweep ? 'sweep' : 'grid';
}
