import { mean } from 'simple-statistics';
import { acceptedReadings } from '../content/read/grid-points.ts';
import type { Session } from '../content/schema/session.ts';
import type { AxisReading } from '../measure/exposure/index.ts';
import type { Instrument } from '../measure/instrument/instrument.ts';
import { NEAR_INFRARED_ALONE } from '../measure/instrument/spectral-response.ts';
import type { DistanceSetting } from '../measure/irradiance/distance-setting.ts';
import { readingFigure } from '../measure/reading.ts';

/** Readings before the middle with near-infrared alone on, from a session's sweep; repeats as their mean. */
export function axisInfrared(
  id: string,
  session: Session,
  setting: DistanceSetting,
  instrument: Instrument | undefined,
): AxisReading[] {
  return (session.distances ?? []).flatMap(({ distance, nearInfrared }, i) => {
    const accepted = nearInfrared === undefined ? [] : acceptedReadings(nearInfrared);
    if (accepted.length === 0) return [];
    const path = `${id}/distances[${i}].nearInfrared`;
    const figure = readingFigure({
      metric: 'peak-irradiance-near-infrared',
      value: mean(accepted),
      session: id,
      path,
      instrument,
      distance: { ...setting, distance: distance.value },
      bands: NEAR_INFRARED_ALONE,
    });
    // The stand is set anew for each distance, and what is rounded and repeated is this reading: errors of their own.
    const budget = figure.budget.map((it) => {
      const { key } = it.source;
      const own = key === `${id}/distance` ? id : key.startsWith(`${figure.id}/`) ? figure.id : undefined;
      return own === undefined ? it : { ...it, source: { ...it.source, key: key.replace(own, path) } };
    });
    return [{ distance: distance.value, irradiance: { ...figure, id: path, budget } }];
  });
}
