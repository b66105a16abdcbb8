import { type FigureOrGap, gap } from '../figure.ts';
import type { MetricId } from '../metrics.ts';
import type { MainsFrequency } from './field-levels.ts';
import type { FieldKind, FieldReading } from './field-reading.ts';
import { fieldResults } from './field-results.ts';
import { type FlickerMode, type FlickerReading, flickerResults } from './flicker-results.ts';
import { infraredResults } from './infrared-results.ts';
import type { Infrared } from './infrared-shares.ts';
import type { LimitResult } from './limit.ts';
import { precautionResult } from './precaution-results.ts';
import { pulsingResults } from './pulsing.ts';
import { retinaResult } from './retina.ts';
import { skinResult } from './skin.ts';
import { soundResult } from './sound-result.ts';

export { EYE_DISTANCES } from './eye-distances.ts';
export type { MainsFrequency } from './field-levels.ts';
export { knowsSpectralError, nearInfraredFromMode } from './infrared-results.ts';
export { type AxisReading, type Infrared, shareReadings } from './infrared-shares.ts';
export { CLOSING, cited, type Limit, type LimitResult, sentenceOf } from './limit.ts';
export type { ShareReading } from './share-by-distance.ts';

/** What the measures of exposure are made from. */
export interface ExposureInput {
  /** `<panel>/<date>` */
  session: string;
  /** The session's reading of a metric; undefined where it was not taken. */
  figure(metric: MetricId): FigureOrGap | undefined;
  /** What was read with near-infrared alone on. */
  infrared: Infrared;
  /** Distances of the field and sound readings as they were written; left out where none was. */
  distances: Partial<Record<FieldKind | 'sound', string | undefined>>;
  /** What the meters of the fields respond to, in their files' words; left out where the session names none. */
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
  const reading = (metric: MetricId, missing: string): FigureOrGap => input.figure(metric) ?? gap(metric, missing);
  const flicker = (mode: FlickerMode): FlickerReading => ({
    depth: reading(`flicker-${mode}`, 'flicker was not measured'),
    frequency: reading(`flicker-frequency-${mode}`, 'no frequency is recorded'),
  });
  const field = (kind: FieldKind): FieldReading => ({
    kind,
    on: reading(`${kind}-field-on`, 'not measured with the panel on'),
    off: reading(`${kind}-field-off`, 'not measured'),
    distance: distances[kind],
    frequency: kind === 'radio' ? undefined : input.figure(`${kind}-field-frequency`),
    response: input.responses?.[kind],
  });
  return [
    ...infraredResults(session, input.infrared),
    skinResult(session, reading('peak-irradiance-combined', 'both channels together were not measured')),
    retinaResult(),
    ...flickerResults(session, flicker),
    ...pulsingResults(flicker),
    ...FIELDS.flatMap((kind) => [
      ...fieldResults(session, field(kind), input.mains),
      precautionResult(session, field(kind)),
    ]),
    soundResult(session, {
      on: reading('sound-on', 'not measured with the panel on'),
      off: reading('sound-off', 'not measured with the panel off'),
      distance: distances.sound,
    }),
  ];
}
