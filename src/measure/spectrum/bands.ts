import { type PartSum, partSum, type SpectrumAnalysis } from './analysis.ts';
import type { Span } from './spectrum.ts';

/** The parts that light is shared out to. */
export const BAND_NAMES = ['red', 'near-infrared', 'rest'] as const;
export type BandName = (typeof BAND_NAMES)[number];

/** Edges of the two bands, nm; what lies in neither is the rest. */
export interface BandEdges {
  red: Span;
  nearInfrared: Span;
}

/** Share of a band, 0 to 1, and what makes it uncertain, as standard uncertainties of the share. */
export interface BandShare {
  value: number;
  noise: number;
  dark: number;
  /** By how much it moves, relative, when the band is read too high against the others: 1 less the share. */
  others: number;
}

/**
 * Share of each band in all the light that the instrument saw. Below nought, from noise in the dark, it is told as
 * nought. Undefined where there is no light.
 *
 * With p the light of the band and t all of it, the share s = p / t moves with noise of the band by (1 - s) / t, and with
 * that of the rest by -s / t.
 */
export function bandShares(analysis: SpectrumAnalysis, edges: BandEdges): Record<BandName, BandShare> | undefined {
  const all = partSum(analysis, analysis.reach);
  if (!(all.value > 0)) return undefined;
  const red = partSum(analysis, edges.red);
  const nearInfrared = partSum(analysis, edges.nearInfrared);
  const rest: PartSum = {
    value: all.value - red.value - nearInfrared.value,
    noise: Math.sqrt(Math.max(0, all.noise ** 2 - red.noise ** 2 - nearInfrared.noise ** 2)),
    dark: all.dark - red.dark - nearInfrared.dark,
  };
  const share = (part: PartSum): BandShare => {
    const value = Math.min(1, Math.max(0, part.value / all.value));
    const others = Math.sqrt(Math.max(0, all.noise ** 2 - part.noise ** 2));
    return {
      value,
      noise: Math.hypot((1 - value) * part.noise, value * others) / all.value,
      dark: (part.dark - value * all.dark) / all.value,
      others: 1 - value,
    };
  };
  return { red: share(red), 'near-infrared': share(nearInfrared), rest: share(rest) };
}
