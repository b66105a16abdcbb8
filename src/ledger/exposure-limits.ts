import { EYE_DISTANCES, exposureResults, type LimitResult, type ModelledPeaks } from '../measure/exposure/index.ts';
import { type FigureOrGap, isFigure } from '../measure/figure.ts';
import type { Guide } from '../schema/guide.ts';
import type { Session } from '../schema/session.ts';
import type { ModelledLight } from './modelled-light.ts';
import type { MeterFinder } from './reading-figures.ts';

/** A session's figures held against published limits, from the session's own readings. */
export function exposureLimits(
  id: string,
  session: Session,
  guide: Guide,
  distance: number,
  light: ModelledLight,
  figure: (metric: string) => FigureOrGap | undefined,
  meterFor: MeterFinder,
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
    responses: { magnetic: meterFor('magnetic')?.response, electric: meterFor('electric')?.response },
  });
}

/** What the model has at the distances of an eye; or why it has nothing. */
function modelledPeaks({ own, figures }: ModelledLight): ModelledPeaks {
  if (!own) return { absent: isFigure(figures.emitted) ? 'the model gives no peak' : figures.emitted.reason };
  const at = figures.distances.filter((it) => (EYE_DISTANCES as readonly number[]).includes(it.distance));
  return { atReading: own.peak, at: new Map(at.map((it) => [it.distance, it.peak])) };
}
