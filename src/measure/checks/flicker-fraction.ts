import type { Check, InstrumentUse, RaisedFlag } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** By which limit of its display the instrument could not have shown that; without a name where none is named. */
    'flicker-odd': {
      percent: number;
      instrument: string | undefined;
      limit: 'lowest' | 'step';
      limitPercent: number;
    };
    /** What to write if a fraction was typed, and if the display showed nothing; %. */
    'percent-for-fraction': { percent: number; lowest: number };
  }
}

/** Step of a flicker instrument's display where none is named, %. Our own choice. */
export const USUAL_STEP = 0.1;

/**
 * A value under 1 % that the instrument could not have shown: under its lowest reading, or finer than its step. A true
 * small percentage is not held up.
 */
export function looksLikeFraction(value: number, { lowest, step = USUAL_STEP }: InstrumentUse): boolean {
  if (!(value > 0 && value < 1)) return false;
  const steps = value / step;
  const isFiner = step > 0 && Math.abs(steps - Math.round(steps)) > 1e-6;
  return isFiner || (lowest !== undefined && value < lowest * (1 - 1e-9));
}

/** Flicker typed as a fraction: 0.14 for 14 %. */
export const flickerFraction: Check = {
  id: 'flicker-fraction',
  run: ({ instruments, figure }) =>
    instruments
      .filter((instrument) => instrument.kind === 'flicker')
      .flatMap((instrument) =>
        instrument.metrics.flatMap((metric): RaisedFlag[] => {
          const it = figure(metric);
          // What comes from a record of the light was on no display.
          const isTyped = !it?.inputs.some((path) => path.includes('/waveforms.'));
          if (!it || !isTyped || it.bound || !looksLikeFraction(it.value, instrument)) return [];
          const { name, lowest, step = USUAL_STEP } = instrument;
          const isUnder = lowest !== undefined && it.value < lowest;
          return [
            {
              severity: 'doubt',
              finding: {
                code: 'flicker-odd',
                percent: it.value,
                instrument: name,
                limit: isUnder ? 'lowest' : 'step',
                limitPercent: isUnder ? lowest : step,
              },
              hint: { code: 'percent-for-fraction', percent: 100 * it.value, lowest: lowest ?? USUAL_STEP },
              concerns: [metric],
            },
          ];
        }),
      ),
};
