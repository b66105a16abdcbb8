import type { Guide } from '../content/schema/guide.ts';
import type { Session } from '../content/schema/session.ts';
import {
  exposureResults,
  type Infrared,
  type LimitResult,
  nearInfraredFromMode,
  nearInfraredFromSpectrum,
} from '../measure/exposure/index.ts';
import { type FigureOrGap, gap, isFigure } from '../measure/figure.ts';
import type { Instrument } from '../measure/instrument/instrument.ts';
import type { DistanceSetting } from '../measure/irradiance/distance-setting.ts';
import type { MetricId } from '../measure/metrics.ts';
import { axisInfrared } from './axis-infrared.ts';
import type { InstrumentFinder } from './reading-figures.ts';

declare module '../measure/statement.ts' {
  interface StatementData {
    'near-infrared-not-measured': object;
  }
}

/** A session's figures held against published limits, from the session's own readings. */
export function exposureLimits(
  id: string,
  session: Session,
  guide: Guide,
  infrared: Infrared,
  figure: (metric: MetricId) => FigureOrGap | undefined,
  instrumentFor: InstrumentFinder,
): LimitResult[] {
  return exposureResults({
    session: id,
    figure,
    infrared,
    mains: guide.mainsFrequency,
    distances: {
      magnetic: session.magnetic?.distance?.written,
      electric: session.electric?.distance?.written,
      radio: session.radio?.distance?.written,
      sound: session.sound?.distance?.written,
    },
    responses: { magnetic: instrumentFor('magnetic')?.response, electric: instrumentFor('electric')?.response },
  });
}

/**
 * What a session's readings with near-infrared alone on say.
 *
 * @param sum infrared by the session's spectrum; it counts where it is of this light, and its uncertainty is known
 */
export function sessionInfrared(
  id: string,
  session: Session,
  setting: DistanceSetting,
  instrument: Instrument | undefined,
  reading: FigureOrGap | undefined,
  sum: FigureOrGap | undefined,
): Infrared {
  const axis = axisInfrared(id, session, setting, instrument);
  if (isFigure(sum) && sum.standardUncertainty !== null && sum.id.startsWith(`${id}/`)) {
    return nearInfraredFromSpectrum(sum, setting.distance, axis);
  }
  return nearInfraredFromMode(
    reading ?? gap('peak-irradiance-near-infrared', { code: 'near-infrared-not-measured' }),
    setting.distance,
    axis,
  );
}
