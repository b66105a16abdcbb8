import type { RankBasis } from '../../measure/catalogue/rows.ts';
import type { ClaimState, FigureState, FlagState, PriceState, RankState } from './guide-state.ts';

/** A panel by the name that it has now, or had last. */
export interface Named {
  slug: string;
  name: string;
}

/** What differs between a guide that was published and the one that would be now. */
export interface Changes {
  /** The day that the earlier one was built for, and that of the later one. */
  was: { builtFor: string };
  now: { builtFor: string };
  /** Both, where prices are in another currency now; figures in money are not compared then. */
  currency: { was: string; now: string } | null;
  newPanels: readonly Named[];
  /** No longer among the published ones. */
  gonePanels: ReadonlyArray<Named & { keepsPage: boolean }>;
  renamedPanels: ReadonlyArray<Named & { wasSlug: string }>;
  newPages: readonly string[];
  /** Addresses that answer nothing any more; where one leads on, to where. */
  gonePages: ReadonlyArray<{ address: string; leadsTo?: string }>;
  methods: ReadonlyArray<{ id: string; was: number | null; now: number | null }>;
  ranks: ReadonlyArray<Named & { sizeClass: string | null; basis: RankBasis; was: RankState; now: RankState }>;
  ties: readonly TieChange[];
  prices: ReadonlyArray<Named & { was: PriceState | null; now: PriceState | null }>;
  newSessions: ReadonlyArray<Named & { date: string; isNewest: boolean }>;
  goneSessions: ReadonlyArray<Named & { date: string }>;
  /** The weightiest first. */
  figures: readonly FigureChange[];
  /** How many figures moved by no more than their last digit. */
  lastDigits: number;
  flags: ReadonlyArray<Named & { date: string | null; change: 'come' | 'gone'; flag: FlagState }>;
  claims: ReadonlyArray<Named & { was: ClaimState | null; now: ClaimState | null }>;
}

/** Two panels that the readings do not tell apart any more, or tell apart now. */
export interface TieChange {
  basis: RankBasis;
  change: 'made' | 'undone';
  panels: readonly [Named, Named];
}

/** A figure that moved. */
export interface FigureChange extends Named {
  metric: string;
  /** Day of an earlier session; null for the panel's figures as they stand at the top. */
  session: string | null;
  was: FigureState;
  now: FigureState;
  /** How far it moved, in halves of its 95 % interval; infinite where it came or went. */
  weight: number;
}
