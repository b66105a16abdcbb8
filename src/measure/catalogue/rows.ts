/*
 * The forms of the catalogue's rows. A method is in three places of its area's file, and not in one row: scripts in the
 * reader's browser take its version, and a bundler leaves formulas and names behind only where the versions are an object
 * of their own; and metrics stand in the order of the calculation page, which is not that of the methods.
 */

/** What a watt is, of whose price panels are ranked by: light through the reference plane, or all that leaves the LEDs. */
export type RankBasis = 'optical' | 'emitted';

/**
 * Where something stands among others of its kind: they are put in the order of these numbers, which go in tens so that
 * a new one finds room.
 */
export type Place = number;

/** A column of the ranking tables. */
export interface RankingColumn {
  /** Its name in addresses (`sort=small.mean.descending`) and in the markup; never reused for something else. */
  key: string;
  /** Its heading; `currency` stands for the sign of the guide's base currency. */
  label: string;
  /** What stands for the unit in the heading; left out: the metric's unit. */
  unitWords?: string;
  /** Which way a first press sorts: the better end first. */
  first: 'ascending' | 'descending';
  /** In which tables it stands, and where. */
  place: Readonly<Partial<Record<RankBasis, Place>>>;
}

/** A filter of the guide that takes numbers of a metric from one to another. */
export interface RangeFilter {
  /** Its name in addresses (`power-from=20`) and fields; never reused for something else. */
  key: string;
  label: string;
  /** Both ends can be asked for, or only that it be at most so much. */
  ends: 'both' | 'upper';
  place: Place;
}

/** The lists of a panel's page that take metrics one by one: what matters first, the spread, times and colours. */
export type PanelList = 'key' | 'spread' | 'times';

/** A figure that a panel can have, whoever the panel is. Its id is its anchor on the calculation page. */
export interface MetricRow {
  /** Never reused for something else. */
  id: string;
  /** What it is called, on pages and within sentences. */
  name: string;
  /** Id of the method that explains it. */
  method: string;
  /** Canonical unit: one quantity, one unit. `currency` stands for the guide's base currency. */
  unit: string;
  /** Its column in the ranking tables; left out where it has none. */
  ranking?: RankingColumn;
  /** Its place in the lists of a panel's page. */
  panelPage?: Readonly<Partial<Record<PanelList, Place>>>;
  /** What the guide can be narrowed by. */
  filter?: RangeFilter;
  /**
   * It is had from files of the bench alone: its calculation stands on the page of a panel's files, and a session
   * without such files lists no gap for it.
   */
  isOfFiles?: true;
  /** Id of a figure that stood in its place once: whoever was led there is led here. */
  formerly?: string;
}

/** Where a metric is shown besides the calculation page and the data files, which have all of them. */
export type Shown = Pick<MetricRow, 'ranking' | 'panelPage' | 'filter'>;

/** What a method's page says of the calculation; its prose is `src/texts/methods/<id>.mdx`. */
export interface MethodPage {
  name: string;
  /** How readers see the unit; `null` where the method yields no number with a unit. */
  unit: string | null;
  /** TeX of the defining formula; absent for methods that are a procedure. */
  formula?: string;
  /** The symbols of the formula: TeX and meaning with unit; there where a formula is. */
  symbols?: ReadonlyArray<readonly [tex: string, meaning: string]>;
  /** The file that computes it, from the repository's top. */
  file: string;
}

/** A named constant of a method's calculation. */
export interface MethodConstant {
  name: string;
  value: number;
  unit: string;
  /** Where it comes from, or why it was chosen. */
  why: string;
}

/** Constants by the id of the method that uses them. */
export type MethodConstants = Readonly<Record<string, readonly MethodConstant[]>>;

/**
 * Rows with their ids and units as types. They are made by a function, and its call is marked as pure where it stands,
 * so that scripts which want nothing but a version of an area leave its rows behind.
 */
export function rows<const Rows extends readonly MetricRow[]>(make: () => Rows): Rows {
  return make();
}

/**
 * Rows of a metric that each mode of the panel has.
 *
 * @param ending stands behind the mode in the ids
 * @param combined where the figure with both channels on is shown
 */
export function perMode<
  const Id extends string,
  const Method extends string,
  const U extends string,
  const Ending extends string = '',
>(id: Id, name: string, method: Method, unit: U, ending: Ending, combined: Shown = {}) {
  return [
    { id: `${id}-combined${ending}`, name: `${name}, both channels`, method, unit, ...combined },
    { id: `${id}-red${ending}`, name: `${name}, red alone`, method, unit },
    { id: `${id}-near-infrared${ending}`, name: `${name}, near-infrared alone`, method, unit },
  ] as const;
}

/** Rows of a metric that is read with the panel on and off, by the method of that name. */
export function onAndOff<const Id extends string, const U extends string>(
  id: Id,
  name: string,
  unit: U,
  whenOn: Shown = {},
) {
  return [
    { id: `${id}-on`, name: `${name}, panel on`, method: id, unit, ...whenOn },
    { id: `${id}-off`, name: `${name}, panel off`, method: id, unit },
  ] as const;
}
