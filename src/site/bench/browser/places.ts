/** Paths of readings, as entries have them: `grid.rows[1][0]`, `beyond[2].on`. */
import { keysAt } from '../../../content/schema/inspect.ts';
import { panelSchema } from '../../../content/schema/panel.ts';
import { fieldPath } from '../../../content/schema/problem.ts';
import { sessionSchema } from '../../../content/schema/session.ts';

/** Parts of the panel, not of a session, that are measured at the bench. */
const OF_PANEL = ['field.width', 'field.height', 'housing.width', 'housing.height', 'weight'];

/** Places that hold several readings, any of which may be struck. */
const POINTS = /^(?:grid\.rows\[\d+\]\[\d+\]|beyond\[\d+\]\.on|distances\[\d+\]\.(?:centre|red|nearInfrared))$/;

/** `grid.rows[1][0]` to `['grid', 'rows', 1, 0]`. */
export function keysOf(path: string): Array<string | number> {
  return [...path.matchAll(/\[(\d+)\]|[^.[\]]+/g)].map(([name, place]) => (place === undefined ? name : Number(place)));
}

/** True where a place takes repeats, and readings that are struck. */
export const takesRepeats = (path: string) => POINTS.test(path);

/** True for a measure of the panel, which stands outside its sessions. */
export const isOfPanel = (path: string) => OF_PANEL.includes(path);

/** Fields that name files which instruments wrote. */
const OF_FILES = ['spectra', 'sweeps', 'warmUpLog', 'waveforms', 'wallPhoto', 'soundClips', 'otherFiles'];

/** Fields of a session that are set or said, not read. */
const NOT_READ = [
  'date',
  'methodVersion',
  'instruments',
  'carried',
  'draft',
  'distance',
  'hotSpots',
  'photos',
  'notes',
  ...OF_FILES,
];
const SET = /^(?:beyond\[\d+\]\.(?:edge|past)|distances\[\d+\]\.distance|\w+\.distance|distance)$/;

/** True for what is set before it is read, such as a distance. */
export const isSetting = (path: string) =>
  SET.test(path) && isLeaf(keysOf(path)) && !OF_FILES.includes(String(keysOf(path)[0]));

/** True where the content has such a field for a reading. */
export function isPlace(path: string): boolean {
  const keys = keysOf(path);
  if (isOfPanel(path) || takesRepeats(path)) return true;
  if (fieldPath(keys) !== path || SET.test(path) || path.startsWith('grid.')) return false;
  return !NOT_READ.includes(String(keys[0])) && isLeaf(keys);
}

/** True for a field that holds one value: neither a block, nor a list of them. */
function isLeaf(keys: ReadonlyArray<string | number>): boolean {
  const isKnown = keysAt(sessionSchema, keys.slice(0, -1)).includes(String(keys.at(-1)));
  return isKnown && [keys, [...keys, 0]].every((it) => keysAt(sessionSchema, it).length === 0);
}

/** The fields of a block of the session or, with `field` and the like, of the panel, in the order of the schema. */
export function fieldOrder(keys: readonly PropertyKey[]): string[] {
  return isOfPanel(`${fieldPath(keys)}.width`) ? keysAt(panelSchema, keys) : keysAt(sessionSchema, keys);
}
