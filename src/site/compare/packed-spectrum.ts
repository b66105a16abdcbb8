import { madeOf } from '../../ledger/files/file-maker.ts';
import type { PanelEntry } from '../../ledger/ledger.ts';
import { valueAt } from '../../measure/spectrum/spectrum.ts';
import type { PackedSpectrum } from './browser/compared-panel.ts';

/** The part that is compared, nm, and in what steps: as fine as an LED's light needs. */
const [FROM, TO, STEP] = [600, 1000, 4];
const PER_MILLE = 1000;

/** A panel's light by wavelength as the comparison draws it; undefined where no spectrum has both channels on. */
export function packedSpectrum({ current }: PanelEntry): PackedSpectrum | undefined {
  const view = current && madeOf(current.made, 'spectra')?.view;
  const both = view?.spectra.find((it) => it.mode === 'combined' && !it.faults.flat);
  if (!both) return undefined;
  const drawn = { wavelengths: both.rows.map(([nm]) => nm), values: both.rows.map(([, it]) => it), isAbsolute: false };
  const count = Math.round((TO - FROM) / STEP) + 1;
  const values = Array.from({ length: count }, (_, i) =>
    Math.max(0, Math.round(PER_MILLE * valueAt(drawn, FROM + i * STEP))),
  );
  return { from: FROM, step: STEP, values };
}
