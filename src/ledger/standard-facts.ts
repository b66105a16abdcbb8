import type { Content } from '../content/read/content.ts';
import type { StandardFact } from '../measure/checks/index.ts';
import type { FigureMap } from '../measure/figure.ts';
import { metricsReadBy } from './checked-readings.ts';
import type { SessionEntry } from './ledger.ts';
import { metricsResting } from './metrics-resting.ts';
import { type StandardStatus, standardEntries, standardsOn } from './standards.ts';

/**
 * The check standards of a session's instruments that tell against it: beyond their limits about the day of the readings,
 * which for carried ones is an earlier day, or not read then.
 */
export function standardFacts(
  { instruments }: Pick<SessionEntry, 'instruments'>,
  content: Content,
  figures: FigureMap,
): StandardFact[] {
  const entries = standardEntries(content);
  return [...Map.groupBy(instruments, (it) => it.readOn)].flatMap(([day, read]) => {
    const used = read.map((it) => it.id);
    return standardsOn(entries, used, day).flatMap((status) => factOf(status, read, figures));
  });
}

function factOf(status: StandardStatus, used: SessionEntry['instruments'], figures: FigureMap): StandardFact[] {
  const { id, data, instrument } = status.entry;
  const near = beyondLimits(status);
  if (status.near && !near) return [];
  const calibration = used.find((it) => it.id === instrument.id)?.calibration;
  // A note stays with the readings.
  const resting = near && calibration ? metricsResting(`${instrument.quantityId}@${calibration.date}/`, figures) : [];
  return [
    {
      id,
      standard: data.name,
      instrument: instrument.name,
      near,
      days: data.nearDays,
      reads: resting.length > 0 ? resting : metricsReadBy(instrument.kind, figures),
      isAll: resting.length > 0,
    },
  ];
}

/** The reading that is beyond its limits; undefined where it is within them, or where there are none yet. */
function beyondLimits({ entry: { unit, isRelative }, near }: StandardStatus): StandardFact['near'] {
  if (!near?.limits || !near.point.beyond) return undefined;
  const { date, value, beyond: side } = near.point;
  const { upper, lower, centre } = near.limits;
  const share = isRelative ? 100 * (value / centre - 1) : undefined;
  return { date, value, side, limit: side === 'above' ? upper : lower, centre, share, unit };
}
