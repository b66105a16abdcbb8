import type { PanelModel } from '../../../measure/beam/panel-model.ts';
import type { Conditions } from '../../../measure/irradiance/bench-procedure.ts';
import type { Dagger } from '../../../words/flags.ts';
import type { FigurePack } from '../../shared/browser/figure-pack.ts';
import type { SmallPhoto } from '../../shared/browser/small-photo.ts';

/** Whether a panel's page is published. */
export type Status = 'draft' | 'published' | 'withdrawn';

/** Version of the files' form; goes up when a field changes its meaning or goes. */
export const COMPARE_FORMAT = 6;

/** Width and height, cm. */
export interface Size {
  width: number;
  height: number;
}

/** One panel as the comparison reads it: `data/compare/SLUG.json`. */
export interface ComparedPanel extends FigurePack {
  format: typeof COMPARE_FORMAT;
  slug: string;
  /** Maker and model. */
  name: string;
  maker: string;
  model: string;
  status: Status;
  photo?: SmallPhoto;
  /** Name of its size class; null where its LED area is not known. */
  sizeClass: string | null;
  /** Base currency of every price. */
  currency: string;
  /** Day of the price that is used. */
  priced: string | null;
  /** That price in the currency that it was asked in; null where that is the base currency. */
  asPriced: string | null;
  /** Day of the current bench session, and under what it was measured; null where there is none. */
  tested: string | null;
  conditions: Conditions | null;
  /** Distances of the readings that have their own, as they were written; null where none is recorded. */
  distances: { magnetic: ReadDistance | null; electric: ReadDistance | null; sound: ReadDistance | null };
  /** Fields whose frequency the instrument showed. */
  frequencies: Array<'magnetic' | 'electric'>;
  /** Marks of doubt by metric. */
  marks: Record<string, Dagger>;
  field: Size | null;
  housing: Size | null;
  /** What its light by distance is drawn from; or why there is none. */
  light: PanelModel | { absent: string };
  /** Left out where no spectrum was taken with both channels on. */
  spectrum?: PackedSpectrum;
}

/** Light by wavelength: per mille of the highest value, from a wavelength on in even steps, nm. */
export interface PackedSpectrum {
  from: number;
  step: number;
  values: number[];
}

/** Where a reading was taken, cm, and in the tester's own unit. */
export interface ReadDistance {
  value: number;
  written: string;
}

/** The short list of panels: `data/compare.json`. */
export interface PanelList {
  format: typeof COMPARE_FORMAT;
  panels: ListedPanel[];
}

/** An entry of it. */
export interface ListedPanel {
  slug: string;
  /** Names that addresses had for it before; left out where there are none. */
  formerly?: readonly string[];
  name: string;
  maker: string;
  /** Name of its size class; null where its LED area is not known. */
  class: string | null;
  status: Status;
  photo?: SmallPhoto;
}
