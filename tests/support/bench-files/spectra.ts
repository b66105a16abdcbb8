import { seededRandom } from '../../../src/measure/random.ts';
import type { GeneratedFile } from './generated-file.ts';

/** Light of one kind of LEDs: falls off as a Gaussian, wider to the short side. */
interface Line {
  /** nm */
  peak: number;
  fwhm: number;
  /** Area, mW/cm² or relative. */
  light: number;
}

/** A panel's light, channel by channel, and how its files are written. */
interface Source {
  panel: string;
  stem: string;
  red: readonly Line[];
  nearInfrared: readonly Line[];
  /** What both channels together give of the sum of the two: supplies that share their power. */
  together: number;
  write: Record<'red' | 'nearInfrared' | 'combined', (rows: Rows, title: string) => { ending: string; text: string }>;
}

type Rows = ReadonlyArray<readonly [nm: number, value: number]>;

/** Pixels of the simulated spectrometer, nm; its noise as share of the highest value, and its dark level. */
const [FROM, TO, STEP] = [350, 1000, 0.5];
const [NOISE, DARK] = [6e-4, 9e-4];
/** How much wider an LED's light is on its short side than on its long one; seen on data sheets, from memory. */
const SKEW = 1.16;
const FWHM_TO_SIGMA = 1 / 2.35482;

function lineAt(nm: number, { peak, fwhm, light }: Line): number {
  const long = (2 * fwhm * FWHM_TO_SIGMA) / (1 + SKEW);
  const sigma = nm < peak ? SKEW * long : long;
  const height = light / (Math.sqrt(Math.PI / 2) * long * (1 + SKEW));
  return height * Math.exp(-0.5 * ((nm - peak) / sigma) ** 2);
}

function rowsOf(lines: readonly Line[], seed: number): Rows {
  const wavelengths = Array.from({ length: Math.round((TO - FROM) / STEP) + 1 }, (_, i) => FROM + i * STEP);
  const light = wavelengths.map((nm) => lines.reduce((sum, it) => sum + lineAt(nm, it), 0));
  const highest = Math.max(...light);
  const random = seededRandom(seed);
  return wavelengths.map((nm, i) => [nm, (light[i] ?? 0) + highest * (DARK + NOISE * random.normal())] as const);
}

const table = (unit: string, factor: number, digits: number) => (rows: Rows) => ({
  ending: 'csv',
  text: `# Array spectrometer behind a cosine corrector, dark reading subtracted\nWavelength (nm),Spectral irradiance (${unit})\n${rows
    .map(([nm, value]) => `${nm.toFixed(1)},${(value * factor).toFixed(digits)}`)
    .join('\n')}\n`,
});

const decimalCommas = (rows: Rows) => ({
  ending: 'csv',
  text: `Wellenlänge [nm];Bestrahlungsstärke [W/m²/nm]\r\n${rows
    .map(([nm, value]) => `${nm.toFixed(1)};${(10 * value).toFixed(4)}`.replaceAll('.', ','))
    .join('\r\n')}\r\n`,
});

const relative = (rows: Rows) => {
  const highest = Math.max(...rows.map(([, value]) => value));
  return {
    ending: 'tsv',
    text: `Wavelength [nm]\tIntensity [rel.]\n${rows.map(([nm, value]) => `${nm.toFixed(1)}\t${(value / highest).toFixed(5)}`).join('\n')}\n`,
  };
};

const cgats = (unit: string, scale: (rows: Rows) => number) => (rows: Rows, title: string) => {
  const factor = scale(rows);
  return {
    ending: 'txt',
    text: `ISO28178\nORIGINATOR "Simulated bench"\nDESCRIPTOR "${title}"\nSPECTRAL_UNIT "${unit}"\nNUMBER_OF_FIELDS 2\nBEGIN_DATA_FORMAT\nSPECTRAL_NM\tSPECTRAL_DEC\nEND_DATA_FORMAT\nNUMBER_OF_SETS ${rows.length}\nBEGIN_DATA\n${rows
      .map(([nm, value]) => `${nm.toFixed(1)}\t${(value * factor).toPrecision(5)}`)
      .join('\n')}\nEND_DATA\n`,
  };
};

const ofHighest = (rows: Rows) => 1 / Math.max(...rows.map(([, value]) => value));

/** What the three panels shine; the light by the irradiance meter's readings of each channel, a per cent or two off. */
const SOURCES: readonly Source[] = [
  {
    panel: 'ruddlestone-r150',
    stem: 'r150',
    red: [{ peak: 663.4, fwhm: 18.1, light: 45.7 }],
    nearInfrared: [{ peak: 845.3, fwhm: 34.2, light: 42.9 }],
    together: 84.1 / (46.1 + 43.3),
    write: {
      red: table('uW/cm2/nm', 1000, 1),
      nearInfrared: table('uW/cm2/nm', 1000, 1),
      combined: cgats('mW/cm2/nm', () => 1),
    },
  },
  {
    // Its box names 660 nm and 850 nm; a part of the near-infrared is of 940 nm.
    panel: 'ostrel-vagg',
    stem: 'vagg',
    red: [{ peak: 661.1, fwhm: 18, light: 25.3 }],
    nearInfrared: [
      { peak: 851.8, fwhm: 35.8, light: 20.6 },
      { peak: 941.5, fwhm: 42, light: 3.6 },
    ],
    together: 46.5 / (25.3 + 24.2),
    write: { red: relative, nearInfrared: relative, combined: cgats('relative', ofHighest) },
  },
  {
    panel: 'quennick-tope',
    stem: 'tope',
    red: [{ peak: 659.6, fwhm: 16.6, light: 34 }],
    nearInfrared: [{ peak: 850.8, fwhm: 34.1, light: 31.8 }],
    together: 60.6 / (33.6 + 31.3),
    write: { red: decimalCommas, nearInfrared: decimalCommas, combined: decimalCommas },
  },
];

const NAMES = { red: 'red', nearInfrared: 'nir', combined: 'both' } as const;

/** Spectra of the demonstration's panels with each channel alone and with both. */
export function spectra(): GeneratedFile[] {
  return SOURCES.flatMap(({ panel, stem, red, nearInfrared, together, write }, i) => {
    const both = [...red, ...nearInfrared].map((it) => ({ ...it, light: it.light * together }));
    return Object.entries({ red, nearInfrared, combined: both }).map(([key, lines], k): GeneratedFile => {
      const mode = key as keyof typeof NAMES;
      const { ending, text } = write[mode](rowsOf(lines, 100 * i + k + 1), `${stem}, ${NAMES[mode]}`);
      return { panel, name: `${stem}-${NAMES[mode]}.${ending}`, bytes: text };
    });
  });
}
