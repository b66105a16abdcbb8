import { mean } from 'simple-statistics';
import { beamParts } from './beam-nodes.ts';
import { type PanelModel, panelTerms } from './panel-model.ts';
import { type PlaneMap, planeMap } from './plane-map.ts';

/** Width of the flat figure that stands for a person, cm: about that of shoulders. Our own choice. */
export const BODY_WIDTH = 45;
/** Side of the cells that a body is cut into, cm, at most. */
const CELL = 3;
/** What counts as evenly lit: this share of the mean over the body, or more. Our own choice. */
export const EVEN_FROM = 0.8;

/** What reaches a person who stands before a panel. */
export interface BodyMap extends PlaneMap {
  columns: number;
  rows: number;
  /** Over the whole figure, mW/cm2. */
  mean: number;
  /** Share of the figure that gets at least EVEN_FROM of that mean. */
  evenShare: number;
}

/**
 * Irradiance over a person who faces the panel, the middle of the body before the middle of the panel: a flat
 * upright rectangle, which is a rough figure of a body. A real one is rounded and lit at an angle on its sides,
 * where it gets less.
 *
 * @param distance from the LED plane, cm
 * @param height of the person, cm
 * @param width of the figure, cm
 * @throws RangeError for a person or a distance that cannot be
 */
export function bodyMap(panel: PanelModel, distance: number, height: number, width = BODY_WIDTH): BodyMap {
  if (!(height > 0 && height <= 300 && width > 0 && width <= 200)) {
    throw new RangeError(`a person is up to 300 cm tall and 200 cm wide; found ${height} cm and ${width} cm`);
  }
  const columns = Math.ceil(width / CELL);
  const rows = Math.ceil(height / CELL);
  const beam = beamParts(panel);
  if (beam.length === 0) throw new RangeError('a beam without any part');
  const map = planeMap(panelTerms(panel), beam, distance, { width, height, columns, rows });
  const average = mean(map.values as unknown as number[]);
  const even = map.values.reduce((count, value) => count + (value >= EVEN_FROM * average ? 1 : 0), 0);
  return { ...map, columns, rows, mean: average, evenShare: even / map.values.length };
}
