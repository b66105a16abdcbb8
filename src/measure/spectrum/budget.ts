import type { BudgetComponent, Unassessed } from '../figure.ts';
import { instrumentAbsence, isCalibrated } from '../instrument/instrument.ts';
import { distanceComponents } from '../irradiance/distance-setting.ts';
import type { ListedMetricId } from '../metrics.ts';
import type { Statement } from '../statement.ts';
import { typeB } from '../uncertainty.ts';
import type { PartSum } from './analysis.ts';
import type { SpectrumReading } from './reading.ts';

declare module '../statement.ts' {
  interface StatementData {
    'spectrum-noise': object;
    'spectrum-noise-found': object;
    'spectrum-dark': object;
    'spectrum-dark-found': object;
    'spectrum-bandwidth': { instrument: string };
    /** Slit width, nm. */
    'spectrum-bandwidth-stated': { bandwidth: number };
    'spectrum-power': { instrument: string };
    /** Standard uncertainty, fraction. */
    'spectrum-power-stated': { error: number };
    'spectrum-shape': { instrument: string };
    /** Why a figure is missing, or its uncertainty. */
    'spectrum-full': object;
    'spectrum-without-light': object;
    'spectrum-peak-overlaps': object;
    'spectrum-relative': object;
    'spectrum-raw-counts': object;
    'spectrum-power-not-stated': { instrument: string };
    /** Light goes on beyond an end, nm. */
    'spectrum-cut-off': { at: number };
  }
}

/** What is known of a sum of spectral irradiance: the calibration in power, the distance, noise and the dark level. */
export function powerKnowledge(
  reading: SpectrumReading,
  metric: ListedMetricId,
  sum: PartSum,
  more: readonly BudgetComponent[] = [],
): { budget: BudgetComponent[]; unassessed: Unassessed[] } | { absent: Statement } {
  const { instrument, session, distance, analysis } = reading;
  if (!isCalibrated(instrument)) return { absent: instrumentAbsence(instrument) };
  const error = instrument.powerError;
  if (error === undefined) return { absent: { code: 'spectrum-power-not-stated', instrument: instrument.name } };
  const [cut] = analysis.faults.cut;
  if (cut) return { absent: { code: 'spectrum-cut-off', at: cut.at } };
  return {
    budget: [
      {
        source: typeB({
          key: `${instrument.id}@${instrument.calibrationDate}/spectral-power`,
          what: { code: 'spectrum-power', instrument: instrument.name },
          distribution: 'normal',
          evaluation: { code: 'spectrum-power-stated', error },
        }),
        contribution: error * sum.value,
      },
      ...distanceComponents(distance, session, sum.value),
      ...noiseComponents(reading, metric, sum.noise),
      ...darkComponents(reading, sum.dark),
      ...more,
    ],
    unassessed: [
      { what: { code: 'cosine-response' }, reason: { code: 'not-stated-for', instrument: instrument.name } },
    ],
  };
}

/** Noise of one figure of a spectrum. */
export function noiseComponents(
  { session }: SpectrumReading,
  metric: ListedMetricId,
  contribution: number,
): BudgetComponent[] {
  return contribution > 0
    ? [
        {
          source: typeB({
            key: `${session}/${metric}/noise`,
            what: { code: 'spectrum-noise' },
            distribution: 'normal',
            evaluation: { code: 'spectrum-noise-found' },
          }),
          contribution,
        },
      ]
    : [];
}

/** One error for all that is made of a spectrum. */
export function darkComponents({ session, mode }: SpectrumReading, contribution: number): BudgetComponent[] {
  return contribution === 0
    ? []
    : [
        {
          source: typeB({
            key: `${session}/spectrum-dark-${mode}`,
            what: { code: 'spectrum-dark' },
            distribution: 'normal',
            evaluation: { code: 'spectrum-dark-found' },
          }),
          contribution,
        },
      ];
}
