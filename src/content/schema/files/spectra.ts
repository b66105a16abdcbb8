import { z } from 'zod';
import { count, quantity, text } from '../fields.ts';
import { fileEntry } from './file-entry.ts';

/** Endings of tables of spectra, and of CGATS texts. */
export const SPECTRUM_ENDINGS = ['.csv', '.tsv', '.txt', '.dat', '.asc', '.cgats', '.it8', '.sp'];

/** Units of values that can be written where a file does not say its own. */
export const SPECTRAL_UNITS = ['W/m2/nm', 'mW/m2/nm', 'mW/cm2/nm', 'uW/cm2/nm', 'relative', 'counts'] as const;

const options = {
  unit: z
    .enum(SPECTRAL_UNITS, { error: () => `one of: ${SPECTRAL_UNITS.join(', ')}` })
    .optional()
    .describe(
      'Unit of its values, where the file does not say it: relative where the sensor’s own response has been taken out, counts where it has not.',
    ),
  column: count('Which column holds the values, where there are several; the first one is 1.', 1000, 2).optional(),
  sample: text(
    'Which sample of a CGATS text is meant, where it holds several: its SAMPLE_ID or name.',
    'A1',
  ).optional(),
  distance: quantity(
    'length',
    'From how far it was taken; the session’s distance where left out.',
    { positive: true, max: 1000 },
    '6 in',
  ).optional(),
};

const spectrum = (meaning: string, example: string) =>
  fileEntry(meaning, example, SPECTRUM_ENDINGS, options).optional();

/** Spectra of a session, a file a mode. */
export const spectra = z
  .strictObject({
    red: spectrum('Spectrum with red alone on.', 'plover-red.csv'),
    nearInfrared: spectrum('Spectrum with near-infrared alone on.', 'plover-infrared.csv'),
    combined: spectrum('Spectrum with both channels on.', 'plover-both.csv'),
  })
  .refine((it) => Object.values(it).some((entry) => entry !== undefined), {
    error: 'a file: red, nearInfrared or combined',
  })
  .meta({ anyOf: [{ required: ['red'] }, { required: ['nearInfrared'] }, { required: ['combined'] }] })
  .describe(
    'Spectra as the spectrometer wrote them, taken where that mode reads highest: a table of wavelengths and values, or CGATS text (ISO 28178).',
  );

export type SpectrumEntry = NonNullable<z.output<typeof spectra>['red']>;
