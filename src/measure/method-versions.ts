import { BEAM_VERSIONS } from './catalogue/beam.ts';
import { BENCH_VERSIONS } from './catalogue/bench.ts';
import { EXPOSURE_VERSIONS } from './catalogue/exposure.ts';
import { GUIDE_VERSIONS } from './catalogue/guide.ts';
import { LIGHT_VERSIONS } from './catalogue/light.ts';
import { LOG_VERSIONS } from './catalogue/logs.ts';
import { PICTURE_VERSIONS } from './catalogue/picture.ts';
import { SOUND_VERSIONS } from './catalogue/sound.ts';
import { SPECTRUM_VERSIONS } from './catalogue/spectrum.ts';
import { USE_VERSIONS } from './catalogue/use.ts';

/**
 * The version of each method, which goes up whenever published numbers can move for the same readings; the page's
 * history says how. Of the catalogue this is all that a script in the reader's browser gets, where it makes a figure:
 * formulas and names stay behind.
 */
const VERSIONS = {
  ...BENCH_VERSIONS,
  ...LIGHT_VERSIONS,
  ...BEAM_VERSIONS,
  ...SPECTRUM_VERSIONS,
  ...USE_VERSIONS,
  ...LOG_VERSIONS,
  ...EXPOSURE_VERSIONS,
  ...PICTURE_VERSIONS,
  ...SOUND_VERSIONS,
  ...GUIDE_VERSIONS,
} as const;

/** Id of a registered method. */
export type MethodId = keyof typeof VERSIONS;

/** A method in one version, as figures carry it; one object for all figures of a method. */
export interface MethodReference {
  readonly id: MethodId;
  readonly version: number;
}

/** True for the id of a registered method. */
export function isMethodId(id: string): id is MethodId {
  return Object.hasOwn(VERSIONS, id);
}

/** Ids of all methods. */
export const METHOD_IDS: readonly MethodId[] = Object.keys(VERSIONS).filter(isMethodId);

const REFERENCES: ReadonlyMap<string, MethodReference> = new Map(
  METHOD_IDS.map((id) => [id, Object.freeze({ id, version: VERSIONS[id] })]),
);

/** The method in the version of today, or an error naming the id: an unknown method is a fault of the program. */
export function methodReference(id: MethodId): MethodReference {
  const reference = REFERENCES.get(id);
  if (!reference) throw new Error(`no method is registered as "${id}"`);
  return reference;
}

/** The version of a method, or an error naming the id. */
export function versionOf(id: MethodId): number {
  return methodReference(id).version;
}

/** True where two figures were made by one method in one version. */
export function isSameMethod(one: MethodReference, other: MethodReference): boolean {
  return one.id === other.id && one.version === other.version;
}

/** As files and pages print it: `optical-power@1`. */
export function methodText({ id, version }: MethodReference): string {
  return `${id}@${version}`;
}

/** What a file printed, read again; an error where it names no method. */
export function methodOfText(text: string): MethodReference {
  const [id = '', version] = text.split('@');
  if (!isMethodId(id)) throw new Error(`no method is registered as "${id}"`);
  return { id, version: Number(version) };
}
