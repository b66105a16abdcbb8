import { type FigureOrGap, gap } from '../figure.ts';
import type { MetricId } from '../metrics.ts';
import type { Mode } from '../modes.ts';
import type { Statement } from '../statement.ts';
import type { MainsFrequency } from './field-levels.ts';
import type { FieldKind, FieldReading } from './field-reading.ts';
import { type FieldResult, fieldResults } from './field-results.ts';
import { type FlickerReading, type FlickerResult, flickerResults } from './flicker-results.ts';
import { type InfraredShareResult, type InfraredTimeResult, infraredResults } from './infrared-results.ts';
import type { Infrared } from './infrared-shares.ts';
import { type PrecautionResult, precautionResult } from './precaution-results.ts';
import { type PulsingResult, pulsingResults } from './pulsing.ts';
import { type RetinaResult, type RetinaView, retinaResults } from './retina.ts';
import { type SkinResult, skinResult } from './skin.ts';
import { type SoundResult, soundResult } from './sound-result.ts';

export { EYE_DISTANCES } from './eye-distances.ts';
export type { MainsFrequency } from './field-levels.ts';
export { knowsSpectralError, nearInfraredFromMode, nearInfraredFromSpectrum } from './infrared-results.ts';
export { type AxisReading, type Infrared, shareReadings } from './infrared-shares.ts';
export type { LimitId } from './limit.ts';
export type { ShareReading } from './share-by-distance.ts';

declare module '../statement.ts' {
  interface StatementData {
    'combined-not-measured': object;
    'flicker-not-measured': object;
    'flicker-frequency-not-recorded': object;
    'not-measured-panel-on': object;
    'not-measured-panel-off': object;
  }
}

/** A figure held against a published limit, by its hazard. words/limits/ says what came out. */
export type LimitResult =
  | InfraredShareResult
  | InfraredTimeResult
  | SkinResult
  | RetinaResult
  | FlickerResult
  | PulsingResult
  | FieldResult
  | PrecautionResult
  | SoundResult;

/** What the measures of exposure are made from. */
export interface ExposureInput {
  /** `<panel>/<date>` */
  session: string;
  /** The session's reading of a metric; undefined where it was not taken. */
  figure(metric: string): FigureOrGap | undefined;
  /** What was read with near-infrared alone on. */
  infrared: Infrared;
  /** What bounds the radiance; left out where no spectrum was taken. */
  retina?: RetinaView;
  /** Distances of the field and sound readings as they were written; left out where none was. */
  distances: Partial<Record<FieldKind | 'sound', string | undefined>>;
  /** What the instruments of the fields respond to, in their files' words; left out where the session names none. */
  responses?: Partial<Record<FieldKind, string | undefined>>;
  /** Hz, of the mains at the bench. */
  mains: MainsFrequency;
}

const FIELDS = ['magnetic', 'electric', 'radio'] as const;

/**
 * All measures of exposure of a session, always in one order: eyes, skin, retina, flicker, pulsing (only where
 * there is some), fields with the precautionary lines, sound. A missing reading gives a result with a gap.
 */
export function exposureResults(input: ExposureInput): LimitResult[] {
  const { session, distances } = input;
  const reading = (metric: MetricId, missing: Statement): FigureOrGap => input.figure(metric) ?? gap(metric, missing);
  const flicker = (mode: Mode): FlickerReading => ({
    depth: reading(`flicker-${mode}`, { code: 'flicker-not-measured' }),
    frequency: reading(`flicker-frequency-${mode}`, { code: 'flicker-frequency-not-recorded' }),
  });
  const field = (kind: FieldKind): FieldReading => ({
    kind,
    on: reading(`${kind}-field-on`, { code: 'not-measured-panel-on' }),
    off: reading(`${kind}-field-off`, { code: 'not-measured' }),
    distance: distances[kind],
    frequency: input.figure(`${kind}-field-frequency`),
    response: input.responses?.[kind],
  });
  return [
    ...infraredResults(session, input.infrared),
    skinResult(session, reading('peak-irradiance-combined', { code: 'combined-not-measured' })),
    ...retinaResults(session, input.retina),
    ...flickerResults(session, flicker),
    ...pulsingResults(flicker),
    ...FIELDS.flatMap((kind) => [
      ...fieldResults(session, field(kind), input.mains),
      precautionResult(session, field(kind)),
    ]),
    soundResult(session, {
      on: reading('sound-on', { code: 'not-measured-panel-on' }),
      off: reading('sound-off', { code: 'not-measured-panel-off' }),
      distance: distances.sound,
    }),
  ];
}
