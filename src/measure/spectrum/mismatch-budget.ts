import type { BudgetComponent, Unassessed } from '../figure.ts';
import type { Instrument } from '../instrument/instrument.ts';
import type { Band } from '../instrument/spectral-response.ts';
import { rectangular, typeB } from '../uncertainty.ts';
import { noiseComponents } from './budget.ts';
import { followedErrors } from './followed-errors.ts';
import { meanResponse, mismatchFactor, responseAt, unstatedShare } from './mismatch.ts';
import type { SpectrumReading } from './reading.ts';
import { areaOver, type Span, type Spectrum, widthsOf } from './spectrum.ts';

declare module '../statement.ts' {
  interface StatementData {
    'responsivity-error': { instrument: string; band: Band };
    /** Standard uncertainty of the response, fraction, and share of the band in what the meter shows. */
    'responsivity-error-stated': { error: number; share: number };
    /** The same where the file states none: the error that it states for readings in the band. */
    'responsivity-error-of-band': { error: number; share: number };
    'responsivity-error-absent': { instrument: string };
    'responsivity-ends': { instrument: string };
    /** Share of the light beyond its ends, fraction. */
    'responsivity-ends-share': { share: number };
    'spectrum-elsewhere': object;
    'spectrum-of-one-place': object;
  }
}

/** How a broadband meter answers to each wavelength. */
export type Responsivity = NonNullable<Instrument['responsivity']>;

/** Less of a factor than this, a hundredth of a per cent, is nothing. Our own choice. */
const NOTHING = 1e-4;

const BANDS = [
  { band: 'red', key: 'red' },
  { band: 'nearInfrared', key: 'near-infrared' },
] as const;

/**
 * What a mismatch factor is uncertain of. The meter's responsivity: one error a band, of the sensor, for all that it is
 * ever corrected by, so that it cancels between panels with like LEDs. The spectrum: its wavelengths, one band read too
 * high against the other, dark level and noise. And light beyond the ends of what is stated, which the meter may see or
 * not.
 */
export function mismatchBudget(
  reading: SpectrumReading,
  meter: Instrument,
  response: Responsivity,
  factor: number,
): { budget: BudgetComponent[]; unassessed: Unassessed[] } {
  const { analysis, session, mode } = reading;
  const { spectrum } = analysis;
  const own = sensorErrors(reading, meter, response, factor);
  const beyond = unstatedShare(spectrum, response.points);
  const budget = [
    ...own.budget,
    ...followedErrors(
      reading,
      response.calibratedAt,
      (light) => mismatchFactor(light, response.points, response.calibratedAt) ?? factor,
    ),
    ...noiseComponents(reading, `mismatch-factor-${mode}`, noiseOf(reading, response, factor)),
    ...(beyond > 0
      ? [
          {
            source: typeB({
              key: `${session}/responsivity-ends-${mode}`,
              what: { code: 'responsivity-ends', instrument: meter.name },
              distribution: 'rectangular',
              evaluation: { code: 'responsivity-ends-share', share: beyond },
            }),
            contribution: rectangular(beyond * factor),
          },
        ]
      : []),
  ];
  return {
    budget: budget.filter((it) => Math.abs(it.contribution) > NOTHING),
    unassessed: [
      ...own.unassessed,
      { what: { code: 'spectrum-elsewhere' }, reason: { code: 'spectrum-of-one-place' } },
    ],
  };
}

/** Errors of the responsivity against that at the wavelength of the calibration, by how much of what the meter shows is in each band. */
function sensorErrors(
  { analysis: { spectrum }, edges }: SpectrumReading,
  meter: Instrument,
  response: Responsivity,
  factor: number,
): { budget: BudgetComponent[]; unassessed: Unassessed[] } {
  const seen = BANDS.map(({ band, key }) => ({ band, key, signal: signalIn(spectrum, response, edges[band]) }));
  const all = seen.reduce((sum, it) => sum + it.signal, 0);
  const budget: BudgetComponent[] = [];
  const unassessed: Unassessed[] = [];
  for (const { band, key, signal } of seen) {
    const share = all > 0 ? signal / all : 1;
    const error = response.error ?? meter.spectralResponse?.[band];
    if (share < NOTHING) continue;
    if (error === undefined) {
      const reason = { code: 'responsivity-error-absent', instrument: meter.name } as const;
      unassessed.push({ what: { code: 'responsivity-error', instrument: meter.name, band }, reason });
      continue;
    }
    budget.push({
      source: typeB({
        key: `${meter.id}/responsivity-${key}`,
        what: { code: 'responsivity-error', instrument: meter.name, band },
        distribution: 'normal',
        evaluation: {
          code: response.error === undefined ? 'responsivity-error-of-band' : 'responsivity-error-stated',
          error,
          share,
        },
      }),
      contribution: -factor * error * share,
    });
  }
  return { budget, unassessed };
}

/** What the meter shows of the light of a part of a spectrum, in any unit. */
function signalIn(spectrum: Spectrum, { points }: Responsivity, span: Span): number {
  const light = Math.max(0, areaOver(spectrum, span));
  return light * (meanResponse(within(spectrum, span), points) ?? 1);
}

/** Noise of each row moves the mean response by its width times how far its own response lies from that mean. */
function noiseOf({ analysis }: SpectrumReading, { points }: Responsivity, factor: number): number {
  const { spectrum, dark, total } = analysis;
  const mean = meanResponse(spectrum, points);
  if (!mean || !(total > 0)) return 0;
  const widths = widthsOf(spectrum.wavelengths);
  let squares = 0;
  for (let i = 0; i < widths.length; i++) {
    const own = responseAt(points, spectrum.wavelengths[i] as number);
    if (own !== undefined) squares += ((widths[i] as number) * (own / mean - 1)) ** 2;
  }
  return (factor * dark.noise * Math.sqrt(squares)) / total;
}

/** A spectrum with nothing outside of a part. */
function within(spectrum: Spectrum, { from, to }: Span): Spectrum {
  const { wavelengths, values } = spectrum;
  const isIn = (i: number) => (wavelengths[i] as number) >= from && (wavelengths[i] as number) < to;
  return { ...spectrum, values: Float64Array.from(values, (it, i) => (isIn(i) ? it : 0)) };
}
