import type { Basis, Flag } from '../../measure/figure.ts';

/** What a guide says of itself, in the one form in which two of them are held against each other. */
export interface GuideState {
  /** The day it was built for. */
  builtFor: string;
  /** The currency that its figures in money are in. */
  currency: string;
  /** Published panels, by slug. */
  panels: ReadonlyMap<string, PanelState>;
  /** Versions of its methods, by id. */
  methods: ReadonlyMap<string, number>;
  /** False where only those methods are known that have figures, as from a data file. */
  knowsAllMethods: boolean;
  /** Addresses of its pages. */
  pages: ReadonlySet<string>;
  /** False where only the pages of published panels and of methods are known, as from a data file. */
  knowsAllPages: boolean;
  /** Slugs that panels had before, with those that they have now. */
  renamed: ReadonlyMap<string, string>;
}

/** A published panel. */
export interface PanelState {
  slug: string;
  /** Maker and model. */
  name: string;
  /** Id of its size class; null where its LED area is not known. */
  sizeClass: string | null;
  /** The newest; undefined where there is none. */
  price: PriceState | undefined;
  /** Its places by price per optical and per emitted watt. */
  ranks: Readonly<Record<'optical' | 'emitted', RankState>>;
  /** Newest first; a panel that was never on the bench has one without a day. */
  sessions: readonly SessionState[];
}

/** The newest price, as it was asked. */
export interface PriceState {
  date: string;
  list: number | null;
  paid: number | null;
  currency: string;
}

/** A place in a ranking, or why there is none. */
export type RankState =
  | { place: number; of: number; range: readonly [number, number] | null; tiedWith: readonly string[] }
  | { absent: string };

/** What a session came to. */
export interface SessionState {
  /** Null for a panel that was never on the bench. */
  date: string | null;
  /** By metric. */
  figures: ReadonlyMap<string, FigureState>;
  flags: readonly FlagState[];
  claims: readonly ClaimState[];
}

/** A figure's numbers, or why there are none. */
export type FigureState = NumberState | { reason: string };

export interface NumberState {
  value: number;
  uncertainty: number | null;
  interval95: readonly [number, number] | null;
  /** As data files write it: `EUR/W`. */
  unit: string;
  bound: 'below' | 'above' | null;
  basis: Basis;
  method: string;
  version: number;
}

export interface FlagState {
  check: string;
  severity: Flag['severity'];
  /** What it says. */
  text: string;
  /** Metric ids. */
  concerns: readonly string[];
}

export interface ClaimState {
  subject: string;
  claimed: number;
  unit: string;
  outcome: string;
  text: string;
}

/** True for a figure that is there. */
export function isNumber(it: FigureState | undefined): it is NumberState {
  return it !== undefined && 'value' in it;
}

/** True for a place in a ranking. */
export function isRanked(it: RankState | undefined): it is Exclude<RankState, { absent: string }> {
  return it !== undefined && 'place' in it;
}
