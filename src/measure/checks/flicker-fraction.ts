import { type Check, type InstrumentUse, words } from './check.ts';

/** Step of a flicker meter's display where none is named, %. Our own choice. */
export const USUAL_STEP = 0.1;

/**
 * A value under 1 % that the meter could not have shown: under its lowest reading, or finer than its step. A true
 * small percentage is not held up.
 */
export function looksLikeFraction(value: number, { lowest, step = USUAL_STEP }: InstrumentUse): boolean {
  if (!(value > 0 && value < 1)) return false;
  const steps = value / step;
  const isFiner = step > 0 && Math.abs(steps - Math.round(steps)) > 1e-6;
  return isFiner || (lowest !== undefined && value < lowest * (1 - 1e-9));
}

export const flickerFraction: Check = {
  id: 'flicker-fraction',
  guards: 'Flicker typed as a fraction: 0.14 for 14 %.',
  run: ({ instruments, figure }) =>
    instruments
      .filter((instrument) => instrument.kind === 'flicker')
      .flatMap((instrument) =>
        instrument.metrics.flatMap((metric) => {
          const it = figure(metric);
          if (!it || it.bound || !looksLikeFraction(it.value, instrument)) return [];
          const shows =
            instrument.lowest !== undefined && it.value < instrument.lowest
              ? `shows nothing under ${words(instrument.lowest)} %`
              : `goes in steps of ${words(instrument.step ?? USUAL_STEP)} %`;
          return [
            {
              check: 'flicker-fraction',
              severity: 'doubt' as const,
              finding: `Flicker of ${words(it.value)} % is odd: the ${instrument.name ?? 'usual meter'} ${shows}. As a fraction it would be ${words(100 * it.value)} %.`,
              hint: `the field is in percent: if a fraction was typed, write \`${words(100 * it.value)} %\`; if the display showed nothing, write \`<${words(instrument.lowest ?? USUAL_STEP)} %\``,
              concerns: [metric],
            },
          ];
        }),
      ),
};
