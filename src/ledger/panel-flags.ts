import type { Content } from '../content/read/content.ts';
import type { Panel } from '../content/schema/panel.ts';
import { flagsOf } from '../measure/checks/index.ts';
import type { FigureMap } from '../measure/figure.ts';
import { type Flag, figureFinder, hasCancelled, isFigure } from '../measure/figure.ts';
import type { MetricId } from '../measure/metrics.ts';
import { checkedReadings } from './checked-readings.ts';
import type { SessionEntry } from './ledger.ts';
import { gridPointMeans } from './session-figures.ts';

/** What the checks of plausibility are told of a panel. */
export interface FlagContext {
  panel: Panel;
  /** Left out for a panel that has never been on the bench: its price and its sizes can still be odd. */
  session?: Pick<SessionEntry, 'readings' | 'date' | 'instruments' | 'claims'>;
  figures: FigureMap;
  content: Content;
  today: string;
  /** Day of the price that is used; undefined where none is. */
  priceDate: string | undefined;
}

/** What is odd about a panel in one session, as far as its readings and figures tell. */
export function panelFlags({ panel, session, figures, content, today, priceDate }: FlagContext): Flag[] {
  const readings = session?.readings;
  return flagsOf({
    figure: figureFinder(figures),
    gridPoints: readings ? gridPointMeans(readings) : [],
    gridColumns: readings?.grid?.rows[0]?.length ?? 1,
    field: sides(panel.field),
    housing: sides(panel.housing),
    priceDate,
    today,
    sessionDate: session?.date ?? today,
    calibrations: (session?.instruments ?? []).flatMap(({ quantityId, name, calibration }) =>
      calibration
        ? [
            {
              instrument: name,
              due: calibration.due,
              // Every budget is gone through for it, and hardly ever asked for: a calibration mostly holds.
              get reads() {
                return metricsResting(quantityId, figures);
              },
            },
          ]
        : [],
    ),
    claims: session?.claims ?? [],
    ...checkedReadings(panel, readings, content, figures),
  });
}

function sides(it: Panel['field']): { width: number; height: number } | undefined {
  return it && { width: it.width.value, height: it.height.value };
}

/** Metrics in whose budget an instrument's calibration stands, and has not cancelled; a doubt about it concerns them. */
function metricsResting(quantityId: string, figures: FigureMap): MetricId[] {
  return [...figures.values()]
    .filter(isFigure)
    .filter((figure) =>
      figure.budget.some(
        (it) => it.source.key.startsWith(`${quantityId}@`) && it.contribution !== 0 && !hasCancelled(figure, it),
      ),
    )
    .map((figure) => figure.metric);
}
