import type { Flag } from '../figure.ts';
import type { MetricId } from '../metrics.ts';
import type { Mode } from '../modes.ts';
import type { SpectrumReading } from './reading.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** The sensor was full between two wavelengths, nm. */
    'spectrum-flat-top': { mode: Mode; from: number; to: number };
    /** Light goes on at an end of the range, nm; `percent` of the highest value is still there. */
    'spectrum-cut': { mode: Mode; at: number; percent: number };
    'spectrum-negative': { mode: Mode; percent: number };
    'spectrum-dark-not-seen': { mode: Mode };
    'spectrum-no-peak': { mode: Mode };
    'take-less-light': object;
    'take-dark-reading': object;
    'take-wider-range': object;
  }
}

type Raised = Omit<Flag, 'check' | 'at'>;

/** What makes a spectrum's figures wrong as it was taken. @param field where the session names the file */
export function spectrumFaultFlags({ mode, analysis }: SpectrumReading, field: readonly PropertyKey[]): Flag[] {
  const { faults, dark, peaks } = analysis;
  const concerns: readonly MetricId[] = [
    `spectrum-irradiance-${mode}`,
    `red-share-${mode}`,
    `near-infrared-share-${mode}`,
    `rest-share-${mode}`,
  ];
  const widths: readonly MetricId[] =
    mode === 'combined' ? [] : [`wavelength-${mode}`, `fwhm-${mode}`, `centroid-${mode}`];
  const raised: Raised[] = [];
  if (faults.flat) {
    raised.push({
      severity: 'doubt',
      finding: { code: 'spectrum-flat-top', mode, ...faults.flat },
      hint: { code: 'take-less-light' },
      concerns: [...concerns, ...widths],
    });
  }
  for (const { at, share } of faults.cut) {
    raised.push({
      severity: 'doubt',
      finding: { code: 'spectrum-cut', mode, at, percent: 100 * share },
      hint: { code: 'take-wider-range' },
      concerns,
    });
  }
  if (faults.negative !== undefined) {
    raised.push({
      severity: 'doubt',
      finding: { code: 'spectrum-negative', mode, percent: -100 * faults.negative },
      hint: { code: 'take-dark-reading' },
      concerns,
    });
  }
  if (peaks.length === 0) {
    raised.push({
      severity: 'doubt',
      finding: { code: 'spectrum-no-peak', mode },
      hint: { code: 'take-dark-reading' },
      concerns: [...concerns, ...widths],
    });
  } else if (!dark.isKnown) {
    raised.push({
      severity: 'note',
      finding: { code: 'spectrum-dark-not-seen', mode },
      hint: { code: 'take-dark-reading' },
      concerns,
    });
  }
  return raised.map((it) => ({ check: 'spectrum-faults', ...it, at: ['session', ...field] }));
}
