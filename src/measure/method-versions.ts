/**
 * The version of each method, which goes up whenever published numbers can move for the same readings. Apart from the
 * registry (methods.ts), so that what works out a figure in the reader's browser need not bring the whole of it along.
 */
const VERSIONS: Readonly<Record<string, number>> = {
  'bench-procedure': 2,
  uncertainty: 2,
  wavelength: 1,
  'peak-irradiance': 2,
  'mean-irradiance': 2,
  uniformity: 1,
  'peak-to-mean': 1,
  'led-area': 1,
  'optical-power': 1,
  'real-price': 1,
  'price-per-watt': 1,
  'mains-draw': 1,
  efficiency: 1,
  'running-cost': 1,
  'radiant-exposure': 1,
  flicker: 1,
  'magnetic-field': 1,
  'electric-field': 1,
  'radio-field': 1,
  sound: 2,
  'hot-spots': 1,
  'warm-up': 1,
  'size-class': 1,
  rank: 1,
  'step-up': 1,
  frontier: 1,
  claims: 1,
  plausibility: 1,
  'infrared-eye': 1,
  'skin-heating': 1,
  'retinal-hazard': 1,
  'flicker-lines': 1,
  'field-levels': 1,
  'building-biology': 1,
  'sound-of-panel': 1,
  'beam-half-angle': 2,
  'sampling-bias': 2,
  capture: 2,
  'emitted-power': 2,
  'efficiency-emitted': 2,
  'price-per-emitted-watt': 2,
  'distance-table': 2,
};

/** The version of a method, or an error naming the id: an unknown method is a fault of the program. */
export function versionOf(id: string): number {
  const version = Object.hasOwn(VERSIONS, id) ? VERSIONS[id] : undefined;
  if (version === undefined) throw new Error(`no method is registered as "${id}"`);
  return version;
}

/** Ids of all methods that have a version. */
export const VERSIONED_METHODS: readonly string[] = Object.keys(VERSIONS);

/** One text for all figures of a method. */
const REFERENCES: ReadonlyMap<string, string> = new Map(VERSIONED_METHODS.map((id) => [id, `${id}@${versionOf(id)}`]));

/** `optical-power` to `optical-power@1`, as figures carry it. */
export function methodReference(id: string): string {
  return REFERENCES.get(id) ?? `${id}@${versionOf(id)}`;
}
