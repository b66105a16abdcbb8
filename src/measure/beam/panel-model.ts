import { drivenBy } from './drive.ts';
import { type Emitter, type EmitterPart, emitterParts, type Field } from './emitter.ts';

/** A panel as the model has found it. */
export interface PanelModel {
  emitter: Emitter;
  field: Field;
  /** Powers of the parts of its beam, for each W (see `profile-basis.ts`). */
  weights: number[];
  /** Amount of each pattern of uneven drive (see `drive.ts`). */
  drive: number[];
  /** Emitted, W. */
  power: number;
  /** Nearer than this, cm, nobody knows how single LEDs show, and there is no peak. Left out: everywhere known. */
  peakFrom?: number;
}

/** The panel's LEDs as they are driven, as products of profiles. */
export function panelTerms({ emitter, field, drive }: Pick<PanelModel, 'emitter' | 'field' | 'drive'>): EmitterPart[] {
  return emitterParts(emitter, field, drivenBy(emitter, field, drive));
}
