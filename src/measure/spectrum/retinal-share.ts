import { retinalWeight, WEIGHTED_FROM, WEIGHTED_TO } from '../exposure/retinal-weight.ts';
import type { Figure } from '../figure.ts';
import { identityOf, type ListedMetricId } from '../metrics.ts';
import { makeFigure } from '../uncertainty.ts';
import { followedErrors } from './followed-errors.ts';
import { INFRARED_BAND } from './infrared-sum.ts';
import type { SpectrumReading } from './reading.ts';
import { areaOver, reachOf, type Span, type Spectrum } from './spectrum.ts';

/** Most of the light that may lie below what is weighted, where weights rise. Our own choice. */
const BELOW = 0.01;
/** Relative errors of less than this are none. Our own choice. */
const NOTHING = 1e-5;

/**
 * What a unit of irradiance counts for the retina: the light times its weights, over the light. With near-infrared alone,
 * the light is that from 780 nm on; with both channels on, all that the instrument saw.
 *
 * @param metric the figure that it goes into
 * @returns a number without a unit, from 0 to 1; undefined where the spectrum can't tell it
 */
export function retinalShare(reading: SpectrumReading, metric: ListedMetricId): Figure | undefined {
  const { analysis, session, mode, path, scale } = reading;
  const { faults, reach, spectrum, total } = analysis;
  if (faults.flat || faults.cut.length > 0 || scale === 'counts' || !(total > 0)) return undefined;
  const isInfrared = mode === 'near-infrared';
  const from = isInfrared ? INFRARED_BAND.from : WEIGHTED_FROM;
  if (reach.from > from) return undefined;
  if (!isInfrared && areaOver(spectrum, { from: reach.from, to: WEIGHTED_FROM }) > BELOW * total) return undefined;
  const whole: Span = isInfrared ? INFRARED_BAND : reachOf(spectrum);
  const weighted: Span = { from, to: WEIGHTED_TO };
  const shareOf = (light: Spectrum) => areaOver(weightedBy(light), weighted) / areaOver(light, whole);
  const value = shareOf(spectrum);
  if (!(value > 0)) return undefined;
  const { unit: _, ...identity } = identityOf(metric, session);
  return makeFigure(
    { ...identity, id: `${session}/retinal-weight-${mode}`, unit: '1', basis: 'derived', inputs: [path] },
    value,
    { budget: followedErrors(reading, from, shareOf).filter((it) => Math.abs(it.contribution) > NOTHING * value) },
  );
}

function weightedBy(light: Spectrum): Spectrum {
  const { wavelengths, values } = light;
  return { ...light, values: Float64Array.from(values, (it, i) => it * retinalWeight(wavelengths[i] as number)) };
}
