/**
 * The source behind the demo content: one plausible panel for each file of content/panels, and the sessions in
 * which it was read. The readings in content/ were printed from these with `simulateSession` and then written by
 * hand as a tester would; tests/demo/demo-consistency.test.ts compares the two.
 *
 * Every panel, maker and meter is invented. LED efficiencies, beam angles and drivers are of the usual kind
 * (common practice, no source); none was taken from a product.
 */
import { type Bench, type BeyondPlace, type PanelTruth, STEADY_BENCH } from './simulate-panel.ts';

/** One session of a demo panel. */
export interface DemoSession {
  date: string;
  bench: Bench;
  seed: number;
}

/** A demo panel and its sessions, oldest first. */
export interface DemoPanel {
  truth: PanelTruth;
  sessions: DemoSession[];
}

/** The meter of content/instruments/bench-thermopile.yaml: reads 1.2 % high, within what its calibration promises. */
const THERMOPILE: Bench = {
  ...STEADY_BENCH,
  irradiance: { floor: 0.1, resolution: 0.1, calibration: 0.012, repeatability: 0.008, receiver: 1.05 },
  mains: { floor: 0.1, resolution: 0.1, calibration: 0.003, repeatability: 0.002 },
  magnetic: { floor: 0.02, resolution: 0.01 },
};

/** The meter of content/instruments/silicon-handheld.yaml: whole steps, reads low, loses oblique light. */
const HANDHELD: Bench = {
  ...THERMOPILE,
  irradiance: { floor: 1, resolution: 1, calibration: -0.035, repeatability: 0.012, receiver: 1.2 },
};

/** The coarser magnetic meter of content/instruments/pocket-gaussmeter.yaml. */
const POCKET_MAGNETIC = { floor: 0.1, resolution: 0.01 };

/** Distances of a sweep on the axis, cm. */
const SWEEP = [10, 15.24, 20, 30, 45, 60, 90];

/**
 * The six places past the edges that version 2 of the bench procedure asks for: past a long and a short edge. With the
 * panel off each of them is read, or the farthest two only.
 */
function pastEdges(
  long: BeyondPlace['edge'],
  short: BeyondPlace['edge'],
  { off = 'each', repeats = 1 }: { off?: 'each' | 'farthest'; repeats?: number } = {},
): BeyondPlace[] {
  return [long, short].flatMap((edge) =>
    [8, 20, 40].map((past) => ({ edge, past, repeats, off: off === 'each' || past === 40 })),
  );
}

/** Their places are set with a rule along a taut string: to about a millimetre. */
const BEYOND = { ...THERMOPILE, placing: 0.1 };

const grid = (columns: number, rows: number, repeats = 1) => ({ columns, rows, repeats });

export const DEMO: Readonly<Record<string, DemoPanel>> = {
  // Palm -----------------------------------------------------------------------------------------------------
  'kelpwright-limpet': {
    truth: {
      source: {
        width: 8.2,
        height: 12,
        columns: 4,
        rows: 6,
        ledSize: 0.9,
        layout: 'alternate',
        halfAngle: 30,
        power: { red: 3.5, nearInfrared: 3.3 },
        together: 0.97,
        spread: 0.03,
        seed: 101,
      },
      electrics: { die: { red: 0.5, nearInfrared: 0.47 }, driver: 0.84, fans: 0, standby: 0.2 },
      wavelengths: { red: { peak: 661, fwhm: 17.5 }, nearInfrared: { peak: 848, fwhm: 33 } },
      flicker: { percent: 0.4, frequency: 62000 },
      magnetic: { room: 0.04, panel: 0.06 },
      electric: { room: 3, panel: 14 },
      radio: { room: 0.004, panel: 0.0005 },
      sound: { room: 32.1, panel: 12 },
    },
    sessions: [{ date: '2026-09-29', bench: { ...THERMOPILE, magnetic: POCKET_MAGNETIC }, seed: 1101 }],
  },
  'quennick-sprat': {
    truth: {
      source: {
        width: 10.16,
        height: 16,
        columns: 5,
        rows: 8,
        ledSize: 0.9,
        layout: 'alternate',
        halfAngle: 22.5,
        power: { red: 6.2, nearInfrared: 5.7 },
        together: 0.96,
        spread: 0.03,
        seed: 102,
      },
      electrics: { die: { red: 0.51, nearInfrared: 0.47 }, driver: 0.86, fans: 0.6, standby: 0.3 },
      wavelengths: { red: { peak: 657, fwhm: 17 }, nearInfrared: { peak: 852, fwhm: 34 } },
      flicker: { percent: 1.1, frequency: 48000 },
      magnetic: { room: 0.04, panel: 0.31 },
      electric: { room: 3, panel: 22 },
      radio: { room: 0.004, panel: 0.001 },
      sound: { room: 31.6, panel: 33.5 },
    },
    sessions: [
      {
        date: '2026-10-06',
        bench: { ...BEYOND, grid: grid(3, 3, 3), beyond: pastEdges('right', 'top', { repeats: 3 }), room: 0.03 },
        seed: 1102,
      },
    ],
  },
  'ostrel-lill': {
    truth: {
      source: {
        width: 12.1,
        height: 15.4,
        columns: 6,
        rows: 7,
        ledSize: 0.5,
        layout: 'alternate',
        halfAngle: 40,
        power: { red: 4.6, nearInfrared: 3.9 },
        together: 0.94,
        spread: 0.05,
        seed: 103,
      },
      electrics: { die: { red: 0.46, nearInfrared: 0.44 }, driver: 0.8, fans: 0, standby: 0.1 },
      wavelengths: { red: { peak: 634, fwhm: 16 }, nearInfrared: { peak: 851, fwhm: 36 } },
      flicker: { percent: 38, frequency: 100 },
      magnetic: { room: 0.04, panel: 0.09 },
      electric: { room: 3, panel: 61 },
      radio: { room: 0.004, panel: 0.0003 },
      sound: { room: 32.4, panel: 26 },
    },
    sessions: [
      {
        date: '2026-11-03',
        bench: { ...BEYOND, distances: SWEEP, beyond: pastEdges('left', 'top'), room: 0.04 },
        seed: 1103,
      },
    ],
  },
  // Desk -----------------------------------------------------------------------------------------------------
  'ruddlestone-r60': {
    truth: {
      source: {
        width: 20.32,
        height: 30.48,
        columns: 6,
        rows: 10,
        ledSize: 1.2,
        layout: 'alternate',
        halfAngle: 30,
        power: { red: 21, nearInfrared: 19 },
        together: 0.95,
        spread: 0.03,
        seed: 104,
      },
      electrics: { die: { red: 0.52, nearInfrared: 0.47 }, driver: 0.88, fans: 4, standby: 0.6 },
      wavelengths: { red: { peak: 662, fwhm: 18 }, nearInfrared: { peak: 846, fwhm: 34 } },
      flicker: { percent: 0.7, frequency: 65000 },
      magnetic: { room: 0.05, panel: 0.42 },
      electric: { room: 4, panel: 35 },
      radio: { room: 0.005, panel: 0.001 },
      sound: { room: 31.8, panel: 44 },
    },
    sessions: [
      {
        date: '2026-09-15',
        bench: { ...BEYOND, beyond: pastEdges('right', 'top', { off: 'farthest' }), room: 0.12 },
        seed: 1104,
      },
    ],
  },
  'fennimarsh-reed': {
    truth: {
      source: {
        width: 17.78,
        height: 27.94,
        columns: 6,
        rows: 8,
        ledSize: 1.2,
        layout: 'dual',
        halfAngle: 16,
        power: { red: 15.5, nearInfrared: 14.5 },
        together: 0.94,
        spread: 0.03,
        seed: 105,
      },
      electrics: { die: { red: 0.49, nearInfrared: 0.45 }, driver: 0.87, fans: 3, standby: 0.4 },
      wavelengths: { red: { peak: 659, fwhm: 17 }, nearInfrared: { peak: 853, fwhm: 35 } },
      flicker: { percent: 2.4, frequency: 31000 },
      magnetic: { room: 0.05, panel: 0.55 },
      electric: { room: 4, panel: 28 },
      radio: { room: 0.005, panel: 0.014 },
      sound: { room: 32.2, panel: 41.5 },
    },
    sessions: [
      {
        date: '2026-10-13',
        bench: { ...BEYOND, distances: SWEEP, beyond: pastEdges('right', 'top'), room: 0.02 },
        seed: 1105,
      },
    ],
  },
  'quennick-dab': {
    truth: {
      source: {
        width: 20,
        height: 20,
        columns: 6,
        rows: 6,
        ledSize: 1.2,
        layout: 'alternate',
        halfAngle: 30,
        power: { red: 14, nearInfrared: 13 },
        together: 0.96,
        spread: 0.03,
        seed: 106,
      },
      electrics: { die: { red: 0.5, nearInfrared: 0.46 }, driver: 0.87, fans: 2.5, standby: 0.4 },
      wavelengths: { red: { peak: 660, fwhm: 17 }, nearInfrared: { peak: 850, fwhm: 34 } },
      flicker: { percent: 0.6, frequency: 60000 },
      magnetic: { room: 0.05, panel: 0.4 },
      electric: { room: 4, panel: 30 },
      radio: { room: 0.005, panel: 0.001 },
      sound: { room: 33, panel: 40 },
    },
    sessions: [{ date: '2026-10-02', bench: HANDHELD, seed: 1106 }],
  },
  'ostrel-bord': {
    truth: {
      source: {
        width: 22,
        height: 30,
        columns: 8,
        rows: 10,
        ledSize: 0.8,
        layout: 'alternate',
        halfAngle: 45,
        power: { red: 18.5, nearInfrared: 17 },
        together: 0.95,
        spread: 0.05,
        seed: 107,
      },
      electrics: { die: { red: 0.48, nearInfrared: 0.45 }, driver: 0.86, fans: 2, standby: 0.5 },
      wavelengths: { red: { peak: 632, fwhm: 16 }, nearInfrared: { peak: 849, fwhm: 36 } },
      flicker: { percent: 1.6, frequency: 54000 },
      magnetic: { room: 0.05, panel: 0.36 },
      electric: { room: 4, panel: 48 },
      radio: { room: 0.005, panel: 0.001 },
      sound: { room: 32, panel: 39 },
    },
    sessions: [{ date: '2026-08-31', bench: { ...THERMOPILE, distances: [30] }, seed: 1107 }],
  },
  // Torso ----------------------------------------------------------------------------------------------------
  'kelpwright-cormorant': {
    truth: {
      source: {
        width: 22.1,
        height: 80,
        columns: 8,
        rows: 30,
        ledSize: 1.2,
        layout: 'alternate',
        halfAngle: 30,
        power: { red: 78, nearInfrared: 70 },
        together: 0.94,
        spread: 0.03,
        seed: 108,
      },
      electrics: { die: { red: 0.52, nearInfrared: 0.47 }, driver: 0.9, fans: 13, standby: 0.9 },
      wavelengths: { red: { peak: 660, fwhm: 17.5 }, nearInfrared: { peak: 847, fwhm: 33 } },
      flicker: { percent: 0.5, frequency: 65000 },
      magnetic: { room: 0.05, panel: 0.62 },
      electric: { room: 4, panel: 33 },
      radio: { room: 0.005, panel: 0.001 },
      sound: { room: 31.9, panel: 47.5 },
    },
    sessions: [
      { date: '2025-10-21', bench: THERMOPILE, seed: 1108 },
      {
        date: '2026-10-20',
        bench: { ...BEYOND, output: 0.962, beyond: pastEdges('right', 'top'), room: 0.05 },
        seed: 2108,
      },
    ],
  },
  'ruddlestone-r150': {
    truth: {
      source: {
        width: 30.48,
        height: 50.8,
        columns: 10,
        rows: 15,
        ledSize: 1.2,
        layout: 'alternate',
        halfAngle: 25,
        power: { red: 62, nearInfrared: 58 },
        together: 0.94,
        spread: 0.03,
        hotMiddle: 0.9,
        seed: 109,
      },
      electrics: { die: { red: 0.51, nearInfrared: 0.46 }, driver: 0.89, fans: 9, standby: 0.7 },
      wavelengths: { red: { peak: 663, fwhm: 18 }, nearInfrared: { peak: 845, fwhm: 34 } },
      flicker: { percent: 0.8, frequency: 65000 },
      magnetic: { room: 0.05, panel: 1.1 },
      electric: { room: 4, panel: 37 },
      radio: { room: 0.005, panel: 0.002 },
      sound: { room: 32, panel: 50 },
    },
    sessions: [
      {
        date: '2026-09-22',
        bench: { ...BEYOND, beyond: pastEdges('left', 'bottom', { off: 'farthest' }), room: 0.08 },
        seed: 1109,
      },
    ],
  },
  'fennimarsh-sedge': {
    truth: {
      source: {
        width: 24.13,
        height: 76.2,
        columns: 9,
        rows: 24,
        ledSize: 1.2,
        layout: 'dual',
        halfAngle: 22.5,
        power: { red: 92, nearInfrared: 84 },
        together: 0.93,
        spread: 0.03,
        seed: 110,
      },
      electrics: { die: { red: 0.52, nearInfrared: 0.48 }, driver: 0.9, fans: 15, standby: 1.1 },
      wavelengths: { red: { peak: 658, fwhm: 17 }, nearInfrared: { peak: 836.5, fwhm: 38 } },
      flicker: { percent: 1.9, frequency: 29000 },
      magnetic: { room: 0.05, panel: 0.8 },
      electric: { room: 4, panel: 26 },
      radio: { room: 0.005, panel: 0.035 },
      sound: { room: 32.3, panel: 49 },
    },
    sessions: [
      { date: '2026-11-10', bench: { ...THERMOPILE, distances: [15.24, 30, 60] }, seed: 1110 },
      // The light alone, with readings past the edges; all else is carried over.
      {
        date: '2026-11-24',
        bench: { ...BEYOND, distances: [15.24, 30, 60], beyond: pastEdges('left', 'top'), room: 0.06 },
        seed: 2110,
      },
    ],
  },
  'ostrel-vagg': {
    truth: {
      source: {
        width: 28,
        height: 60,
        columns: 10,
        rows: 20,
        ledSize: 0.8,
        layout: 'alternate',
        halfAngle: 30,
        power: { red: 66, nearInfrared: 63 },
        together: 0.95,
        spread: 0.04,
        seed: 111,
      },
      electrics: { die: { red: 0.5, nearInfrared: 0.46 }, driver: 0.88, fans: 8, standby: 0.8 },
      wavelengths: { red: { peak: 661, fwhm: 18 }, nearInfrared: { peak: 852, fwhm: 36 } },
      flicker: { percent: 1.2, frequency: 54000 },
      magnetic: { room: 0.05, panel: 0.22 },
      electric: { room: 4, panel: 18 },
      radio: { room: 0.005, panel: 0.001 },
      sound: { room: 32.5, panel: 45 },
    },
    sessions: [{ date: '2026-09-08', bench: { ...THERMOPILE, distance: 30 }, seed: 1111 }],
  },
  // Full length ----------------------------------------------------------------------------------------------
  'quennick-tope': {
    truth: {
      source: {
        width: 40,
        height: 150,
        columns: 14,
        rows: 40,
        ledSize: 1.2,
        layout: 'alternate',
        halfAngle: 30,
        power: { red: 215, nearInfrared: 200 },
        together: 0.93,
        spread: 0.03,
        seed: 112,
      },
      electrics: { die: { red: 0.52, nearInfrared: 0.47 }, driver: 0.91, fans: 31, standby: 1.8 },
      wavelengths: { red: { peak: 659, fwhm: 17 }, nearInfrared: { peak: 851, fwhm: 34 } },
      flicker: { percent: 0.9, frequency: 60000 },
      magnetic: { room: 0.05, panel: 1.9 },
      electric: { room: 4, panel: 52 },
      radio: { room: 0.005, panel: 0.002 },
      sound: { room: 32.2, panel: 52.5 },
    },
    sessions: [
      {
        date: '2026-10-27',
        bench: { ...BEYOND, grid: grid(3, 5), sweepStep: 2, beyond: pastEdges('right', 'top'), room: 0.15 },
        seed: 1412,
      },
    ],
  },
  'kelpwright-gannet': {
    truth: {
      source: {
        width: 36,
        height: 120,
        columns: 12,
        rows: 32,
        ledSize: 1.2,
        layout: 'alternate',
        halfAngle: 22.5,
        power: { red: 170, nearInfrared: 160 },
        together: 0.93,
        spread: 0.03,
        seed: 113,
      },
      electrics: { die: { red: 0.53, nearInfrared: 0.48 }, driver: 0.91, fans: 24, standby: 1.2 },
      wavelengths: { red: { peak: 661, fwhm: 17.5 }, nearInfrared: { peak: 848, fwhm: 33 } },
      flicker: { percent: 0.5, frequency: 65000 },
      magnetic: { room: 0.05, panel: 0.95 },
      electric: { room: 4, panel: 40 },
      radio: { room: 0.005, panel: 0.001 },
      sound: { room: 31.7, panel: 49.5 },
    },
    sessions: [{ date: '2026-11-17', bench: { ...THERMOPILE, sweepStep: 2 }, seed: 1113 }],
  },
  'ruddlestone-r600': {
    truth: {
      source: {
        width: 43.18,
        height: 160,
        columns: 15,
        rows: 40,
        ledSize: 1.2,
        layout: 'alternate',
        halfAngle: 25,
        power: { red: 300, nearInfrared: 280 },
        together: 0.92,
        spread: 0.03,
        hotMiddle: 0.3,
        seed: 114,
      },
      electrics: { die: { red: 0.51, nearInfrared: 0.46 }, driver: 0.9, fans: 46, standby: 2.4 },
      wavelengths: { red: { peak: 663, fwhm: 18 }, nearInfrared: { peak: 846, fwhm: 34 } },
      flicker: { percent: 0.8, frequency: 65000 },
      magnetic: { room: 0.05, panel: 2.3 },
      electric: { room: 4, panel: 55 },
      radio: { room: 0.005, panel: 0.002 },
      sound: { room: 32, panel: 54 },
    },
    sessions: [{ date: '2026-11-24', bench: { ...THERMOPILE, sweepStep: 2 }, seed: 1114 }],
  },
};
