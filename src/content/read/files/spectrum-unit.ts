/** Units of spectra, in the many ways in which meters write them. */

/** What the values of a spectrum are, and by what they become mW/cm²/nm. */
export type SpectrumUnit = { scale: 'irradiance'; factor: number } | { scale: 'relative' } | { scale: 'counts' };

const PREFIXES: Readonly<Record<string, number>> = { '': 1, m: 1e-3, u: 1e-6, n: 1e-9 };
const LENGTHS: Readonly<Record<string, number>> = { m: 1, cm: 1e-2, mm: 1e-3, um: 1e-6, nm: 1e-9 };
/** W/m²/m to mW/cm²/nm. */
const PER_METRE = 1e-10;

const RELATIVE = /^(?:rel(?:ative)?\.?|a\.? ?u\.?|arb(?:itrary)?\.?(?: ?units?)?|normali[sz]ed|norm\.?|%|1)$/i;
const COUNTS = /^(?:(?:raw )?counts?|cts|adc|dn|raw)(?: ?\/ ?(?:m?s))?$/i;

const SUPERSCRIPTS: Readonly<Record<string, string>> = { '⁻': '-', '¹': '1', '²': '2', '³': '3' };

/**
 * The unit of a spectrum's values: `W/m²/nm`, `µW·cm⁻²·nm⁻¹`, `W/(m^2 nm)`, `a.u.`, `counts`. `'not-spectral'` where it
 * is an irradiance that is not for each nanometre; undefined where it is no such unit.
 */
export function spectrumUnit(written: string): SpectrumUnit | 'not-spectral' | undefined {
  const text = written.trim();
  if (RELATIVE.test(text)) return { scale: 'relative' };
  if (COUNTS.test(text)) return { scale: 'counts' };
  const powers = powersOf(text);
  if (!powers) return undefined;
  const watt = [...powers].find(([unit]) => /^[mun]?W$/.test(unit));
  if (watt?.[1] !== 1) return undefined;
  let factor = (PREFIXES[watt[0].slice(0, -1)] as number) * PER_METRE;
  let lengths = 0;
  for (const [unit, power] of powers) {
    if (unit === watt[0]) continue;
    const length = LENGTHS[unit];
    if (length === undefined || power >= 0) return undefined;
    lengths += power;
    factor *= length ** power;
  }
  if (lengths === -2) return 'not-spectral';
  // What floating point leaves of a power of ten goes.
  return lengths === -3 ? { scale: 'irradiance', factor: Number(factor.toPrecision(12)) } : undefined;
}

/** Units with their powers; undefined where it is no product of units. */
function powersOf(written: string): Map<string, number> | undefined {
  const plain = written
    .replace(/[⁻¹²³]/g, (sign) => SUPERSCRIPTS[sign] as string)
    .replace(/[µμ]/g, 'u')
    .replace(/sqm/gi, 'm2')
    .replace(/[[\]]/g, '')
    .replace(
      /\/\s*\(([^()]*)\)/g,
      (_, inner: string) =>
        `/${inner
          .trim()
          .split(/[\s*·.]+/)
          .join('/')}`,
    )
    .replace(/[()^]/g, '')
    .replace(/\s*\/\s*/g, ' /')
    .replace(/[*·.]/g, ' ');
  const powers = new Map<string, number>();
  for (const part of plain.split(/\s+/).filter((it) => it !== '')) {
    const [, slash, unit, power] = /^(\/?)([a-zA-Z]+)(-?\d)?$/.exec(part) ?? [];
    if (unit === undefined) return undefined;
    const size = (power === undefined ? 1 : Number(power)) * (slash === '/' ? -1 : 1);
    powers.set(unit, (powers.get(unit) ?? 0) + size);
  }
  return powers.size === 0 ? undefined : powers;
}

/** Units of wavelength in nm; undefined where it is none. */
export function wavelengthUnit(written: string): number | undefined {
  const unit = written.trim().replace(/[µμ]/g, 'u').toLowerCase();
  if (/^(?:nm|nanomet(?:er|re)s?)$/.test(unit)) return 1;
  if (/^(?:um|micron|microns|micromet(?:er|re)s?)$/.test(unit)) return 1000;
  return undefined;
}

/** Bare numbers from here to there are nm, or micrometres: no spectrum of light lies in both. */
export function guessedWavelengthUnit(first: number): number | undefined {
  if (first >= 100 && first <= 20_000) return 1;
  return first >= 0.1 && first <= 20 ? 1000 : undefined;
}
