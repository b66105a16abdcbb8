import { seededRandom, seedFromText } from '../../../src/measure/random.ts';
import { gridRun } from '../grid-run.ts';
import { seriesOf } from '../waves.ts';
import type { GeneratedFile } from './generated-file.ts';

/** What the logs of a panel are made from. */
interface LogSource {
  panel: string;
  /** Highest irradiance over the face, mW/cm². */
  peak: number;
  /** Spike of one sample in the sweep, mW/cm². */
  spike?: number;
  /** From cold: share above the settled value, and time constants with their parts of it, s. */
  warmUp: { excess: number; constants: ReadonlyArray<readonly [share: number, seconds: number]>; minutes: number };
  flicker: { frequency: number; percent: number };
  /** The grid in one go, in the order of the sensor's way. */
  grid?: readonly number[];
}

/** The R150 is slow to settle, and was read before it had; the Vagg's sweep has a slip; the Tope's fan starts late. */
const SOURCES: readonly LogSource[] = [
  {
    panel: 'ruddlestone-r150',
    peak: 83.9,
    warmUp: { excess: 0.07, constants: [[1, 1500]], minutes: 100 },
    flicker: { frequency: 65_000, percent: 0.8 },
    // To and fro, row by row.
    grid: [32.1, 46.3, 31.9, 50.2, 83, 51.5, 31.7, 45.4, 31.2],
  },
  {
    panel: 'ostrel-vagg',
    peak: 46.3,
    spike: 61.8,
    warmUp: { excess: 0.055, constants: [[1, 520]], minutes: 75 },
    flicker: { frequency: 54_000, percent: 1.2 },
  },
  {
    panel: 'quennick-tope',
    peak: 60.4,
    warmUp: {
      excess: 0.06,
      constants: [
        [0.55, 90],
        [0.45, 700],
      ],
      minutes: 75,
    },
    flicker: { frequency: 60_000, percent: 0.9 },
  },
];

/** Readings of the thermopile are in steps of 0.1 mW/cm². */
const shown = (value: number) => value.toFixed(1);

/** Sweeps, warm-up logs and flicker waveforms of the demonstration. */
export function logFiles(): GeneratedFile[] {
  return SOURCES.flatMap((it) => [
    sweepFile(it),
    ...(it.grid ? [gridFile(it.panel, it.grid)] : []),
    warmUpFile(it),
    waveformFile(it),
  ]);
}

/** To and fro over the face in 90 s, five readings a second, and a while before its brightest place. */
function sweepFile({ panel, peak, spike }: LogSource): GeneratedFile {
  const light = (t: number) => {
    const held = t > 60 && t < 72;
    const [x, y] = held ? [0, 0] : [Math.sin(t / 2.6), -1 + t / 33];
    return peak * Math.exp(-0.55 * x ** 2 - 0.5 * y ** 2) * (held ? 1 : 0.985);
  };
  const { times, values } = seriesOf(light, {
    rate: 5,
    samples: 450,
    noise: 0.12,
    seed: seedFromText(`${panel} sweep`),
  });
  if (spike !== undefined) values[123] = spike;
  const rows = [...times].map((t, i) => `${t.toFixed(1)},${shown(values[i] as number)}`);
  return { panel, name: 'sweep-both.csv', bytes: table('Time (s),Irradiance (mW/cm2)', rows) };
}

function gridFile(panel: string, levels: readonly number[]): GeneratedFile {
  const { times, values } = gridRun(levels, { noise: 0.12, seed: seedFromText(`${panel} grid`), response: 0.8 });
  const rows = [...times].map((t, i) => `${t.toFixed(1)},${shown(values[i] as number)}`);
  return { panel, name: 'grid-run.csv', bytes: table('Time (s),Irradiance (mW/cm2)', rows) };
}

/** One reading every ten seconds; a meter of the shop's kind: clock times, semicolons, decimal commas. */
function warmUpFile({ panel, peak, warmUp: { excess, constants, minutes } }: LogSource): GeneratedFile {
  const settled = 0.8 * peak;
  const light = (t: number) =>
    settled * (1 + excess * constants.reduce((sum, [share, seconds]) => sum + share * Math.exp(-t / seconds), 0));
  const samples = minutes * 6 + 1;
  const { times, values } = seriesOf(light, { rate: 0.1, samples, noise: 0.06, seed: seedFromText(`${panel} warm`) });
  const clock = (t: number) =>
    new Date(Date.UTC(2026, 8, 1, 14, 2, 11) + 1000 * Math.round(t)).toISOString().slice(11, 19);
  const rows = [...times].map((t, i) => `${clock(t)};${(values[i] as number).toFixed(2).replace('.', ',')}`);
  return { panel, name: 'warm-up.csv', bytes: table('Clock;Irradiance [mW/cm2]', rows) };
}

/** A million samples a second from a photodiode, for a millisecond and a half. */
function waveformFile({ panel, flicker: { frequency, percent } }: LogSource): GeneratedFile {
  const random = seededRandom(seedFromText(`${panel} flicker`));
  const rows = Array.from({ length: 1500 }, (_, i) => {
    const wave = Math.sin(2 * Math.PI * frequency * i * 1e-6);
    return `${i}\t${(1.21 * (1 + (percent / 100) * wave) + 0.0008 * random.normal()).toFixed(4)}`;
  });
  return { panel, name: 'light-both.tsv', bytes: table('Time (us)\tPhotodiode (V)', rows) };
}

const table = (head: string, rows: readonly string[]) => `${[head, ...rows].join('\n')}\n`;
