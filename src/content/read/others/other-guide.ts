/** A panel of another guide, as its data package has it. */
export interface OtherPanel {
  slug: string;
  address: string;
  maker: string;
  model: string;
  /** Newest session, `YYYY-MM-DD`. */
  session: string;
  /** From the LED plane to the sensor, cm. */
  distance: number | undefined;
  /** Distances that single blocks were read at, cm, by their names: `sound`. */
  blockDistances: ReadonlyMap<string, number>;
  /** By metric; those without an interval, with a bound or without a value are left out. */
  figures: ReadonlyMap<string, OtherFigure>;
}

/** A figure of it with its 95 % interval. */
export interface OtherFigure {
  value: number;
  interval95: readonly [number, number];
  unit: string;
  method: string;
  methodVersion: number;
  inDoubt: boolean;
}

/** Another guide, as far as figures can be held against it. */
export interface OtherGuide {
  title: string;
  publisher: string;
  homepage: string;
  /** The day that it was worked out for. */
  version: string;
  currency: string;
  panels: readonly OtherPanel[];
}
