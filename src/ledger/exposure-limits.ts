import {
  exposureResults,
  type Infrared,
  type LimitResult,
  nearInfraredFromMode,
  nearInfraredFromSpectrum,
} from '../measure/exposure/index.ts';
import type { RetinaView } from '../measure/exposure/retina.ts';
import { type FigureOrGap, gap, isFigure } from '../measure/figure.ts';
import type { MetricId } from '../measure/metrics.ts';
import { axisInfrared } from './axis-infrared.ts';
import { infraredShare } from './files/spectra-readings.ts';
import type { SessionBench } from './session-bench.ts';

declare module '../measure/statement.ts' {
  interface StatementData {
    'near-infrared-not-measured': object;
  }
}

/** A session's figures held against published limits, from the session's own readings. */
export function exposureLimits(
  { id, session, guide, instrumentFor }: SessionBench,
  infrared: Infrared,
  retina: RetinaView | undefined,
  figure: (metric: MetricId) => FigureOrGap | undefined,
): LimitResult[] {
  return exposureResults({
    session: id,
    figure,
    infrared,
    ...(retina && { retina }),
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
  { lightId: id, session, distance: setting, instrumentFor, bands, files }: SessionBench,
  reading: FigureOrGap | undefined,
  sum: FigureOrGap | undefined,
): Infrared {
  const axis = (share?: number) =>
    axisInfrared(id, session, setting, instrumentFor('irradiance'), bands.nearInfrared, share);
  if (isFigure(sum) && sum.standardUncertainty !== null && sum.id.startsWith(`${id}/`)) {
    return nearInfraredFromSpectrum(sum, setting.distance, axis(infraredShare(files)));
  }
  return nearInfraredFromMode(
    reading ?? gap('peak-irradiance-near-infrared', { code: 'near-infrared-not-measured' }),
    setting.distance,
    axis(),
  );
}
