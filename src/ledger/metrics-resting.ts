import type { FigureMap } from '../measure/figure.ts';
import { hasCancelled, isFigure } from '../measure/figure.ts';
import type { MetricId } from '../measure/metrics.ts';

/**
 * Metrics in whose budget a calibration stands, and has not cancelled; a doubt about it concerns them.
 *
 * @param calibration what the keys of its errors begin with
 */
export function metricsResting(calibration: string, figures: FigureMap): MetricId[] {
  return [...figures.values()]
    .filter(isFigure)
    .filter((figure) =>
      figure.budget.some(
        (it) => it.source.key.startsWith(calibration) && it.contribution !== 0 && !hasCancelled(figure, it),
      ),
    )
    .map((figure) => figure.metric);
}
