import type { Content } from '../content/read/content.ts';
import { type Correction, NO_FIGURE, type Stated } from '../content/schema/corrections.ts';
import type { ListedMetricId } from '../measure/metrics.ts';

/** What a figure was or is, in its unit; null where there was none, a text where no figure is meant. */
export type CorrectedValue = { value: number; interval95: readonly [number, number] | null } | string | null;

/** A figure that was corrected, or moved with one that was. */
export interface CorrectedFigure {
  /** As figures have it: `<panel>/<session>/<metric>`, or `<panel>/<metric>`. */
  id: string;
  metric: ListedMetricId;
  from: CorrectedValue;
  to: CorrectedValue;
}

/** One dated entry of the public list. */
export interface CorrectionEntry {
  /** Its anchor on the page of changes; follows from day and subject alone. */
  id: string;
  date: string;
  /** Slug of the panel that it is of. */
  panel?: string;
  session?: string;
  method?: string;
  version?: number;
  /** What was wrong, where it was no figure. */
  from: CorrectedValue;
  to: CorrectedValue;
  /** The figure that was wrong first, then those that moved with it; empty where a text was. */
  figures: readonly CorrectedFigure[];
  why: string;
}

/** Every correction, newest first; those of one day by their ids. */
export function correctionEntries({ corrections }: Pick<Content, 'corrections'>): CorrectionEntry[] {
  return (corrections?.data.corrections ?? [])
    .map(correctionEntry)
    .toSorted((a, b) => b.date.localeCompare(a.date) || a.id.localeCompare(b.id, 'en'));
}

function correctionEntry(it: Correction): CorrectionEntry {
  const { date, panel, session, metric, method, version, alsoMoved = [], why } = it;
  const subject = [panel ?? method, session, metric].filter((part) => part !== undefined);
  const ownId = (of: string) => [panel, session, of].filter((part) => part !== undefined).join('/');
  const moved = metric === undefined ? [] : [{ metric, from: it.from, to: it.to }, ...alsoMoved];
  return {
    id: `correction-${[date, ...subject].join('-')}`,
    date,
    ...(panel !== undefined && { panel }),
    ...(session !== undefined && { session }),
    ...(method !== undefined && { method }),
    ...(version !== undefined && { version }),
    from: correctedValue(it.from),
    to: correctedValue(it.to),
    figures: moved.map(({ from, to, ...one }) => ({
      id: ownId(one.metric),
      metric: one.metric as ListedMetricId,
      from: correctedValue(from),
      to: correctedValue(to),
    })),
    why,
  };
}

function correctedValue(it: Stated): CorrectedValue {
  if (typeof it === 'number') return { value: it, interval95: null };
  if (typeof it === 'string') return it === NO_FIGURE ? null : it;
  return { value: it.value, interval95: [it.low, it.high] };
}
