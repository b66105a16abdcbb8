import { EYE_DISTANCES, exposureResults, type LimitResult, type ModelledPeaks } from '../measure/exposure/index.ts';
import { type Figure, type FigureOrGap, isFigure } from '../measure/figure.ts';
import type { Guide } from '../schema/guide.ts';
import type { Session } from '../schema/session.ts';
import type { ModelledLight } from './modelled-light.ts';

/** A session's figures held against published limits, from the session's own readings. */
export function exposureLimits(
  id: string,
  session: Session,
  guide: Guide,
  distance: number,
  light: ModelledLight,
  figure: (metric: string) => FigureOrGap | undefined,
): LimitResult[] {
  return exposureResults({
    session: id,
    figure,
    readingDistance: distance,
    modelled: modelledPeaks(light),
    mains: guide.mainsFrequency,
    distances: {
      magnetic: session.magnetic?.distance?.written,
      electric: session.electric?.distance?.written,
      radio: session.radio?.distance?.written,
      sound: session.sound?.distance?.written,
    },
  });
}

/** What the model has at the distances of an eye; or why it has nothing. */
function modelledPeaks({ own, figures }: ModelledLight): ModelledPeaks {
  if (!own) return { absent: isFigure(figures.emitted) ? 'the model gives no peak' : figures.emitted.reason };
  if (!isFigure(own.peak)) return { absent: own.peak.reason };
  const at = figures.distances.flatMap(
    ({ distance, peak }): Array<[number, Figure]> =>
      (EYE_DISTANCES as readonly number[]).includes(distance) && isFigure(peak) ? [[distance, peak]] : [],
  );
  return { atReading: own.peak, at: new Map(at) };
}
