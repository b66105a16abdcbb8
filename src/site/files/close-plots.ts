import type { DrawnSeries } from '../../ledger/files/drawn-series.ts';
import { madeOf } from '../../ledger/files/file-maker.ts';
import type { SoundClipsView } from '../../ledger/files/sound-clips.ts';
import type { DrawnSpectrum } from '../../ledger/files/spectra-figures.ts';
import type { SweepView } from '../../ledger/files/sweep-figures.ts';
import type { WarmUpView } from '../../ledger/files/warm-up-figures.ts';
import type { WaveformView } from '../../ledger/files/waveform-figures.ts';
import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { INFRARED_FROM_NM } from '../../measure/irradiance/claims.ts';
import { rounded } from '../../words/rounded.ts';
import { nmText } from '../../words/spectrum-words.ts';
import { filesAddress } from '../shared/file-addresses.ts';
import { CLOSE_FORMAT, type CloseCurve, type ClosePlot } from './browser/close-plot.ts';
import { logIds } from './log-views.ts';
import { levelUnit } from './sound-plot.ts';
import { toneText } from './sound-words.ts';
import { MODE_NAMES, shownSpectra } from './spectra-view.ts';
import { spectrumSpan } from './spectrum-plot.ts';
import { waveformTime } from './waveform-log.ts';

/** A data file for who looks closer at a plot. */
export interface CloseFile {
  address: string;
  plot(): ClosePlot;
}

/** Where the data of a plot stand, by the anchor of its part of the page. */
export function closeAddress(slug: string, anchor: string): string {
  return `${filesAddress(slug)}plots/${anchor}.json`;
}

/** All that a panel's page of files has plots of. */
export function closeFiles({ slug, sessions, data }: PanelEntry): CloseFile[] {
  const claimed = (data.claims?.wavelengths ?? []).map((it) => it.peak.value);
  return sessions.flatMap((session) =>
    plotsOf(session, claimed).map(([anchor, plot]) => ({ address: closeAddress(slug, anchor), plot })),
  );
}

function plotsOf({ made, date }: SessionEntry, claimed: readonly number[]): Array<[string, () => ClosePlot]> {
  const ids = logIds(made, date);
  const spectra = madeOf(made, 'spectra')?.view.spectra;
  const warmUp = madeOf(made, 'warmUpLog')?.view;
  const sweeps = madeOf(made, 'sweeps')?.view ?? [];
  const waveforms = madeOf(made, 'waveforms')?.view ?? [];
  const sound = madeOf(made, 'soundClips')?.view;
  return [
    ...(spectra ? [[`spectra-${date}`, () => spectrumClose(shownSpectra(spectra), claimed)] as const] : []),
    ...(warmUp ? [[ids.warmUp, () => warmUpClose(warmUp)] as const] : []),
    ...sweeps.map((it, i) => [ids.sweep(i), () => sweepClose(it)] as const),
    ...waveforms.flatMap((it) => (it.close ? [[ids.waveform(it.mode), () => waveformClose(it)] as const] : [])),
    ...(sound?.close.on ? [[`clips-${date}`, () => soundClose(sound)] as const] : []),
  ].map(([anchor, plot]) => [anchor, plot]);
}

/** Digits that a reading of a meter keeps. */
const DIGITS = 5;

/** A series as a curve, places and readings in the units of the plot. */
function curve(
  series: DrawnSeries,
  name = '',
  { x = 1, y = 1, shift = 0, digits = DIGITS }: { x?: number; y?: number; shift?: number; digits?: number } = {},
): CloseCurve {
  const short = (value: number) => Number(value.toPrecision(digits));
  const low = series.low.map((it) => short(it * y + shift));
  const high = series.high.map((it) => short(it * y + shift));
  return {
    name,
    x: series.times.map((it) => Number((it * x).toPrecision(DIGITS))),
    y: low,
    ...(high.some((it, i) => it !== low[i]) && { high }),
  };
}

/** Decimals that tell a place from the next. */
function decimalsOf({ curves: [first] }: Pick<ClosePlot, 'curves'>): number {
  const x = first?.x ?? [];
  const step = ((x.at(-1) ?? 1) - (x[0] ?? 0)) / Math.max(1, x.length - 1);
  return Math.min(3, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
}

function spectrumClose(spectra: readonly DrawnSpectrum[], claimed: readonly number[]): ClosePlot {
  const isAbsolute = spectra.every((it) => it.scale === 'irradiance');
  const scale = (it: DrawnSpectrum) => (isAbsolute ? 1 : 100 / it.highest);
  const several = spectra.length > 1;
  const curves = spectra.map((it) => curve(it.close, several ? MODE_NAMES[it.mode] : '', { y: scale(it) }));
  const { from, to } = spectrumSpan(spectra, claimed);
  return {
    format: CLOSE_FORMAT,
    title: several ? 'The spectrum' : `The spectrum, ${MODE_NAMES[spectra[0]?.mode ?? 'combined'].toLowerCase()}`,
    x: { name: 'wavelength', unit: 'nm', decimals: decimalsOf({ curves }) },
    y: { name: 'light', unit: isAbsolute ? 'mW/cm²/nm' : '% of the highest', digits: 3 },
    view: [from, to],
    curves,
    unseenFrom: INFRARED_FROM_NM,
    uprights: claimed.map((nm) => ({ at: nm, text: `${rounded(nm)} claimed` })),
    tops: spectra.flatMap((it) =>
      it.peaks.map((peak) => ({ x: peak.wavelength, y: peak.height * scale(it), text: nmText(peak.wavelength) })),
    ),
    ...(spectra.some((it) => it.darkShare !== 0) && { note: 'The dark level is taken off.' }),
  };
}

const MINUTE = 60;

function warmUpClose({ close, warmUp, readings }: WarmUpView): ClosePlot {
  const curves = [curve(close, '', { x: 1 / MINUTE, y: 100 })];
  return {
    format: CLOSE_FORMAT,
    title: 'From cold',
    x: { name: 'since switching on', unit: 'min', decimals: decimalsOf({ curves }) },
    y: { name: 'light', unit: '%', digits: 4 },
    curves,
    levels: [{ at: 100, text: typeof warmUp.settled === 'string' ? 'last 15 min' : 'settled value' }],
    uprights: [
      ...(warmUp.settlingTime ? [{ at: warmUp.settlingTime.value / MINUTE, text: 'settled' }] : []),
      ...(readings ? [{ at: readings.time / MINUTE, text: 'readings begin' }] : []),
    ],
    note: 'The scale doesn’t begin at nought.',
  };
}

function sweepClose({ close, sweep, grid, mode }: SweepView): ClosePlot {
  const curves = [curve(close)];
  return {
    format: CLOSE_FORMAT,
    title: `${grid ? 'Grid in one go' : 'Sweep over the face'}, ${MODE_NAMES[mode].toLowerCase()}`,
    x: { name: 'time', unit: 's', decimals: decimalsOf({ curves }) },
    y: { name: 'irradiance', unit: 'mW/cm²', digits: 4, isFromNought: true },
    curves,
    tops: [
      ...(grid?.points ?? []).map((it, i) => ({ x: (it.from + it.to) / 2, y: it.mean, text: `point ${i + 1}` })),
      ...sweep.spikes.map((it) => ({ x: it.time, y: it.value, text: 'one sample' })),
    ],
  };
}

function waveformClose({ close, found, mode }: WaveformView): ClosePlot {
  const frequency = typeof found === 'string' || found.kind !== 'periodic' ? undefined : found.frequency?.value;
  const series = close ?? { times: [], low: [], high: [] };
  const length = (series.times.at(-1) ?? 0) - (series.times[0] ?? 0);
  const inView = frequency === undefined ? length : Math.min(length, 2 / frequency);
  const { perSecond, unit } = waveformTime(inView);
  const since = { ...series, times: series.times.map((it) => it - (series.times[0] ?? 0)) };
  const curves = [curve(since, '', { x: perSecond, y: 100 })];
  return {
    format: CLOSE_FORMAT,
    title: `Flicker, ${MODE_NAMES[mode].toLowerCase()}`,
    x: { name: 'time', unit, decimals: decimalsOf({ curves }) },
    y: { name: 'light', unit: '% of its mean', digits: 4, isFromNought: true },
    view: [0, inView * perSecond],
    curves,
    levels: [{ at: 100, text: 'mean' }],
    note: 'The record sample by sample; on the page its periods are laid over one another.',
  };
}

function soundClose(view: SoundClipsView): ClosePlot {
  const { on, off, width } = view.close;
  const shift = view.scale ?? 0;
  const clips = [
    ...(on ? [curve(on, 'on', { shift, digits: 3 })] : []),
    ...(off ? [{ ...curve(off, 'off', { shift, digits: 3 }), isBeside: true }] : []),
  ];
  return {
    format: CLOSE_FORMAT,
    title: 'The sound clips',
    x: { name: 'frequency', unit: 'Hz', decimals: decimalsOf({ curves: clips }), isLogarithmic: true },
    y: { name: 'level', unit: levelUnit(view), digits: 3 },
    curves: clips,
    uprights: (view.tones ?? [])
      .filter((it) => it.isProminent && !it.isOfRoom && !it.isBelowHearing)
      .map((it) => ({ at: it.frequency, text: toneText(it.frequency) })),
    note: `In bands of ${rounded(width)} Hz, narrower than on the page, so that levels are lower there; not weighted.`,
  };
}
