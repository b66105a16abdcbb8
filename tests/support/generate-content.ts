/**
 * Writes a whole, valid content folder with as many simulated panels as wanted, for benchmarks and tests:
 *
 *     node tests/support/generate-content.ts FOLDER COUNT [SEED]
 */
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { stringify } from 'yaml';
import { CLASSES, type Dice, dice, drawPanel, type SizeClass } from './draw-panel.ts';
import {
  type Bench,
  type PanelTruth,
  roundTo,
  type Shown,
  type SimulatedReadings,
  STEADY_BENCH,
  simulateSession,
} from './simulate-panel.ts';

/** A panel that was written, with everything that is true of it (`sessionTruth` works the rest out). */
export interface GeneratedPanel {
  slug: string;
  sizeClass: string;
  truth: PanelTruth;
  bench: Bench;
  /** Distance that was really set, cm. */
  distance: number;
}

export interface GenerateOptions {
  /** The newest day that is written, `YYYY-MM-DD`; all dates lie within 80 days before it. */
  newestDay?: string;
}

const DAY = 24 * 60 * 60 * 1000;

const INSTRUMENTS = [
  {
    id: 'irradiance-meter',
    measures: 'irradiance',
    unit: 'mW/cm2',
    range: [0.1, 400],
    resolution: 0.1,
    relative: 4,
    repeatability: 0.8,
    f2: 3,
  },
  {
    id: 'spectrometer',
    measures: 'spectrum',
    unit: 'nm',
    range: [350, 1000],
    resolution: 0.5,
    relative: 0,
    absolute: 0.8,
  },
  { id: 'wattmeter', measures: 'mains', unit: 'W', range: [0.1, 3600], resolution: 0.1, relative: 1, absolute: 0.2 },
  { id: 'magnetic-probe', measures: 'magnetic', unit: 'uT', range: [0.02, 200], resolution: 0.01, relative: 6 },
  { id: 'electric-probe', measures: 'electric', unit: 'V/m', range: [1, 2000], resolution: 1, relative: 10 },
  { id: 'radio-probe', measures: 'radio', unit: 'mW/m2', range: [0.001, 1000], resolution: 0.001, relative: 50 },
  {
    id: 'sound-meter',
    measures: 'sound',
    unit: 'dB(A)',
    range: [30, 130],
    resolution: 0.1,
    relative: 0,
    absolute: 1.4,
  },
  { id: 'flicker-meter', measures: 'flicker', unit: '%', range: [0.5, 100], resolution: 0.1, relative: 3 },
];

/** Three places past a side edge and three past the top, as version 2 of the bench procedure asks. */
const SIX_PLACES = (['right', 'top'] as const).flatMap((edge) =>
  [8, 20, 40].map((past) => ({ edge, past, off: past === 40 })),
);

/**
 * Writes guide.yaml, instruments, makers and `panelCount` panels over all size classes in turn. Same arguments, same
 * bytes.
 *
 * @throws where `folder` holds something already: a content folder is never written over.
 */
export function generateContent(
  folder: string,
  panelCount: number,
  seed: number,
  options: GenerateOptions = {},
): GeneratedPanel[] {
  const { newestDay = '2026-11-24' } = options;
  if (existsSync(folder) && readdirSync(folder).length > 0) throw new Error(`${folder} is not empty`);
  for (const name of ['instruments', 'makers', 'panels']) mkdirSync(join(folder, name), { recursive: true });

  const draw = dice(seed);
  const dayBefore = (days: number) => new Date(Date.parse(newestDay) - days * DAY).toISOString().slice(0, 10);
  write(join(folder, 'guide.yaml'), guide(dayBefore(30)));
  for (const { id, ...instrument } of INSTRUMENTS) {
    write(join(folder, 'instruments', `${id}.yaml`), instrumentFile(id, instrument, dayBefore(200)));
  }
  const makers = Array.from({ length: Math.max(2, Math.ceil(panelCount / 40)) }, (_, i) => `maker-${i + 1}`);
  for (const id of makers) {
    write(join(folder, 'makers', `${id}.yaml`), { name: `Maker ${id.slice(6)}`, warrantyYears: draw.one([1, 2, 3]) });
  }

  // One meter, one error: it moves all panels together.
  const calibration = 0.02 * draw.normal();
  return Array.from({ length: panelCount }, (_, index) => {
    const kind = CLASSES[index % CLASSES.length] as SizeClass;
    const slug = `panel-${String(index + 1).padStart(5, '0')}`;
    const truth = drawPanel(draw, kind, seed + index);
    const bench: Bench = {
      ...STEADY_BENCH,
      irradiance: { ...STEADY_BENCH.irradiance, calibration },
      grid: { columns: 3, rows: 3, repeats: draw.chance(0.1) ? 3 : 1 },
      // Coarse, so that thousands of panels are written in seconds; the middle of the field is still on it.
      sweepStep: Math.max(truth.source.width, truth.source.height) / 8,
      // Every other panel of each class.
      ...(Math.floor(index / CLASSES.length) % 2 === 0 && { beyond: SIX_PLACES, room: 0.04, placing: 0.1 }),
    };
    const { readings, distance } = simulateSession(truth, bench, seed + index);
    const session = dayBefore(Math.floor(draw.between([10, 80])));
    const front = frontMatter(draw, truth, readings, {
      maker: draw.one(makers),
      model: `Model ${index + 1}`,
      session,
      priced: dayBefore(Math.floor(draw.between([0, 60]))),
      price: Math.round(draw.between(kind.price) * (truth.source.power.red + truth.source.power.nearInfrared)),
      unusual: index % 40 === 39 ? 'no grid' : index % 25 === 24 ? 'withdrawn' : undefined,
    });
    mkdirSync(join(folder, 'panels', slug));
    writeFileSync(join(folder, 'panels', slug, 'index.md'), `---\n${stringify(front)}---\n\n${notes(truth, readings)}`);
    return { slug, sizeClass: kind.id, truth, bench, distance };
  });
}

function write(path: string, data: object): void {
  writeFileSync(path, stringify(data));
}

function guide(day: string): object {
  return {
    title: 'A generated guide',
    tagline: 'Simulated panels from a simulated bench',
    publisher: 'The test suite',
    site: 'https://generated.example',
    about: 'Every panel here was simulated, to see how the guide fares with many of them.',
    disclosure: 'Nobody pays for this guide and nobody sells these panels.',
    currency: 'EUR',
    rates: [{ currency: 'GBP', rate: 1.15, date: day, source: 'Invented' }],
    tariff: { price: 0.31, date: day, source: 'Invented' },
    referenceDistance: '6 in',
    methodVersion: 2,
    distanceSetting: '2 mm',
    edgeSetting: '1 mm',
    sizeClasses: CLASSES.map((it) => ({
      id: it.id,
      name: it.id,
      ...('upToArea' in it && { upToArea: it.upToArea }),
      description: `Fields of about ${it.width[0]} x ${it.height[0]} cm and more.`,
    })),
  };
}

function instrumentFile(id: string, instrument: Omit<(typeof INSTRUMENTS)[number], 'id'>, day: string): object {
  const { measures, unit, range, resolution, relative, absolute, repeatability, f2 } = instrument;
  return {
    name: `Simulated ${id.replace('-', ' ')}`,
    measures,
    unit,
    range: { from: range[0], to: range[1] },
    response: 'Whatever the simulator gives it.',
    resolution,
    calibrations: [
      {
        date: day,
        validMonths: 24,
        relative,
        ...(absolute !== undefined && { absolute }),
        reference: 'None',
      },
    ],
    ...(repeatability !== undefined && { repeatability }),
    ...(f2 !== undefined && { spectralResponse: { red: 0.5, nearInfrared: 0.5 }, angularResponse: { f2 } }),
  };
}

function frontMatter(
  draw: Dice,
  { source }: PanelTruth,
  readings: SimulatedReadings,
  about: {
    maker: string;
    model: string;
    session: string;
    priced: string;
    price: number;
    unusual: 'no grid' | 'withdrawn' | undefined;
  },
): object {
  const shown = ({ value, below }: Shown, unit: string) => `${below ? '<' : ''}${value} ${unit}`;
  const faint = (reading: Shown) => (reading.below ? shown(reading, 'mW/cm2') : reading.value);
  const offOn = (levels: { off: Shown; on: Shown }, distance: string, unit: string) => ({
    distance,
    off: shown(levels.off, unit),
    on: shown(levels.on, unit),
  });
  const { frequency, percent } = readings.flicker;
  const flicker = (reading: Shown) => ({ ...(frequency !== undefined && { frequency }), percent: shown(reading, '%') });
  const points = readings.grid.map((row) => row.map((point) => (point.length === 1 ? point[0] : point)));
  const list = roundTo(about.price * 1.2, 1);
  return {
    maker: about.maker,
    model: about.model,
    status: about.unusual === 'withdrawn' ? 'withdrawn' : 'published',
    ...(about.unusual === 'withdrawn' && { statusReason: 'Generated as a withdrawn panel.' }),
    verdict: `${about.model} is what the simulator made of it.`,
    obtained: { how: draw.one(['bought', 'bought', 'lent', 'given'] as const), paidBy: 'Nobody' },
    claims: {
      wavelengths: [
        { peak: 660, share: 50 },
        { peak: 850, share: 50 },
      ],
      irradiance: { value: Math.ceil(readings.peak.combined * draw.between([0.95, 1.8])), distance: '6 in' },
      power: Math.ceil(readings.mains.combined * draw.between([0.98, 1.2])),
      beamAngle: 2 * source.halfAngle,
      ledCount: source.columns * source.rows,
    },
    prices: [
      draw.chance(0.1)
        ? { date: about.priced, list: Math.round(list / 1.15), paid: Math.round(about.price / 1.15), currency: 'GBP' }
        : { date: about.priced, list, paid: about.price, currency: 'EUR' },
    ],
    field: { width: source.width, height: source.height },
    housing: { width: roundTo(source.width + 3, 0.1), height: roundTo(source.height + 5, 0.1) },
    weight: roundTo(0.4 + 0.006 * source.width * source.height, 0.1),
    sessions: [
      {
        date: about.session,
        methodVersion: readings.beyond ? 2 : 1,
        instruments: Object.fromEntries(INSTRUMENTS.map((it) => [it.measures, it.id])),
        warmUp: '45 min',
        roomTemperature: 20.5,
        distance: '6 in',
        peak: readings.peak,
        ...(about.unusual !== 'no grid' && { grid: { inset: '1 in', rows: points } }),
        ...(readings.beyond && {
          beyond: readings.beyond.map(({ edge, past, on, off }) => ({
            edge,
            past,
            on: on.length === 1 ? faint(on[0] as Shown) : on.map(faint),
            ...(off && { off: faint(off) }),
          })),
        }),
        wavelengths: readings.wavelengths,
        mains: readings.mains,
        magnetic: offOn(readings.magnetic, '6 in', 'uT'),
        electric: offOn(readings.electric, '6 in', 'V/m'),
        radio: offOn(readings.radio, '6 in', 'mW/m2'),
        sound: offOn(readings.sound, '1 m', 'dB(A)'),
        flicker: {
          red: flicker(percent.red),
          nearInfrared: flicker(percent.nearInfrared),
          combined: flicker(percent.combined),
        },
        hotSpots: source.hotMiddle ? 'Brighter in the middle.' : 'None seen.',
      },
    ],
  };
}

/** A few paragraphs, as long as a tester's; the numbers differ, so that pages do too. */
function notes({ source }: PanelTruth, { peak, mains, sound }: SimulatedReadings): string {
  const count = source.columns * source.rows;
  return `This panel was simulated. Its field of ${source.width} by ${source.height} cm holds ${count} LEDs in ${source.columns}
columns, and each throws its light into a cone of ${2 * source.halfAngle} degrees between the half-power directions.

The highest reading of the sweep was ${peak.combined} mW/cm2 with both channels on, ${peak.red} with red alone and
${peak.nearInfrared} with near-infrared alone. From the mains it drew ${mains.combined} W, and ${mains.standby} W in standby.

At a metre the meter showed ${sound.on.value} dB(A) with the panel on and ${sound.off.value} dB(A) with it off. Nobody has
borrowed it, since it does not exist.
`;
}

if (import.meta.main) {
  const [folder, count, seed = '1'] = process.argv.slice(2);
  const wanted = Number(count);
  if (folder === undefined || !Number.isInteger(wanted) || wanted < 0 || !Number.isInteger(Number(seed))) {
    console.error('usage: node tests/support/generate-content.ts FOLDER COUNT [SEED]');
    process.exitCode = 2;
  } else {
    const panels = generateContent(folder, wanted, Number(seed));
    console.log(`${panels.length} panels in ${folder}`);
  }
}
