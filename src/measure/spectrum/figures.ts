import { type BudgetComponent, type FigureOrGap, gap } from '../figure.ts';
import {
  calibrationComponents,
  type Instrument,
  instrumentAbsence,
  isCalibrated,
  repeatabilityComponents,
} from '../instrument/instrument.ts';
import { identityOf, type ListedMetricId } from '../metrics.ts';
import type { Mode } from '../modes.ts';
import { number } from '../numbers.ts';
import type { Statement } from '../statement.ts';
import { makeFigure, rectangular, typeB } from '../uncertainty.ts';
import { highestPeak, partSum } from './analysis.ts';
import { BAND_NAMES, bandShares } from './bands.ts';
import { darkComponents, noiseComponents, powerKnowledge } from './budget.ts';
import type { Peak } from './peaks.ts';
import type { SpectrumReading } from './reading.ts';

/** Why nothing of a spectrum counts: a full sensor, or no light. */
function refused({ analysis }: SpectrumReading): Statement | undefined {
  if (analysis.faults.flat) return { code: 'spectrum-full' };
  return highestPeak(analysis) && analysis.total > 0 ? undefined : { code: 'spectrum-without-light' };
}

/** All figures of a spectrum with one channel on or both, but those that need other readings. */
export function spectrumFigures(reading: SpectrumReading): FigureOrGap[] {
  const { mode } = reading;
  const ofChannel =
    mode === 'combined' ? [] : [wavelength(reading, mode), width(reading, mode), centroid(reading, mode)];
  return [...ofChannel, irradiance(reading), ...shares(reading)];
}

type Channel = Exclude<Mode, 'combined'>;

function ofPeak(
  reading: SpectrumReading,
  metric: ListedMetricId,
  make: (peak: Peak, instrument: Instrument) => { value: number; budget: BudgetComponent[] } | Statement,
): FigureOrGap {
  const { analysis, session, path, instrument } = reading;
  const why = refused(reading);
  const peak = highestPeak(analysis);
  if (why || !peak) return gap(metric, why ?? { code: 'spectrum-without-light' });
  const cut = analysis.faults.cut.find(({ at }) => at >= peak.lit.from - 1 && at <= peak.lit.to + 1);
  if (cut && metric.startsWith('centroid')) return gap(metric, { code: 'spectrum-cut-off', at: cut.at });
  const made = make(peak, instrument ?? NOBODY);
  if ('code' in made) return gap(metric, made);
  const identity = { ...identityOf(metric, session), basis: 'measured' as const, inputs: [path] };
  return makeFigure(
    identity,
    made.value,
    isCalibrated(instrument) ? { budget: made.budget } : { absent: instrumentAbsence(instrument) },
  );
}

/** Stands for an instrument where none is named: its figures then have no known uncertainty. */
const NOBODY = { id: '', name: '', calibrationRelative: 0, calibrationAbsolute: 0, resolution: 0 } as Instrument;

function wavelength(reading: SpectrumReading, channel: Channel): FigureOrGap {
  const metric = `wavelength-${channel}` as const;
  return ofPeak(reading, metric, (peak, instrument) => ({
    value: peak.wavelength,
    budget: [
      ...calibrationComponents(instrument, peak.wavelength),
      ...repeatabilityComponents(instrument, `${reading.path}/${metric}`, peak.wavelength),
      ...noiseComponents(reading, metric, peak.wavelengthError),
    ],
  }));
}

function width(reading: SpectrumReading, channel: Channel): FigureOrGap {
  const metric = `fwhm-${channel}` as const;
  return ofPeak(reading, metric, ({ width: found }, instrument) => {
    if (!found) return { code: 'spectrum-peak-overlaps' };
    const { bandwidth } = instrument;
    // What a slit of Gaussian shape adds to a Gaussian peak; the width is told as it was read.
    const added = bandwidth && bandwidth < found.value ? found.value - Math.sqrt(found.value ** 2 - bandwidth ** 2) : 0;
    return {
      value: found.value,
      budget: [
        // An offset of the scale moves both sides alike; a stretch widens.
        ...calibrationComponents({ ...instrument, calibrationAbsolute: 0 }, found.value),
        ...noiseComponents(reading, metric, found.error),
        ...darkComponents(reading, (found.perLevel * reading.analysis.dark.offsetError) / 2),
        ...(added > 0 && bandwidth
          ? [
              {
                source: typeB({
                  key: `${instrument.id}/bandwidth`,
                  what: { code: 'spectrum-bandwidth', instrument: instrument.name },
                  distribution: 'rectangular',
                  evaluation: { code: 'spectrum-bandwidth-stated', bandwidth },
                }),
                contribution: rectangular(added),
              },
            ]
          : []),
      ],
    };
  });
}

function centroid(reading: SpectrumReading, channel: Channel): FigureOrGap {
  const metric = `centroid-${channel}` as const;
  return ofPeak(reading, metric, (peak, instrument) => {
    const light = partSum(reading.analysis, peak.lit);
    const reach = (peak.lit.to - peak.lit.from) / 2;
    // Noise at a distance from the centroid pulls by it; over an even window the root mean square is 1 / sqrt 3 of the half.
    const ofNoise = light.value > 0 ? (light.noise / light.value) * rectangular(reach) : 0;
    const lopsided = Math.abs((peak.lit.to + peak.lit.from) / 2 - peak.centroid);
    return {
      value: peak.centroid,
      budget: [
        ...calibrationComponents(instrument, peak.centroid),
        ...noiseComponents(reading, metric, ofNoise),
        ...darkComponents(reading, light.value > 0 ? (light.dark / light.value) * lopsided : 0),
      ],
    };
  });
}

function irradiance(reading: SpectrumReading): FigureOrGap {
  const { analysis, session, mode, path, scale } = reading;
  const metric = `spectrum-irradiance-${mode}` as const;
  const why = refused(reading);
  if (why) return gap(metric, why);
  if (scale !== 'irradiance') return gap(metric, { code: 'spectrum-relative' });
  const sum = partSum(analysis, analysis.reach);
  return makeFigure(
    {
      ...identityOf(metric, session),
      basis: 'measured',
      inputs: [path],
      calculation: `E = ∫ S dλ, ${number(analysis.reach.from)}–${number(analysis.reach.to)} nm = ${number(sum.value)} mW/cm²`,
      ...(analysis.faults.cut.length > 0 && { bound: 'above' as const }),
    },
    sum.value,
    powerKnowledge(reading, metric, sum),
  );
}

/** Share of each band, where one part of the spectrum can be held against another. */
function shares(reading: SpectrumReading): FigureOrGap[] {
  const { analysis, session, mode, path, scale, instrument, edges } = reading;
  const metricOf = (band: (typeof BAND_NAMES)[number]) => `${band}-share-${mode}` as const;
  const why = scale === 'counts' ? ({ code: 'spectrum-raw-counts' } as const) : refused(reading);
  const found = why ? undefined : bandShares(analysis, edges);
  if (why || !found) return BAND_NAMES.map((it) => gap(metricOf(it), why ?? { code: 'spectrum-without-light' }));
  return BAND_NAMES.map((band) => {
    const metric = metricOf(band);
    const share = found[band];
    const identity = { ...identityOf(metric, session), basis: 'measured' as const, inputs: [path] };
    const value = 100 * share.value;
    if (!isCalibrated(instrument)) return makeFigure(identity, value, { absent: instrumentAbsence(instrument) });
    const error = instrument.powerError;
    if (error === undefined) {
      return makeFigure(identity, value, {
        absent: { code: 'spectrum-power-not-stated', instrument: instrument.name },
      });
    }
    const [cut] = analysis.faults.cut;
    if (cut) return makeFigure(identity, value, { absent: { code: 'spectrum-cut-off', at: cut.at } });
    return makeFigure(identity, value, {
      budget: [
        {
          // How far one band may be read too high against the others is taken to be as much as the whole.
          source: typeB({
            key: `${instrument.id}@${instrument.calibrationDate}/spectral-shape-${band}`,
            what: { code: 'spectrum-shape', instrument: instrument.name },
            distribution: 'normal',
            evaluation: { code: 'spectrum-power-stated', error },
          }),
          contribution: 100 * error * share.value * share.others,
        },
        ...noiseComponents(reading, metric, 100 * share.noise),
        ...darkComponents(reading, 100 * share.dark),
      ],
    });
  });
}
