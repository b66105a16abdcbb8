import { mean } from 'simple-statistics';
import { acceptedReadings } from '../content/read/grid-points.ts';
import type { Session } from '../content/schema/session.ts';
import type { AxisReading } from '../measure/exposure/index.ts';
import type { Figure } from '../measure/figure.ts';
import type { Instrument } from '../measure/instrument/instrument.ts';
import type { ModeLight } from '../measure/instrument/spectral-response.ts';
import type { DistanceSetting } from '../measure/irradiance/distance-setting.ts';
import { number } from '../measure/numbers.ts';
import { readingFigure } from '../measure/reading.ts';
import { productFigure } from '../measure/uncertainty.ts';

/**
 * Readings before the middle with near-infrared alone on, from a session's sweep; repeats as their mean.
 *
 * @param light with near-infrared alone on
 * @param share of that light that is infrared from 780 nm on, where a spectrum tells it; else all of it counts
 */
export function axisInfrared(
  id: string,
  session: Session,
  setting: DistanceSetting,
  instrument: Instrument | undefined,
  light: ModeLight,
  share = 1,
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
      bands: light,
    });
    // The stand is set anew for each distance, and what is rounded and repeated is this reading: errors of their own.
    const budget = figure.budget.map((it) => {
      const { key } = it.source;
      const own = key === `${id}/distance` ? id : key.startsWith(`${figure.id}/`) ? figure.id : undefined;
      return own === undefined ? it : { ...it, source: { ...it.source, key: key.replace(own, path) } };
    });
    const irradiance = { ...figure, id: path, budget };
    return [{ distance: distance.value, irradiance: share < 1 ? inBand(irradiance, share) : irradiance }];
  });
}

/** The part of a reading that lies in the band. */
function inBand(read: Figure, share: number): Figure {
  const { id, metric, unit, method, inputs } = read;
  const calculation = `E = ${number(share)} × ${number(read.value)} mW/cm² = ${number(share * read.value)} mW/cm²`;
  const part = productFigure(
    { id, metric, unit, method, basis: 'derived', calculation },
    [{ figure: read, power: 1 }],
    share,
  );
  return { ...part, inputs };
}
