import { type Figure, type FigureOrGap, gap, isFigure } from '../figure.ts';
import { identityOf } from '../metrics.ts';
import { number } from '../numbers.ts';
import { makeFigure, productFigure, rectangular, typeB } from '../uncertainty.ts';
import { partSum } from './analysis.ts';
import { mostBeyond } from './beyond-reach.ts';
import { powerKnowledge } from './budget.ts';
import type { SpectrumReading } from './reading.ts';
import type { Span } from './spectrum.ts';

declare module '../statement.ts' {
  interface StatementData {
    'infrared-beyond-instrument': object;
    /** Up to where the instrument sees, nm; the most that lies beyond, mW/cm². */
    'infrared-beyond-bounded': { to: number; most: number };
    /** The instrument does not see the band, or not from its start on, nm. */
    'infrared-not-seen': { from: number; to: number };
  }
}

/** The band of the infrared limit of cornea and lens, nm (IEC 62471:2006, 4.3.7, from secondary sources). */
export const INFRARED_BAND: Span = { from: 780, to: 3000 };

const METRIC = 'infrared-sum';

/**
 * Irradiance from 780 nm to 3000 nm as a spectrum has it. What lies beyond the end of the instrument's range is not counted
 * in; the most that it may be is in the budget, as an even chance either way, and is told beside the figure.
 *
 * Of a spectrum that is not calibrated in power the share of the band is taken, of a broadband reading of the same light.
 *
 * @param broadband reading of the same mode, times the meter's mismatch factor where that is known
 */
export function infraredSum(reading: SpectrumReading, broadband: FigureOrGap | undefined): FigureOrGap {
  const { analysis, session, path, scale } = reading;
  const { reach, total } = analysis;
  if (reach.from > INFRARED_BAND.from || reach.to <= INFRARED_BAND.from) {
    return gap(METRIC, { code: 'infrared-not-seen', from: reach.from, to: reach.to });
  }
  if (analysis.faults.flat) return gap(METRIC, { code: 'spectrum-full' });
  const [cut] = analysis.faults.cut.filter(({ end }) => end === 'long');
  if (cut) return gap(METRIC, { code: 'spectrum-cut-off', at: cut.at });
  if (scale === 'counts') return gap(METRIC, { code: 'spectrum-raw-counts' });
  if (!(total > 0)) return gap(METRIC, { code: 'spectrum-without-light' });
  const sum = partSum(analysis, INFRARED_BAND);
  const identity = { ...identityOf(METRIC, session), basis: 'derived' as const };
  if (scale === 'irradiance') {
    const most = mostBeyond(analysis, INFRARED_BAND.to);
    return makeFigure(
      {
        ...identity,
        basis: 'measured',
        inputs: [path],
        notes: [{ code: 'infrared-beyond-bounded', to: reach.to, most }],
        calculation: `E = ∫ S dλ, ${INFRARED_BAND.from}–${number(reach.to)} nm = ${number(sum.value)} mW/cm²`,
      },
      sum.value,
      powerKnowledge(reading, METRIC, sum, [beyondComponent(session, reach.to, most)]),
    );
  }
  if (!broadband || !isFigure(broadband)) return gap(METRIC, { code: 'spectrum-relative' });
  return ofBroadband(reading, broadband, sum.value / total);
}

/** A relative spectrum says how much of a broadband reading lies in the band. */
function ofBroadband(reading: SpectrumReading, broadband: Figure, share: number): Figure {
  const { analysis, session, path, instrument } = reading;
  const inBand = Math.min(1, Math.max(0, share));
  // The relative spectrum's unit, by which its own bound beyond the range becomes one of irradiance.
  const scaled = broadband.value / analysis.total;
  const most = mostBeyond({ ...analysis, ...scaledBy(analysis, scaled) }, INFRARED_BAND.to);
  const identity = {
    ...identityOf(METRIC, session),
    basis: 'derived' as const,
    notes: [{ code: 'infrared-beyond-bounded', to: analysis.reach.to, most } as const],
    calculation: `E = ${number(inBand)} × ${number(broadband.value)} mW/cm² = ${number(inBand * broadband.value)} mW/cm²`,
  };
  const product = productFigure(identity, [{ figure: broadband, power: 1 }], inBand);
  const inputs = [broadband.id, path];
  if (product.standardUncertainty === null) return { ...product, inputs };
  const shape = (instrument?.powerError ?? 0) * inBand * (1 - inBand) * broadband.value;
  const more = [
    beyondComponent(session, analysis.reach.to, most),
    ...(shape > 0 ? [shapeComponent(reading, shape)] : []),
  ];
  const { flags, carriedOver, unassessed } = product;
  return {
    ...makeFigure({ ...identity, inputs }, product.value, { budget: [...product.budget, ...more], unassessed }),
    flags,
    ...(carriedOver && { carriedOver }),
  };
}

/** One part of the spectrum may be read too high against the rest. */
function shapeComponent({ session, instrument }: SpectrumReading, contribution: number) {
  return {
    source: typeB({
      key: `${session}/infrared-shape`,
      what: { code: 'spectrum-shape', instrument: instrument?.name ?? '' },
      distribution: 'normal',
      evaluation: { code: 'spectrum-power-stated', error: instrument?.powerError ?? 0 },
    }),
    contribution,
  };
}

function scaledBy({ spectrum, dark }: SpectrumReading['analysis'], by: number) {
  return {
    spectrum: { ...spectrum, values: Float64Array.from(spectrum.values, (it) => it * by) },
    dark: { ...dark, noise: dark.noise * by, offsetError: dark.offsetError * by },
  };
}

function beyondComponent(session: string, to: number, most: number) {
  return {
    source: typeB({
      key: `${session}/infrared-beyond`,
      what: { code: 'infrared-beyond-instrument' },
      distribution: 'rectangular',
      evaluation: { code: 'infrared-beyond-bounded', to, most },
    }),
    contribution: rectangular(most),
  };
}
