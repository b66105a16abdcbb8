import type { BudgetComponent, Unassessed } from '../figure.ts';
import type { Instrument } from './instrument.ts';

/** The two bands in which panels shine. */
export type Band = 'red' | 'nearInfrared';

/**
 * How much of the light that was read lies in each band, as fractions. Where that is not known, each band counts for
 * all of it, which is the cautious end.
 */
export type BandShares = Readonly<Record<Band, number>>;

/** Red alone was on. */
export const RED_ALONE: BandShares = { red: 1, nearInfrared: 0 };
/** Near-infrared alone was on. */
export const NEAR_INFRARED_ALONE: BandShares = { red: 0, nearInfrared: 1 };
/** Both were on, and nothing says how the light is shared out. */
export const SHARES_UNKNOWN: BandShares = { red: 1, nearInfrared: 1 };

/** Shares of the bands with both channels on, from the peaks of each alone; unknown without both. */
export function bandShares(red: number | undefined, nearInfrared: number | undefined): BandShares {
  if (red === undefined || nearInfrared === undefined || !(red + nearInfrared > 0)) return SHARES_UNKNOWN;
  return { red: red / (red + nearInfrared), nearInfrared: nearInfrared / (red + nearInfrared) };
}

const BANDS: ReadonlyArray<{ band: Band; key: string; name: string }> = [
  { band: 'red', key: 'red', name: 'red' },
  { band: 'nearInfrared', key: 'near-infrared', name: 'near-infrared' },
];

/**
 * What a meter misreads because its sensor does not answer to every wavelength alike. One error a band for all that
 * the meter ever read: another calibration of the same sensor does not change it.
 *
 * @param value in the canonical unit; 1 gives relative contributions
 */
export function spectralComponents(instrument: Instrument, value: number, shares: BandShares): BudgetComponent[] {
  return BANDS.flatMap(({ band, key, name }): BudgetComponent[] => {
    const error = instrument.spectralResponse?.[band];
    const share = shares[band];
    if (!error || share === 0) return [];
    return [
      {
        source: {
          key: `${instrument.id}/spectral-${key}`,
          what: `Spectral response (${name})`,
          type: 'B',
          distribution: 'normal',
          degreesOfFreedom: Number.POSITIVE_INFINITY,
          evaluation: `${tidy(100 * error)} % of the ${name}, from the instrument file, normal; ${partOf(share, shares)}`,
        },
        contribution: error * share * value,
      },
    ];
  });
}

/** Said where a band was read for which the meter's file states no error. */
export function missingSpectral(instrument: Instrument, shares: BandShares): Unassessed[] {
  const silent = BANDS.filter(({ band }) => shares[band] > 0 && instrument.spectralResponse?.[band] === undefined);
  if (silent.length === 0) return [];
  const bands = silent.map((it) => it.name).join(' and ');
  return [{ what: 'Spectral response', reason: `no error in ${bands} is stated for the ${instrument.name}` }];
}

function partOf(share: number, { red, nearInfrared }: BandShares): string {
  if (share !== 1) return `${tidy(100 * share)} % of the light by the peaks of each channel alone`;
  return red === nearInfrared ? 'taken for all of the light, whose shares are not known' : 'all of the light';
}

const tidy = (value: number) => Number(value.toPrecision(3));
