import type { AnyReadFile } from '../content/read/files/file-kind.ts';
import type { PhotoFile } from '../content/read/photo-file.ts';
import type { Guide } from '../content/schema/guide.ts';
import type { Calibration, InstrumentFile, InstrumentKind, InstrumentQuantity } from '../content/schema/instrument.ts';
import type { Maker } from '../content/schema/maker.ts';
import type { MethodProse } from '../content/schema/method.ts';
import type { Panel, Price } from '../content/schema/panel.ts';
import type { Session } from '../content/schema/session.ts';
import type { PanelLight } from '../measure/beam/panel-light.ts';
import type { RankBasis } from '../measure/catalogue/rows.ts';
import type { LimitResult, ShareReading } from '../measure/exposure/index.ts';
import type { Figure, FigureMap, FigureOrGap, Flag } from '../measure/figure.ts';
import type { Conditions } from '../measure/irradiance/bench-procedure.ts';
import type { ClaimCheck } from '../measure/irradiance/claims.ts';
import type { Rank } from '../measure/money/ranking.ts';
import type { StepUps } from '../measure/money/step-ups.ts';
import type { Statement } from '../measure/statement.ts';
import type { CorrectionEntry } from './corrections.ts';
import type { SessionMade } from './files/file-maker.ts';
import type { StandardEntry } from './standard-entry.ts';

export type { Conditions, RankBasis };

export type SizeClass = Guide['sizeClasses'][number];

/** An instrument as a session used it. */
export interface UsedInstrument {
  kind: InstrumentKind;
  id: string;
  /** What its calibrations go by: the id, with the quantity where its file has a block for each. */
  quantityId: string;
  name: string;
  /** Day of its readings: an earlier one than the session's where they were carried over. */
  readOn: string;
  /** The calibration that counts for them, and the last day on which it holds; none before the first. */
  calibration: (Calibration & { due: string }) | undefined;
  /** Unit of its display, in which the absolute part of the calibration is stated. */
  unit: string;
}

/** A file of a session as it was read, without what is in it. */
export type SessionFile = Omit<AnyReadFile, 'data'>;

/** One bench session with its figures. */
export interface SessionEntry {
  /** `<panel>/<date>` */
  id: string;
  date: string;
  /** The session as it stands in the file. */
  readings: Session;
  /** The same with readings of earlier sessions in the place of those that were not taken again. */
  used: Session;
  instruments: readonly UsedInstrument[];
  conditions: Conditions;
  figures: FigureMap;
  /** What the optics model makes of it. */
  light: PanelLight;
  /** Its readings held against published limits. */
  limits: readonly LimitResult[];
  /** What readings with near-infrared alone say of an eye at some distances; empty where there are none. */
  eyeShares: readonly ShareReading[];
  /** Files behind it, those of what it carries over among them (their `date` is an earlier one). */
  files: readonly SessionFile[];
  /** What is made of them, by block: what pages draw of it. */
  made: SessionMade;
  flags: readonly Flag[];
  claims: readonly ClaimCheck[];
  /** Change of the optical power since the session before, %; a gap where there is none to compare with. */
  change: FigureOrGap;
}

/** One dated price, in the guide's base currency, and what a watt costs at it by the current session. */
export interface PriceEntry {
  price: Price;
  /** The price in the base currency. */
  figure: Figure;
  perWatt: FigureOrGap;
}

/** A picture of a panel. */
export interface Photo {
  /** Of the file, as the front matter has it. */
  name: string;
  file: PhotoFile;
  /** What is to be seen. */
  shows: string;
  by: string | undefined;
  /** Day of the session that it was taken in. */
  date: string | undefined;
}

/** A panel with everything that pages show of it. */
export interface PanelEntry {
  slug: string;
  /** Maker and model. */
  name: string;
  maker: Maker;
  data: Panel;
  /** The panel's own first, then those of its sessions, newest first. */
  photos: readonly Photo[];
  sizeClass: SizeClass | undefined;
  /** Newest first; the first is the current one. */
  sessions: readonly SessionEntry[];
  current: SessionEntry | undefined;
  /** Every registered metric: a figure, or a gap with its reason. */
  figures: FigureMap;
  flags: readonly Flag[];
  claims: readonly ClaimCheck[];
  /** Newest first. */
  prices: readonly PriceEntry[];
  /** What was corrected of it, newest first. */
  corrections: readonly CorrectionEntry[];
  /** Its place by price per optical watt. */
  rank: Rank | undefined;
  /** Why it is in no such ranking. */
  rankAbsent: Statement | undefined;
  /** The same by price per emitted watt. */
  byEmitted: { rank: Rank | undefined; rankAbsent: Statement | undefined };
  stepUps: StepUps;
  /** On the price-power frontier, or off it by no more than the uncertainty. */
  frontier: 'on' | 'close' | undefined;
}

/** Panels of one size class that were measured alike, ranked together. */
export interface RankGroup {
  conditions: Conditions;
  /** By rank. */
  panels: readonly PanelEntry[];
}

/** A size class of the guide: its rankings, the reference conditions first, and what can't be ranked. */
export interface ClassTable {
  /** Undefined: panels whose LED area is not known. */
  sizeClass: SizeClass | undefined;
  groups: readonly RankGroup[];
  unranked: readonly PanelEntry[];
}

/** A quantity that an instrument reads, and how it is calibrated. */
export interface QuantityEntry {
  data: InstrumentQuantity;
  /** Newest first; the first is the one that counts today. */
  calibrations: readonly Calibration[];
  /** Last day of the newest calibration. */
  due: string;
  overdue: boolean;
}

/** An instrument with its id, what it reads, and the sessions that used it. */
export interface InstrumentEntry {
  id: string;
  data: InstrumentFile;
  quantities: readonly QuantityEntry[];
  /** Sessions that it was used in, each with the later ones for which its readings of that day still stand. */
  usedIn: ReadonlyArray<{ slug: string; name: string; date: string; carriedInto: readonly string[] }>;
}

/** What every page reads. Built once a build, never changed. */
export interface Ledger {
  guide: Guide;
  /** The day it was built for. */
  today: string;
  /** Published and withdrawn panels (and drafts, where asked for), by slug. */
  panels: ReadonlyMap<string, PanelEntry>;
  /** In the order of the guide's size classes. */
  classes: readonly ClassTable[];
  /** The same, ranked by price per emitted watt. */
  classesByEmitted: readonly ClassTable[];
  /** Slugs of the panels on the price-power frontier, cheapest first. */
  frontier: readonly string[];
  instruments: readonly InstrumentEntry[];
  /** Check standards with their control charts. */
  standards: readonly StandardEntry[];
  /** Newest first. */
  corrections: readonly CorrectionEntry[];
  /** Every method's history by its id, oldest first. */
  methodVersions: ReadonlyMap<string, MethodProse['versions']>;
}
