import { statedQuantities } from '../../../content/rules/stated-quantities.ts';
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
  return [...content.instruments.values()].flatMap(({ source }) =>
    statedQuantities(source).flatMap(({ kind, of }) => {
      const least = LEAST_RELATIVE[kind];
      if (least === undefined) return [];
      return of('calibrations', '*', 'relative').flatMap(({ value: relative, path }) => {
        if (typeof relative !== 'number' || relative <= 0 || relative >= least) return [];
        return [
          warningAt(source, path, {
            severity: 'doubt',
            check: 'calibration-fraction',
            text: `A calibration of ${relative} % is better than meters for ${kind} reach, and makes every interval that rests on it too narrow. As a fraction it would be ${rounded(100 * relative, 4)} %.`,
            hint: `the field is in %: if a fraction was typed, write ${rounded(100 * relative, 4)}`,
          }),
        ];
      });
    }),
  );
}
