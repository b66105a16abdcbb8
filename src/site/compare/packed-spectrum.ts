import { madeOf } from '../../ledger/files/file-maker.ts';
import type { PanelEntry } from '../../ledger/ledger.ts';
import type { PackedSpectrum } from './browser/compared-panel.ts';

/** The part that is compared, nm, and in what steps: as fine as an LED's light needs. */
const [FROM, TO, STEP] = [600, 1000, 2.5];
const PER_MILLE = 1000;

/** A panel's light by wavelength as the comparison draws it; undefined where no spectrum has both channels on. */
export function packedSpectrum({ current }: PanelEntry): PackedSpectrum | undefined {
  const view = current && madeOf(current.made, 'spectra')?.view;
  const both = view?.spectra.find((it) => it.mode === 'combined' && !it.faults.flat);
  if (!both) return undefined;
  const values = new Array<number>(Math.round((TO - FROM) / STEP) + 1).fill(0);
  for (const [nm, share] of both.rows) {
    const at = Math.round((nm - FROM) / STEP);
    if (at >= 0 && at < values.length) values[at] = Math.max(values[at] ?? 0, Math.round(PER_MILLE * share));
  }
  return { from: FROM, step: STEP, values };
}
