import { fields } from '../../../content/read/fields.ts';
import { calibrationsOf } from '../../../content/rules/calibrations.ts';
import type { InstrumentKind } from '../../../content/schema/instrument.ts';
import type { Loaded } from '../../../ledger/load-ledger.ts';
import { rounded } from '../../../words/rounded.ts';
import { type Warning, warningAt } from '../warning.ts';

/**
 * Relative uncertainties, %, under which no calibration of a bench instrument comes, but a fraction typed for a percentage
 * does: 0.04 for 4 %. Our own choice. Lengths, wavelengths and temperatures are known far better, and levels in dB
 * have no share.
 */
export const LEAST_RELATIVE: Partial<Record<InstrumentKind, number>> = {
  irradiance: 0.2,
  magnetic: 0.2,
  electric: 0.2,
  radio: 0.2,
  flicker: 0.2,
  mains: 0.05,
};

/** Calibrations that are better than any of their kind. */
export function calibrationFractions({ content }: Loaded): Warning[] {
  return [...content.instruments.values()].flatMap(({ data, source }) => {
    const least = LEAST_RELATIVE[data.measures];
    if (least === undefined) return [];
    return calibrationsOf(source).flatMap(({ value, path }) =>
      fields(value, ['relative'], path).flatMap(({ value: relative, path: at }) => {
        if (typeof relative !== 'number' || relative <= 0 || relative >= least) return [];
        return [
          warningAt(source, at, {
            severity: 'doubt',
            check: 'calibration-fraction',
            text: `A calibration of ${relative} % is better than meters for ${data.measures} reach, and makes every interval that rests on it too narrow. As a fraction it would be ${rounded(100 * relative, 4)} %.`,
            hint: `the field is in %: if a fraction was typed, write ${rounded(100 * relative, 4)}`,
          }),
        ];
      }),
    );
  });
}
