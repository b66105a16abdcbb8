import type { InstrumentKind } from '../content/schema/instrument.ts';
import type { Reading } from '../content/schema/quantity.ts';
import { MODE_KEYS, type ModeKey, type Session } from '../content/schema/session.ts';
import type { Figure } from '../measure/figure.ts';
import type { Instrument } from '../measure/instrument/instrument.ts';
import { bandShares, type ModeLight, NEAR_INFRARED_ALONE, RED_ALONE } from '../measure/instrument/spectral-response.ts';
import type { DistanceSetting } from '../measure/irradiance/distance-setting.ts';
import type { ListedMetricId } from '../measure/metrics.ts';
import type { Mode } from '../measure/modes.ts';
import { readingFigure } from '../measure/reading.ts';
import type { Statement } from '../measure/statement.ts';

declare module '../measure/statement.ts' {
  interface StatementData {
    /** Why a reading of a frequency has no uncertainty. */
    'frequency-error-not-stated': object;
    /** From how far, as the tester wrote it. */
    'read-at': { distance: string };
    'reading-distance-not-recorded': object;
  }
}

/** The session's instrument for a kind of reading; undefined where the session names none. */
export type InstrumentFinder = (kind: InstrumentKind) => Instrument | undefined;

/** How metric ids spell the modes. */
export const MODE_IDS = {
  red: 'red',
  nearInfrared: 'near-infrared',
  combined: 'combined',
} as const satisfies Record<ModeKey, Mode>;

/** What a reading is called in the session, and as a metric. */
interface Item {
  reading: Reading | undefined;
  metric: ListedMetricId;
  instrument: InstrumentKind | undefined;
  path: string;
  /** Of light: how much of it lies in each band, and what its readings are corrected by. */
  bands?: ModeLight;
  notes?: Statement[];
}

/**
 * How the light of each mode is shared out between the bands: by the peaks of the channels alone, where no spectrum tells
 * it.
 */
export function bandsOf({ peak }: Session): Readonly<Record<ModeKey, ModeLight>> {
  return {
    red: RED_ALONE,
    nearInfrared: NEAR_INFRARED_ALONE,
    combined: bandShares(peak?.red?.value, peak?.nearInfrared?.value),
  };
}

/** Every plain reading of a session as a figure; readings that were not taken give none. */
export function readingFigures(
  id: string,
  session: Session,
  instrumentFor: InstrumentFinder,
  distance: DistanceSetting,
  bands: Readonly<Record<ModeKey, ModeLight>> = bandsOf(session),
): Figure[] {
  return items(session, bands).flatMap(({ reading, instrument, path, ...item }) =>
    reading
      ? [
          readingFigure({
            ...item,
            value: reading.value,
            session: id,
            path: `${id}/${path}`,
            instrument: instrument && instrumentFor(instrument),
            ...(!instrument && { noInstrument: { code: 'frequency-error-not-stated' } as const }),
            ...(reading.bound && { bound: reading.bound }),
            ...(instrument === 'irradiance' && { distance }),
          }),
        ]
      : [],
  );
}

function distanceNote(distance: { written: string } | undefined): Statement {
  return distance ? { code: 'read-at', distance: distance.written } : { code: 'reading-distance-not-recorded' };
}

function items(session: Session, bands: Readonly<Record<ModeKey, ModeLight>>): Item[] {
  const { peak, mains, wavelengths, flicker } = session;
  const list: Item[] = [];
  for (const mode of MODE_KEYS) {
    const suffix = MODE_IDS[mode];
    list.push(
      {
        reading: peak?.[mode],
        metric: `peak-irradiance-${suffix}`,
        instrument: 'irradiance',
        path: `peak.${mode}`,
        bands: bands[mode],
      },
      {
        reading: mains?.[mode],
        metric: `mains-draw-${suffix}`,
        instrument: 'mains',
        path: `mains.${mode}`,
      },
      {
        reading: flicker?.[mode]?.percent,
        metric: `flicker-${suffix}`,
        instrument: 'flicker',
        path: `flicker.${mode}.percent`,
      },
      // A flicker instrument's file states its uncertainty in percent flicker; for the frequency it states none.
      {
        reading: flicker?.[mode]?.frequency,
        metric: `flicker-frequency-${suffix}`,
        instrument: undefined,
        path: `flicker.${mode}.frequency`,
      },
    );
  }
  list.push({
    reading: mains?.standby,
    metric: 'mains-draw-standby',
    instrument: 'mains',
    path: 'mains.standby',
  });
  for (const channel of ['red', 'nearInfrared'] as const) {
    const suffix = MODE_IDS[channel];
    list.push(
      {
        reading: wavelengths?.[channel]?.peak,
        metric: `wavelength-${suffix}`,
        instrument: 'spectrum',
        path: `wavelengths.${channel}.peak`,
      },
      {
        reading: wavelengths?.[channel]?.fwhm,
        metric: `fwhm-${suffix}`,
        instrument: 'spectrum',
        path: `wavelengths.${channel}.fwhm`,
      },
    );
  }
  for (const [kind, metric] of [
    ['magnetic', 'magnetic-field'],
    ['electric', 'electric-field'],
    ['radio', 'radio-field'],
    ['sound', 'sound'],
  ] as const) {
    const field = session[kind];
    const notes = field ? [distanceNote(field.distance)] : [];
    for (const state of ['on', 'off'] as const) {
      list.push({
        reading: field?.[state],
        metric: `${metric}-${state}`,
        instrument: kind,
        path: `${kind}.${state}`,
        notes,
      });
    }
    if (kind === 'radio' || kind === 'sound') continue;
    // A field instrument's file states its uncertainty for the field; for the frequency it states none.
    list.push({
      reading: session[kind]?.frequency,
      metric: `${metric}-frequency`,
      instrument: undefined,
      path: `${kind}.frequency`,
    });
  }
  return list;
}
