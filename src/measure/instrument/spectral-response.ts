import type { BudgetComponent, Figure, Unassessed } from '../figure.ts';
import type { Statement } from '../statement.ts';
import { typeB } from '../uncertainty.ts';
import type { Instrument } from './instrument.ts';

declare module '../statement.ts' {
  interface StatementData {
    'spectral-response': { band?: Band };
    /** The error as fraction of the band's light, and how much of the light that is. */
    'spectral-as-stated': { band: Band; error: number; shares: BandShares };
    'spectral-not-stated': { bands: readonly Band[]; instrument: string };
  }
}

/** The two bands in which panels shine. */
export type Band = 'red' | 'nearInfrared';

/**
 * How much of the light that was read lies in each band, as fractions. Where that is not known, each band counts for
 * all of it, which is the cautious end.
 */
export type BandShares = Readonly<Record<Band, number>>;

/** How the light of a mode is shared out, and what a meter's readings of it are multiplied by. */
export interface ModeLight extends BandShares {
  /** Spectral mismatch correction factor of the meter that read it; left out where nothing is corrected. */
  readonly mismatch?: Figure;
  /** Why nothing is corrected, of light whose spectrum was taken. */
  readonly uncorrected?: Statement;
}

/** Red alone was on. */
export const RED_ALONE: BandShares = { red: 1, nearInfrared: 0 };
/** Near-infrared alone was on. */
export const NEAR_INFRARED_ALONE: BandShares = { red: 0, nearInfrared: 1 };
/** Both were on, and nothing says how the light is shared out. */
export const SHARES_UNKNOWN: ModeLight = { red: 1, nearInfrared: 1 };

/** Shares of the bands with both channels on, from the peaks of each alone; unknown without both. */
export function bandShares(red: number | undefined, nearInfrared: number | undefined): BandShares {
  if (red === undefined || nearInfrared === undefined || !(red + nearInfrared > 0)) return SHARES_UNKNOWN;
  return { red: red / (red + nearInfrared), nearInfrared: nearInfrared / (red + nearInfrared) };
}

const BANDS: ReadonlyArray<{ band: Band; key: string }> = [
  { band: 'red', key: 'red' },
  { band: 'nearInfrared', key: 'near-infrared' },
];

/**
 * What an instrument misreads because its sensor does not answer to every wavelength alike. One error a band for all that
 * it ever read: another calibration of the same sensor does not change it. A reading that is corrected for it has the
 * correction's errors in its place.
 *
 * @param value in the canonical unit; 1 gives relative contributions
 */
export function spectralComponents(instrument: Instrument, value: number, light: ModeLight): BudgetComponent[] {
  const { mismatch } = light;
  if (mismatch) {
    return mismatch.budget.map((it) => ({ ...it, contribution: (it.contribution / mismatch.value) * value }));
  }
  return bandComponents(instrument, value, { red: light.red, nearInfrared: light.nearInfrared });
}

/** The errors that the instrument's file states for each band. */
export function bandComponents(instrument: Instrument, value: number, shares: BandShares): BudgetComponent[] {
  return BANDS.flatMap(({ band, key }): BudgetComponent[] => {
    const error = instrument.spectralResponse?.[band];
    const share = shares[band];
    if (!error || share === 0) return [];
    return [
      {
        source: typeB({
          key: `${instrument.id}/spectral-${key}`,
          what: { code: 'spectral-response', band },
          distribution: 'normal',
          evaluation: { code: 'spectral-as-stated', band, error, shares },
        }),
        contribution: error * share * value,
      },
    ];
  });
}

/** Told where a band was read for which the instrument's file states no error. */
export function missingSpectral(instrument: Instrument, shares: ModeLight): Unassessed[] {
  if (shares.mismatch) return shares.mismatch.unassessed;
  const silent = BANDS.filter(({ band }) => shares[band] > 0 && instrument.spectralResponse?.[band] === undefined);
  if (silent.length === 0) return [];
  const bands = silent.map((it) => it.band);
  return [
    {
      what: { code: 'spectral-response' },
      reason: { code: 'spectral-not-stated', bands, instrument: instrument.name },
    },
  ];
}
