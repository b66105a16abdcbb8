/** What `/data/bench.json` and `/data/bench/<slug>.json` hold: all that the pad needs of the guide to work out one panel. */

/** A content file as data, in the shape of the file. */
export interface BenchFile {
  /** Name of the file without its ending, or of the panel's folder. */
  readonly id: string;
  /** As messages name it: `content/instruments/bench-thermopile.yaml`. */
  readonly file: string;
  readonly data: unknown;
}

/** A panel of the guide, as a list has it. */
export interface BenchPanel {
  readonly slug: string;
  /** Maker and model. */
  readonly name: string;
  /** Name of the maker's file. */
  readonly maker: string;
  readonly model: string;
  readonly formerly: readonly string[];
  readonly status: string;
  readonly file: string;
  /** Sides of the LED field as they are written, where they are known. */
  readonly field?: { readonly width: string; readonly height: string };
  /** Days of its sessions, the newest first. */
  readonly sessions: readonly string[];
  /** Of its own file of data: `/data/bench/kelpwright-gannet.json`. */
  readonly address: string;
}

/** What lies at a panel's address. */
export interface BenchPanelFile extends BenchFile {
  /** The file itself, byte by byte: on the development server alone, since comments and drafts are not for readers. */
  readonly text?: string;
}

/** What was read in a session's room with the panel off, in canonical units. */
export interface BenchRoom {
  /** Empty for a panel that readers don't see. */
  readonly panel: string;
  readonly off: Readonly<Record<string, number>>;
}

export interface BenchSetup {
  /** Goes up when a field changes its meaning. */
  readonly format: 1;
  /** Follows from the code and the content alone, so that it is another one where either is. */
  readonly version: string;
  /** The day for which the guide was built. */
  readonly today: string;
  readonly guide: BenchFile;
  readonly instruments: readonly BenchFile[];
  readonly standards: readonly BenchFile[];
  readonly makers: readonly BenchFile[];
  readonly panels: readonly BenchPanel[];
  readonly rooms: readonly BenchRoom[];
}
