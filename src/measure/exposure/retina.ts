import { gap } from '../figure.ts';
import type { HeldFigure } from './limit.ts';

declare module '../statement.ts' {
  interface StatementData {
    'retina-needs-radiance': object;
  }
}

/** The retina, of which nothing is known. */
export interface RetinaResult extends HeldFigure {
  hazard: 'retina';
}

const METRIC = 'retinal-hazard';

/**
 * Why the guide says nothing of the retina (IEC 62471:2006, 4.3.5 and 4.3.6: clauses from memory and secondary sources).
 * The limits are for radiance, W/(m² sr), through a stated angle of acceptance; irradiance on a plane does not hold it.
 * There is no calculation here, and none is missing.
 */
export function retinaResult(): RetinaResult {
  return {
    hazard: 'retina',
    id: METRIC,
    figure: gap(METRIC, { code: 'retina-needs-radiance' }),
    limit: 'retina',
  };
}
