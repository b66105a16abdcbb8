import type { Cautions } from '../schema/cautions.ts';
import type { CorrectionsFile } from '../schema/corrections.ts';
import type { Guide } from '../schema/guide.ts';
import type { InstrumentFile } from '../schema/instrument.ts';
import type { Maker } from '../schema/maker.ts';
import type { MethodProse } from '../schema/method.ts';
import type { Panel } from '../schema/panel.ts';
import type { StandardFile } from '../schema/standard.ts';
import type { PanelBenchFiles } from './files/bench-files.ts';
import type { PanelPhotos } from './listed-photos.ts';
import type { OtherGuide } from './others/other-guide.ts';
import type { Source } from './source.ts';

/** A content file that fits its schema, with the places of its fields for later messages. */
export interface Entry<T> {
  id: string;
  data: T;
  source: Source;
}

/** Everything in the content folder, checked against the schemas; what the ledger is made from. */
export interface Content {
  guide: Entry<Guide>;
  instruments: ReadonlyMap<string, Entry<InstrumentFile>>;
  /** Check standards, which instruments read over and over. */
  standards: ReadonlyMap<string, Entry<StandardFile>>;
  makers: ReadonlyMap<string, Entry<Maker>>;
  panels: ReadonlyMap<string, Entry<Panel>>;
  methods: ReadonlyMap<string, Entry<MethodProse>>;
  cautions: Entry<Cautions>;
  /** The public list of corrections; undefined where nothing was corrected yet. */
  corrections: Entry<CorrectionsFile> | undefined;
  /** Pictures beside each panel's index, by the panel's name. */
  photos: ReadonlyMap<string, PanelPhotos>;
  /** Other testers' guides whose agreement is published. */
  others: readonly OtherGuide[];
  /** Files of the bench beside each panel's index, by the panel's name. */
  benchFiles: ReadonlyMap<string, PanelBenchFiles>;
  /** Files in which something is still to be filled in: drafts, and instruments that no other panel names. */
  unfinished: readonly Source[];
}
