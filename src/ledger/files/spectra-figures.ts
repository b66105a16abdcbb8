import type { Guide } from '../../content/schema/guide.ts';
import type { Panel } from '../../content/schema/panel.ts';
import type { ModeKey } from '../../content/schema/session.ts';
import { type FigureOrGap, figureFinder, isFigure } from '../../measure/figure.ts';
import { INFRARED_FROM_NM } from '../../measure/irradiance/claims.ts';
import { spectrumAgainstReading } from '../../measure/spectrum/against-reading.ts';
import type { SpectrumAnalysis } from '../../measure/spectrum/analysis.ts';
import { auditClaims, type ClaimsAudit } from '../../measure/spectrum/claims-audit.ts';
import { drawnRows } from '../../measure/spectrum/drawn-rows.ts';
import { spectrumFaultFlags } from '../../measure/spectrum/fault-flags.ts';
import { spectrumFigures } from '../../measure/spectrum/figures.ts';
import { infraredSum } from '../../measure/spectrum/infrared-sum.ts';
import { mismatchBeyondStated } from '../../measure/spectrum/mismatch-flag.ts';
import type { SpectrumReading } from '../../measure/spectrum/reading.ts';
import { wavelengthClaims } from '../../measure/spectrum/wavelength-claims.ts';
import { CLOSE, type DrawnSeries, drawnSeries } from './drawn-series.ts';
import type { FileMaker } from './file-maker.ts';
import { spectrumReadings, type TakenSpectrum } from './spectra-readings.ts';

declare module './file-maker.ts' {
  interface FileViews {
    spectra: SpectraView;
  }
}

/** A spectrum as pages draw it. */
export interface DrawnSpectrum extends Pick<SpectrumAnalysis, 'reach' | 'faults' | 'peaks'> {
  mode: ModeKey;
  /** Name of the file. */
  name: string;
  scale: SpectrumReading['scale'];
  /** nm and share of the highest value, shortest first. */
  rows: ReadonlyArray<readonly [nm: number, share: number]>;
  /** In its own unit, for who looks closer. */
  close: DrawnSeries;
  /** The highest value, mW/cm²/nm where it is calibrated in power. */
  highest: number;
  /** The level that was taken off, as share of the highest value; 0 where none was. */
  darkShare: number;
}

/** What pages show of a session's spectra. */
export interface SpectraView {
  /** In the order of the modes. */
  spectra: readonly DrawnSpectrum[];
  /** Undefined where the maker claims no wavelengths. */
  audit: ClaimsAudit | undefined;
}

/** Figures, claims and faults of the spectra of a session. */
export const spectraMaker: FileMaker<'spectra'> = {
  block: 'spectra',
  make(files, context) {
    const readings = spectrumReadings(files, context);
    const broadband = ({ mode }: SpectrumReading) =>
      context.typed.find((it) => it.metric === `peak-irradiance-${mode}`);
    const sums = readings.map(({ reading, isHere }) =>
      isHere && reading.mode !== 'red' ? infraredSum(reading, broadband(reading)) : undefined,
    );
    const audit = auditOf(readings, context.panel, context.guide);
    return {
      figures: [
        ...readings.flatMap(({ reading }) => spectrumFigures(reading)),
        ...context.modes.factors.values(),
        ...pickedSum(sums),
      ],
      view: { spectra: readings.map(drawn), audit },
      flags: (all) => {
        const figure = figureFinder(all);
        return [
          ...readings.flatMap(({ reading, file }) => spectrumFaultFlags(reading, file.field)),
          ...readings.flatMap(({ reading, isHere, file }) => {
            if (!isHere) return [];
            return spectrumAgainstReading(
              figure(`spectrum-irradiance-${reading.mode}`),
              broadband(reading),
              file.field,
            );
          }),
          ...readings.flatMap(({ key, reading, file }) =>
            mismatchBeyondStated(
              reading.mode,
              context.modes.bands[key],
              context.instrumentFor('irradiance'),
              file.field,
            ),
          ),
          ...(audit ? wavelengthClaims(audit) : []),
        ];
      },
    };
  },
};

const firstFigure = (...all: ReadonlyArray<FigureOrGap | undefined>): FigureOrGap | undefined =>
  all.find((it) => isFigure(it)) ?? all.find((it) => it !== undefined);

/** The sum with near-infrared alone on, as the limit's other readings are; that of both channels where there is none. */
function pickedSum(sums: ReadonlyArray<FigureOrGap | undefined>): FigureOrGap[] {
  const picked = firstFigure(...sums);
  return picked ? [picked] : [];
}

/**
 * Claims held against the spectrum with both channels on, which alone tells of all shares. Without one each channel's own
 * spectrum is asked for the claims of its side, and shares are not known.
 */
function auditOf(readings: readonly TakenSpectrum[], { claims }: Panel, guide: Guide): ClaimsAudit | undefined {
  const claimed = (claims?.wavelengths ?? []).map(({ peak, share }) => ({ peak: peak.value, share: share?.value }));
  const usable = readings.filter(({ reading }) => !reading.analysis.faults.flat && reading.analysis.peaks.length > 0);
  if (claimed.length === 0 || usable.length === 0) return undefined;
  const tolerance = { wavelength: guide.wavelengthTolerance.value, share: guide.shareTolerance.value };
  const audit = ({ reading }: TakenSpectrum, own: typeof claimed, isWhole: boolean) => {
    const { instrument, scale, analysis } = reading;
    const response = isWhole && scale !== 'counts' ? instrument?.powerError : undefined;
    return auditClaims(own, analysis, tolerance, { wavelength: instrument?.calibrationAbsolute ?? 0, response });
  };
  const both = usable.find((it) => it.key === 'combined');
  if (both) return audit(both, claimed, true);
  const parts = usable.map((it) => {
    const own = claimed.filter(({ peak }) => peak >= INFRARED_FROM_NM === (it.key === 'nearInfrared'));
    return audit(it, own, false);
  });
  return { claims: parts.flatMap((it) => it.claims), extra: parts.flatMap((it) => it.extra), tolerance };
}

function drawn({ file, key, reading: { analysis, scale } }: TakenSpectrum): DrawnSpectrum {
  const { reach, faults, peaks, dark, spectrum } = analysis;
  const { rows, highest } = drawnRows(spectrum);
  const close = drawnSeries({ times: spectrum.wavelengths, values: spectrum.values }, CLOSE);
  const darkShare = highest > 0 ? dark.offset / highest : 0;
  return { mode: key, name: file.name, scale, rows, close, highest, reach, faults, peaks, darkShare };
}
