import type { RetinalLight, RetinaView } from '../measure/exposure/retina.ts';
import { type Figure, isFigure } from '../measure/figure.ts';
import type { MetricId } from '../measure/metrics.ts';
import { retinalShare } from '../measure/spectrum/retinal-share.ts';
import { spectrumReadings } from './files/spectra-readings.ts';
import type { SessionBench } from './session-bench.ts';

/** What light counts by the spectrum of a mode: the infrared of near-infrared alone, all of both channels. */
const LIGHTS = [
  { key: 'nearInfrared', mode: 'near-infrared', irradiance: 'infrared-sum', share: 'retinal-hazard' },
  { key: 'combined', mode: 'combined', irradiance: 'peak-irradiance-combined', share: 'retina-seen' },
] as const;

/**
 * What bounds the radiance of a session's light: its spectra, the irradiance and how the LED field and its emitters look
 * from there. Undefined where it has no spectrum that tells it, or no LED field.
 */
export function retinaView(
  { lightId, panel, guide, instrumentFor, field, distance, files }: SessionBench,
  figure: (metric: MetricId) => Figure | undefined,
): RetinaView | undefined {
  const { width, height } = field;
  if (!isFigure(width) || !isFigure(height)) return undefined;
  const taken = spectrumReadings(files, { id: lightId, guide, instrumentFor, distance });
  const lights = LIGHTS.flatMap(({ key, mode, irradiance, share }): Array<[string, RetinalLight]> => {
    const reading = taken.find((it) => it.key === key)?.reading;
    const read = figure(irradiance);
    const weight = reading && retinalShare(reading, share);
    return read && read.value > 0 && weight ? [[mode, { irradiance: read, weight }]] : [];
  });
  if (lights.length === 0) return undefined;
  const { emitters } = panel;
  return {
    width,
    height,
    distance: distance.distance,
    ...(emitters && {
      emitters: {
        diameter: emitters.diameter.value,
        count: emitters.count,
        nearInfrared: emitters.nearInfrared ?? emitters.count,
      },
    }),
    ...Object.fromEntries(lights),
  };
}
