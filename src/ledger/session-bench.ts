import type { AnyReadFile } from '../content/read/files/file-kind.ts';
import type { Guide } from '../content/schema/guide.ts';
import type { Panel } from '../content/schema/panel.ts';
import type { ModeKey, Session } from '../content/schema/session.ts';
import type { Figure } from '../measure/figure.ts';
import type { ModeLight } from '../measure/instrument/spectral-response.ts';
import type { DistanceSetting } from '../measure/irradiance/distance-setting.ts';
import type { FieldFigures } from './field-figures.ts';
import type { SessionMade } from './files/file-maker.ts';
import type { InstrumentFinder } from './reading-figures.ts';

/** One session on the bench: its readings, and what they were taken with. All of its other figures are made from it. */
export interface SessionBench {
  slug: string;
  panel: Panel;
  guide: Guide;
  /** `<panel>/<date>` */
  id: string;
  /** The session as it stands in the file. */
  own: Session;
  /** The same with what it carries over in its place: readings, and what they were taken with. */
  session: Session;
  /** The id of the session in which its light was read: its own, unless that was carried over. */
  lightId: string;
  /** The meter of a kind of reading, as it was calibrated on the day on which that was read. */
  instrumentFor: InstrumentFinder;
  field: FieldFigures;
  /** From where its light was read, and over what that was set. */
  distance: DistanceSetting;
  /** How its light is shared out between the bands, mode by mode, and what its readings are corrected by. */
  bands: Readonly<Record<ModeKey, ModeLight>>;
  /** Files that it names, and those that come with what it carries over. */
  files: readonly AnyReadFile[];
  /** What is made of them. */
  made: SessionMade;
  /** Its plain readings as figures: those that were typed. */
  readings: readonly Figure[];
}
