import type { Guide } from '../content/schema/guide.ts';
import type { Session } from '../content/schema/session.ts';
import { exposureResults, type Infrared, type LimitResult, nearInfraredFromMode } from '../measure/exposure/index.ts';
import { type FigureOrGap, gap } from '../measure/figure.ts';
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

/** What a session's readings with near-infrared alone on say. */
export function sessionInfrared(
  id: string,
  session: Session,
  setting: DistanceSetting,
  instrument: Instrument | undefined,
  reading: FigureOrGap | undefined,
): Infrared {
  return nearInfraredFromMode(
    reading ?? gap('peak-irradiance-near-infrared', { code: 'near-infrared-not-measured' }),
    setting.distance,
    axisInfrared(id, session, setting, instrument),
  );
}
