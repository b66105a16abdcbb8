import type { Flag } from '../figure.ts';
import type { Statement } from '../statement.ts';
import type { DrawnLight } from './drawn-light.ts';
import { type OpticsContext, type OpticsFigures, opticsFigures, opticsGaps } from './figures.ts';
import { opticsFlags } from './flags.ts';
import type { BeamSource } from './optics-input.ts';
import type { OpticsResult } from './optics-result.ts';
import type { PanelModel } from './panel-model.ts';
import type { Spread } from './spread.ts';
import { TABLE_DISTANCES } from './table-distances.ts';

/** What the model makes of the light of one session. */
export interface PanelLight {
  /** At the distances of the table. */
  figures: OpticsFigures;
  flags: readonly Flag[];
  /** Which readings tell most of the light that misses the frame; undefined where nothing came of it. */
  source: BeamSource | undefined;
  /** What the simulation says of emitted power over mains draw. */
  efficiency: Spread | undefined;
  /** The panel as the model has found it; undefined where the beam is withheld. */
  model: PanelModel | undefined;
  /** The same for drawing. */
  drawn: DrawnLight | undefined;
  /** Modelled values at the session's own distance. */
  own: OpticsFigures['distances'][number] | undefined;
}

/**
 * All that is made of what came of a session's readings: its figures, what is odd about its beam, and the panel as it
 * was found.
 *
 * @param result of an input whose targets are `lightTargets` of the session's distance
 */
export function panelLight(result: OpticsResult, context: OpticsContext): PanelLight {
  const { distances, ...figures } = opticsFigures(result, context);
  const { estimates } = result;
  return {
    figures: { ...figures, distances: distances.slice(0, TABLE_DISTANCES.length) },
    flags: opticsFlags(result),
    source: estimates?.source,
    efficiency: estimates?.efficiency,
    model: estimates?.model,
    drawn: estimates?.drawn,
    own: distances[TABLE_DISTANCES.length],
  };
}

/** The light of a session from which the model can make nothing, with the reason. */
export function lightWithout(reason: Statement): PanelLight {
  return {
    figures: opticsGaps(reason),
    flags: [],
    source: undefined,
    efficiency: undefined,
    model: undefined,
    drawn: undefined,
    own: undefined,
  };
}

/** Distances at which a session's light is worked out, cm: those of the table, and after them its own. */
export function lightTargets(own: number): number[] {
  return [...TABLE_DISTANCES, own];
}
