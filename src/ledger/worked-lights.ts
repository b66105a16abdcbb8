import { lightBasis, type WorkedLight } from './modelled-light.ts';
import { workedOut } from './optics-store.ts';
import type { PanelContext } from './panel-context.ts';

/** The light of sessions, by `<panel>/<date>`. */
export type WorkedLights = ReadonlyMap<string, WorkedLight>;

/**
 * Works out the light of all sessions of some panels, before anything else of the panels is made: what is not known from
 * an earlier build is then worked out all at a time, on all processors.
 */
export function workedLights(panels: readonly PanelContext[]): WorkedLights {
  const bases = panels.flatMap(({ sessions }) => sessions.map(lightBasis));
  const results = workedOut(
    new Map(bases.flatMap(({ session, optics }) => ('input' in optics ? [[session, optics.input] as const] : []))),
  );
  return new Map(bases.map((basis) => [basis.session, { basis, result: results.get(basis.session) }]));
}
