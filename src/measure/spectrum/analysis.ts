import { aboveDark, type Dark, darkOf } from './dark.ts';
import { faultsOf, type SpectrumFaults } from './faults.ts';
import { type Peak, peaksOf } from './peaks.ts';
import { areaOver, reachOf, type Span, type Spectrum, sumsOver, widthsOf } from './spectrum.ts';

/** A spectrum with all that is found in it. */
export interface SpectrumAnalysis {
  /** Above its dark level. */
  spectrum: Spectrum;
  reach: Span;
  dark: Dark;
  faults: SpectrumFaults;
  /** Shortest wavelength first. */
  peaks: readonly Peak[];
  /** All of its light, in its unit times nm: mW/cm² where it is calibrated in power. */
  total: number;
}

/** Finds dark level, faults and peaks of a spectrum as it was read. */
export function analysed(read: Spectrum): SpectrumAnalysis {
  const dark = darkOf(read);
  const spectrum = aboveDark(read, dark);
  const reach = reachOf(spectrum);
  return {
    spectrum,
    reach,
    dark,
    faults: faultsOf(spectrum, dark),
    peaks: peaksOf(spectrum, dark),
    total: areaOver(spectrum, reach),
  };
}

/** The peak whose top is highest; undefined where there is none. */
export function highestPeak({ peaks }: SpectrumAnalysis): Peak | undefined {
  return peaks.reduce<Peak | undefined>((best, it) => (best && best.height >= it.height ? best : it), undefined);
}

/** A sum over a part of a spectrum, with what noise and dark level may add to it: standard uncertainties in its unit. */
export interface PartSum {
  value: number;
  noise: number;
  /** Signed alike for all parts of one spectrum: a dark level that is too high takes from each. */
  dark: number;
}

/** The light of a part of a spectrum, in its unit times nm. */
export function partSum({ spectrum, dark, reach }: SpectrumAnalysis, span: Span): PartSum {
  const [from, to] = [Math.max(span.from, reach.from), Math.min(span.to, reach.to)];
  const { area } = sumsOver(spectrum, { from, to });
  const widths = widthsOf(spectrum.wavelengths);
  let squares = 0;
  for (let i = 0; i < widths.length; i++) {
    const nm = spectrum.wavelengths[i] as number;
    if (nm >= from && nm <= to) squares += (widths[i] as number) ** 2;
  }
  return { value: area, noise: dark.noise * Math.sqrt(squares), dark: dark.offsetError * Math.max(0, to - from) };
}
