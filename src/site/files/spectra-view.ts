import type { Panel } from '../../content/schema/panel.ts';
import { madeOf } from '../../ledger/files/file-maker.ts';
import type { DrawnSpectrum } from '../../ledger/files/spectra-figures.ts';
import type { SessionEntry } from '../../ledger/ledger.ts';
import { fixed, measuredText } from '../../words/format.ts';
import { rounded } from '../../words/rounded.ts';
import { auditOutcome, auditWords, nmText, peaksWords } from '../../words/spectrum-words.ts';
import type { FilePlot } from './file-plot.ts';
import { spectrumPlot } from './spectrum-plot.ts';

/** The spectra of a session as pages show them. */
export interface SpectraSection {
  /** What was found, in sentences. */
  answer: string;
  plot: FilePlot;
  /** What the lines are. */
  caption: string;
  claims: Array<{ claimed: string; found: string; outcome: string; claimedShare: string; share: string }>;
  extra: Array<{ found: string; share: string }>;
  peaks: Array<{ mode: string; peak: string; width: string; centroid: string; share: string; parts: string }>;
  /** From where to where each file goes, and what was taken off. */
  remarks: string[];
}

/** The channels as a sentence begins with them. */
export const MODE_NAMES: Readonly<Record<DrawnSpectrum['mode'], string>> = {
  red: 'Red alone',
  nearInfrared: 'Near-infrared alone',
  combined: 'Both channels',
};

/** What a session's spectra tell; undefined where it has none. */
export function spectraSection(session: SessionEntry, panel: Panel): SpectraSection | undefined {
  const made = madeOf(session.made, 'spectra');
  if (!made) return undefined;
  const { spectra, audit } = made.view;
  const shown = shownSpectra(spectra);
  const claimed = (panel.claims?.wavelengths ?? []).map((it) => it.peak.value);
  return {
    answer: audit ? auditWords(audit) : peaksWords(shown.flatMap((it) => it.peaks)),
    plot: spectrumPlot(shown, claimed),
    caption: captionOf(shown, claimed.length > 0),
    claims: (audit?.claims ?? []).map((it) => ({
      claimed: nmText(it.claimed.peak),
      found: it.found ? wavelengthText(it.found.wavelength, it.found.uncertainty) : '—',
      outcome: auditOutcome(it, audit?.tolerance.wavelength ?? 0),
      claimedShare: it.claimed.share === undefined ? '' : `${rounded(it.claimed.share)} % of it`,
      share: shareText(it.found?.share, it.found?.shareUncertainty),
    })),
    extra: (audit?.extra ?? []).map((it) => ({
      found: wavelengthText(it.wavelength, it.uncertainty),
      share: shareText(it.share, it.shareUncertainty),
    })),
    peaks: spectra.flatMap((it) =>
      it.peaks.map((peak) => ({
        mode: MODE_NAMES[it.mode],
        peak: `${fixed(peak.wavelength, 1)} nm`,
        width: peak.width ? `${fixed(peak.width.value, 1)} nm` : 'runs into its neighbour',
        centroid: `${fixed(peak.centroid, 1)} nm`,
        share: `${rounded(100 * peak.share)} %`,
        parts: peak.parts.map((part) => nmText(part.wavelength)).join(', '),
      })),
    ),
    remarks: spectra.map(remark),
  };
}

/** Those that are drawn: both channels at once show all the light; else each alone. */
export function shownSpectra(spectra: readonly DrawnSpectrum[]): readonly DrawnSpectrum[] {
  const both = spectra.filter((it) => it.mode === 'combined');
  return both.length > 0 ? both : spectra;
}

function captionOf(shown: readonly DrawnSpectrum[], hasClaims: boolean): string {
  const [first] = shown;
  const what = shown.length === 1 && first ? MODE_NAMES[first.mode] : 'Each channel alone';
  return `${what}; broken from 700 nm on, where nobody sees it.${hasClaims ? ' Upright lines: claimed wavelengths, nm.' : ''}`;
}

function remark({ mode, reach, scale, darkShare }: DrawnSpectrum): string {
  const unit = { irradiance: 'calibrated in power', relative: 'relative values', counts: 'raw counts' }[scale];
  const dark =
    darkShare === 0
      ? 'no dark level taken off'
      : `a dark level of ${rounded(100 * darkShare, 2)} % of the highest value taken off`;
  return `${MODE_NAMES[mode]}: ${rounded(reach.from, 4)}–${rounded(reach.to, 4)} nm, ${unit}, ${dark}.`;
}

/** The 95 % interval's half, as whole pages have it. */
const wavelengthText = (nm: number, u: number) => `${measuredText(nm, 2 * u)} nm`;

function shareText(share: number | undefined, u: number | undefined): string {
  if (share === undefined) return '';
  return u === undefined ? `${fixed(share, 1)} % of the light` : `${measuredText(share, 2 * u)} % of the light`;
}
