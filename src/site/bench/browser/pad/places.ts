/** Every place of a session at which something is read, in the order of the bench procedure. No DOM. */
import type { InstrumentKind } from '../../../../content/schema/instrument-kinds.ts';
import type { QuantityName } from '../../../../content/schema/units.ts';
import { takesRepeats } from '../places.ts';
import type { Run } from '../run.ts';
import { type SheetPoint, sheetPoints } from '../sheet-points.ts';
import { readLength, type SheetGrid, sheetGrid } from '../sheet-setup.ts';

/** Parts of a session, in their order. */
export const STEPS = {
  off: 'Off, unplugged',
  warm: 'Plugged in, warmed up',
  grid: 'Grid',
  beyond: 'Past the edges, on',
  room: 'Past the edges, off',
  modes: 'Mode by mode',
  sweep: 'Sweep of the distance',
  on: 'Fields and sound, on',
} as const;
export type Step = keyof typeof STEPS;

/** One place: what the tester reads there, and where it goes. */
export interface Place {
  /** Field within the session, as an entry has it. */
  readonly path: string;
  readonly step: Step;
  /** `Point 5 of 9` */
  readonly name: string;
  /** Where the sensor goes, or how to read it; may be empty. */
  readonly where: string;
  readonly quantity: QuantityName;
  /** The meter that reads it; undefined for a rule, a clock. */
  readonly kind?: InstrumentKind;
  /** `<0.1` can be written. */
  readonly bounds: boolean;
  /** The file has a list of its readings, so that it can be repeated; else it has one. */
  readonly isList: boolean;
}

/** The LED field of a run, and its grid. */
export function gridOf(run: Run, known?: { width: string; height: string }): SheetGrid {
  const length = (path: string, other: string | undefined, least = 2) =>
    readLength(
      run.entries.findLast((it) => it.path === path && it.struck === undefined)?.written ?? other ?? '',
      least,
      400,
    );
  const width = length('field.width', known?.width);
  const height = length('field.height', known?.height);
  const inset = readLength(run.grid.inset, 0, 200);
  const { rows, columns } = run.grid;
  return sheetGrid(
    { rows, columns, ...(width && { width }), ...(height && { height }), ...(inset && { inset }) },
    undefined,
  );
}

type Draft = Partial<Place> & Pick<Place, 'path' | 'name' | 'quantity'>;

const places = (step: Step, drafts: readonly Draft[]): Place[] =>
  drafts.map((it) => ({
    ...{ step, where: '', bounds: false, isList: takesRepeats(it.path) },
    ...it,
  }));

const MODES = [
  { key: 'combined', name: 'Both channels' },
  { key: 'red', name: 'Red alone' },
  { key: 'nearInfrared', name: 'Near-infrared alone' },
] as const;

const FIELDS = [
  { key: 'magnetic', name: 'Magnetic field', hasFrequency: true },
  { key: 'electric', name: 'Electric field', hasFrequency: true },
  { key: 'radio', name: 'Radio', hasFrequency: false },
  { key: 'sound', name: 'Sound, max hold', hasFrequency: false },
] as const;

/** Blocks of a session by the name under which they are carried over. */
const CARRIED_AS: Readonly<Record<string, string>> = {
  peak: 'light',
  grid: 'light',
  distances: 'light',
  beyond: 'light',
};

/**
 * Places of a run, in the order of reading: the points of the grid along the shortest way. What no meter of the run
 * reads, and what is carried over from an earlier session, is left out.
 */
export function placesOf(run: Run, grid: SheetGrid): Place[] {
  const { points } = sheetPoints(grid);
  const all = [
    ...offPlaces(run),
    ...warmPlaces(),
    ...gridPlaces(points),
    ...beyondPlaces(run),
    ...modePlaces(),
    ...sweepPlaces(run),
    ...onPlaces(run),
  ];
  return all.filter(({ path, kind }) => {
    const block = path.replace(/[.[].*$/, '');
    const isCarried = run.carried[CARRIED_AS[block] ?? block] !== undefined;
    const isRead = run.entries.some((it) => it.path === path);
    return isRead || (!isCarried && (kind === undefined || run.instruments[kind] !== undefined));
  });
}

/** `6 in from the panel, ` */
const standing = ({ settings }: Run, key: string) =>
  settings[`${key}.distance`] === undefined ? '' : `${settings[`${key}.distance`]} from the panel. `;

const offPlaces = (run: Run) =>
  places('off', [
    { path: 'roomTemperature', name: 'Air at the bench', quantity: 'temperature', kind: 'temperature' },
    ...FIELDS.map(
      ({ key, name }): Draft => ({
        ...{ path: `${key}.off`, name: `${name}, off`, quantity: key, kind: key, bounds: true },
        where: `${standing(run, key)}Mark where the meter stands.`,
      }),
    ),
  ]);

const warmPlaces = () =>
  places('warm', [
    {
      path: 'mains.standby',
      name: 'Draw on standby',
      where: 'Plugged in, all channels off.',
      quantity: 'power',
      kind: 'mains',
      bounds: true,
    },
    {
      path: 'warmUp',
      name: 'Time on before the first reading',
      where: 'Both channels on, full output. The timer below fills it in.',
      quantity: 'time',
    },
  ]);

const gridPlaces = (points: readonly SheetPoint[]) =>
  places(
    'grid',
    points.map(({ number, path, across, down }) => ({
      path,
      name: `Point ${number} of ${points.length}`,
      where: `${across} from the left, ${down} from the top; both channels on`,
      quantity: 'irradiance',
      kind: 'irradiance',
    })),
  );

/** Indexes of a list of places, by what the run says of them. */
function indexesOf(run: Run, list: string): number[] {
  const named = Object.keys(run.settings).flatMap((it) => new RegExp(`^${list}\\[(\\d+)\\]`).exec(it)?.[1] ?? []);
  return [...new Set(named.map(Number))].toSorted((a, b) => a - b);
}

/** Places past the edges: edge and distance of each. */
export function edgesOf(run: Run): Array<{ index: number; edge: string; past: string }> {
  return indexesOf(run, 'beyond').map((index) => ({
    index,
    edge: run.settings[`beyond[${index}].edge`] ?? 'right',
    past: run.settings[`beyond[${index}].past`] ?? '8 cm',
  }));
}

function beyondPlaces(run: Run): Place[] {
  const edges = edgesOf(run);
  const of = (step: Step, field: 'on' | 'off') =>
    places(
      step,
      edges.map(({ index, edge, past }) => ({
        path: `beyond[${index}].${field}`,
        name: `${past} past the ${edge} edge${field === 'off' ? ', off' : ''}`,
        where: 'Out from the middle of the edge, in the plane of the grid, facing as there.',
        quantity: 'irradiance',
        kind: 'irradiance',
        bounds: true,
      })),
    );
  return [...of('beyond', 'on'), ...of('room', 'off')];
}

const modePlaces = () =>
  places(
    'modes',
    MODES.flatMap(({ key, name }): Draft[] => [
      {
        path: `peak.${key}`,
        name: `${name}: peak`,
        where: 'The highest steady reading of a sweep.',
        quantity: 'irradiance',
        kind: 'irradiance',
      },
      { path: `mains.${key}`, name: `${name}: draw`, quantity: 'power', kind: 'mains' },
      {
        path: `flicker.${key}.frequency`,
        name: `${name}: flicker frequency`,
        where: 'None: press Enter.',
        quantity: 'frequency',
        kind: 'flicker',
      },
      {
        path: `flicker.${key}.percent`,
        name: `${name}: flicker depth`,
        quantity: 'percent',
        kind: 'flicker',
        bounds: true,
      },
      ...(key === 'combined'
        ? []
        : ([
            {
              path: `wavelengths.${key}.peak`,
              name: `${name}: peak wavelength`,
              quantity: 'wavelength',
              kind: 'spectrum',
            },
            {
              path: `wavelengths.${key}.fwhm`,
              name: `${name}: width at half maximum`,
              quantity: 'wavelength',
              kind: 'spectrum',
            },
          ] satisfies Draft[])),
    ]),
  );

/** Distances of the sweep, as they are written. */
export function sweepOf(run: Run): Array<{ index: number; distance: string }> {
  return indexesOf(run, 'distances').map((index) => ({
    index,
    distance: run.settings[`distances[${index}].distance`] ?? '',
  }));
}

const SWEPT = [
  { key: 'centre', name: 'both channels' },
  { key: 'nearInfrared', name: 'near-infrared alone' },
] as const;

const sweepPlaces = (run: Run) =>
  places(
    'sweep',
    SWEPT.flatMap(({ key, name }) =>
      sweepOf(run).map(({ index, distance }) => ({
        path: `distances[${index}].${key}`,
        name: `At ${distance}, ${name}`,
        where: 'Before the middle of the field; set the stand anew from the plane of the LEDs.',
        quantity: 'irradiance' as const,
        kind: 'irradiance' as const,
      })),
    ),
  );

const onPlaces = (run: Run) =>
  places(
    'on',
    FIELDS.flatMap(({ key, name, hasFrequency }): Draft[] => [
      {
        path: `${key}.on`,
        name: `${name}, on`,
        where: `${standing(run, key)}Both channels on, the meter where it stood.`,
        quantity: key,
        kind: key,
        bounds: true,
      },
      ...(hasFrequency
        ? [
            {
              path: `${key}.frequency`,
              name: `${name}: main frequency`,
              where: 'Where the meter shows it; else press Enter.',
              quantity: 'frequency' as const,
              kind: key,
            },
          ]
        : []),
    ]),
  );
