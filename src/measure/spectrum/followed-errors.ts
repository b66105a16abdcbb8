import type { BudgetComponent } from '../figure.ts';
import { calibrationComponents } from '../instrument/instrument.ts';
import { typeB } from '../uncertainty.ts';
import { darkComponents } from './budget.ts';
import type { SpectrumReading } from './reading.ts';
import type { Spectrum } from './spectrum.ts';

/** A step of wavelength over which a value is followed, nm. */
const STEP = 0.5;

/**
 * What a spectrum's own errors make of a value that is worked out of its shape, each followed through it: the spectrometer's
 * wavelengths, red read too high against the rest, the dark level. Under the keys that its other figures have them by.
 *
 * @param at a wavelength of the light, nm, for what is stated of wavelengths in per cent
 * @param follow must not depend on the height of the spectrum
 */
export function followedErrors(
  reading: SpectrumReading,
  at: number,
  follow: (light: Spectrum) => number,
): BudgetComponent[] {
  const { analysis, instrument, edges } = reading;
  const { spectrum, dark } = analysis;
  const value = follow(spectrum);
  const perNanometre = (follow(shifted(spectrum, STEP)) - follow(shifted(spectrum, -STEP))) / (2 * STEP);
  const wavelengths = instrument ? calibrationComponents(instrument, at) : [];
  const error = instrument?.powerError;
  return [
    ...wavelengths.map((it) => ({ ...it, contribution: perNanometre * it.contribution })),
    ...(instrument && error !== undefined
      ? [
          {
            source: typeB({
              key: `${instrument.id}@${instrument.calibrationDate}/spectral-shape-red`,
              what: { code: 'spectrum-shape', instrument: instrument.name },
              distribution: 'normal',
              evaluation: { code: 'spectrum-power-stated', error },
            }),
            contribution: follow(brighterIn(spectrum, edges.red, 1 + error)) - value,
          },
        ]
      : []),
    ...darkComponents(reading, follow(raised(spectrum, dark.offsetError)) - value),
  ];
}

const shifted = (spectrum: Spectrum, by: number): Spectrum => ({
  ...spectrum,
  wavelengths: Float64Array.from(spectrum.wavelengths, (nm) => nm + by),
});

const raised = (spectrum: Spectrum, by: number): Spectrum => ({
  ...spectrum,
  values: Float64Array.from(spectrum.values, (it) => it + by),
});

/** A spectrum with a part of it times a factor. */
export function brighterIn(spectrum: Spectrum, { from, to }: { from: number; to: number }, by: number): Spectrum {
  const { wavelengths, values } = spectrum;
  const isIn = (i: number) => (wavelengths[i] as number) >= from && (wavelengths[i] as number) < to;
  return { ...spectrum, values: Float64Array.from(values, (it, i) => (isIn(i) ? it * by : it)) };
}
