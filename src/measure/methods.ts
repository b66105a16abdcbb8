import { BEAM_METHODS } from './catalogue/beam.ts';
import { BENCH_METHODS } from './catalogue/bench.ts';
import { EXPOSURE_METHODS } from './catalogue/exposure.ts';
import { GUIDE_METHODS } from './catalogue/guide.ts';
import { LIGHT_METHODS } from './catalogue/light.ts';
import { LOG_METHODS } from './catalogue/logs.ts';
import { PICTURE_METHODS } from './catalogue/picture.ts';
import type { MethodConstant, MethodPage } from './catalogue/rows.ts';
import { SOUND_METHODS } from './catalogue/sound.ts';
import { SPECTRUM_METHODS } from './catalogue/spectrum.ts';
import { USE_METHODS } from './catalogue/use.ts';
import { METHOD_CONSTANTS } from './method-constants.ts';
import { isMethodId, type MethodId, versionOf } from './method-versions.ts';

/**
 * A method as its page shows it: what is calculated, under which version, by which formula, in which file. The prose of
 * the page is joined to its entry here by id, so that page and calculation cannot disagree.
 */
export interface Method extends MethodPage {
  /** The page's address: `/methods/<id>/`; never reused for something else. */
  id: MethodId;
  version: number;
  symbols: NonNullable<MethodPage['symbols']>;
  /** Named constants that the calculation uses. */
  constants: readonly MethodConstant[];
}

const PAGES: Readonly<Record<MethodId, MethodPage>> = {
  ...BENCH_METHODS,
  ...LIGHT_METHODS,
  ...BEAM_METHODS,
  ...SPECTRUM_METHODS,
  ...USE_METHODS,
  ...LOG_METHODS,
  ...EXPOSURE_METHODS,
  ...PICTURE_METHODS,
  ...SOUND_METHODS,
  ...GUIDE_METHODS,
};

/** Every method, in the order in which they are listed. */
export const METHODS: readonly Method[] = Object.keys(PAGES).filter(isMethodId).map(methodOf);

const byId = new Map(METHODS.map((method) => [method.id, method]));

/** The registered method, or an error naming the id: an unknown method is a fault of the program. */
export function methodById(id: string): Method {
  const method = isMethodId(id) ? byId.get(id) : undefined;
  if (!method) throw new Error(`no method is registered as "${id}"`);
  return method;
}

function methodOf(id: MethodId): Method {
  const page = PAGES[id];
  return { ...page, id, version: versionOf(id), symbols: page.symbols ?? [], constants: METHOD_CONSTANTS[id] ?? [] };
}
