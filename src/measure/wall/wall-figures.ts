import { type BudgetComponent, type FigureOrGap, gap, type Unassessed } from '../figure.ts';
import { identityOf, type ListedMetricId } from '../metrics.ts';
import { number } from '../numbers.ts';
import type { Statement } from '../statement.ts';
import { makeFigure, rectangular, typeA, typeB } from '../uncertainty.ts';
import { CELL, HAND } from './evenness.ts';
import type { LightOfWall } from './straighten.ts';
import {
  AUTOMATIC_EXPONENT,
  KNOWN_EXPONENT,
  VIGNETTE,
  WALL_MEASURES,
  type WallErrors,
  type WallMeasure,
  type WallReading,
} from './wall-results.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** Share of the wall at the end of the camera's scale, %, and how much is too much. */
    'wall-photo-clipped': { percent: number; most: number };
    'wall-photo-coarse': { cell: number };
    'leds-not-counted': object;
    'dots-not-resolved': object;
    'camera-no-meter': object;
    /** cm */
    'wall-squares': { columns: number; rows: number; across: number; down: number };
    'camera-tones': object;
    /** Largest error of the exponent, %. */
    'camera-tones-within': { percent: number };
    'camera-vignette': object;
    /** At the corners, %. */
    'camera-vignette-within': { percent: number };
    'camera-noise': object;
    'camera-noise-from-pixels': object;
    'wall-itself': object;
    'wall-as-matte': object;
    'near-infrared-unseen': object;
    'camera-sees-red': object;
    'dots-below-noise': object;
  }
}

/** With more of the wall clipped than this share, nothing is told of how even it is. Our own choice. */
export const CLIPPED_MOST = 0.01;
/** From this share on a doubt is told. */
export const CLIPPED_ODD = 0.001;

/** Metrics of what is measured. */
export const WALL_METRICS = {
  lowestToMean: 'wall-lowest-to-mean',
  variation: 'wall-variation',
  handDrop: 'wall-hand-drop',
  dotContrast: 'wall-dot-pattern',
} as const satisfies Record<WallMeasure, ListedMetricId>;

/** What figures of a wall are made of. */
export interface WallInputs {
  /** `<panel>/<date>` */
  session: string;
  light: LightOfWall;
  /** Of luminance; undefined where the photo is too coarse. */
  reading: WallReading | undefined;
  /** How far a camera may have moved the reading. */
  errors: Partial<Record<WallMeasure, WallErrors>> | undefined;
  /** The LEDs' pitch is known. */
  hasPitch: boolean;
}

/** Figures of a photo of the wall, in %. */
export function wallFigures({ session, light, reading, errors, hasPitch }: WallInputs): FigureOrGap[] {
  const withheld: Statement | undefined =
    light.clipped > CLIPPED_MOST
      ? { code: 'wall-photo-clipped', percent: 100 * light.clipped, most: 100 * CLIPPED_MOST }
      : reading === undefined
        ? { code: 'wall-photo-coarse', cell: CELL }
        : undefined;
  if (withheld || !reading || !errors) {
    return WALL_MEASURES.map((it) => gap(WALL_METRICS[it], withheld ?? { code: 'wall-photo-coarse', cell: CELL }));
  }
  const { evenness, dots, cells } = reading;
  const { mean, lowestToMean, variation, drop } = evenness;
  const path = `${session}/wallPhoto`;
  const notes: Statement[] = [
    { code: 'camera-no-meter' },
    { code: 'wall-squares', columns: cells.columns, rows: cells.rows, across: cells.across, down: cells.down },
  ];
  const figure = (measure: WallMeasure, value: number, calculation: string) =>
    makeFigure(
      {
        ...identityOf(WALL_METRICS[measure], session),
        basis: 'derived',
        inputs: [path],
        notes: measure === 'dotContrast' ? notes.slice(0, 1) : notes,
        calculation,
      },
      100 * value,
      { budget: budgetOf(measure, errors[measure], light, path), unassessed: UNASSESSED },
    );
  const lit = [lowestToMean * mean, mean].map((it) => number(100 * it));
  const evennessFigures = [
    figure('lowestToMean', lowestToMean, `U = 100 · ${lit[0]}/${lit[1]} = ${number(100 * lowestToMean)} %`),
    figure(
      'variation',
      variation,
      `V = 100 · ${number(100 * variation * mean)}/${lit[1]} = ${number(100 * variation)} %`,
    ),
    figure('handDrop', drop.share, `D = ${number(100 * drop.share)} % within ${HAND} cm`),
  ];
  const metric = WALL_METRICS.dotContrast;
  if (!hasPitch) return [...evennessFigures, gap(metric, { code: 'leds-not-counted' })];
  if (!dots) return [...evennessFigures, gap(metric, { code: 'dots-not-resolved' })];
  if (!dots.isBound) {
    const equation = `c = ${number(100 * dots.contrast)} %, p = ${number(dots.period, 3)} cm`;
    return [...evennessFigures, figure('dotContrast', dots.contrast, equation)];
  }
  const bound = makeFigure(
    {
      ...identityOf(metric, session),
      ...{ basis: 'derived', bound: 'below', inputs: [path], notes: notes.slice(0, 1) },
    },
    roundedUp(100 * dots.contrast),
    { absent: { code: 'dots-below-noise' } },
  );
  return [...evennessFigures, bound];
}

/** To two digits: a bound that is rounded down would promise too much. */
function roundedUp(value: number): number {
  const step = 10 ** (Math.floor(Math.log10(value)) - 1);
  return Number((Math.ceil(value / step - 1e-9) * step).toPrecision(2));
}

function budgetOf(measure: WallMeasure, errors: WallErrors | undefined, light: LightOfWall, path: string) {
  if (!errors) return [];
  const exponent = light.tones === 'automatic' ? AUTOMATIC_EXPONENT : KNOWN_EXPONENT;
  const budget: BudgetComponent[] = [
    {
      source: typeB({
        key: `${path}/tones`,
        what: { code: 'camera-tones' },
        distribution: 'rectangular',
        evaluation: { code: 'camera-tones-within', percent: 100 * exponent },
      }),
      // The lower the dimmest place, the more a steeper curve takes from it: the others grow with it.
      contribution: (measure === 'lowestToMean' ? -1 : 1) * 100 * rectangular(errors.tones),
    },
  ];
  if (errors.vignette > 0) {
    budget.push({
      source: typeB({
        key: `${path}/vignette`,
        what: { code: 'camera-vignette' },
        distribution: 'rectangular',
        evaluation: { code: 'camera-vignette-within', percent: 100 * VIGNETTE },
      }),
      contribution: 100 * rectangular(errors.vignette),
    });
  }
  if (errors.noise > 0) {
    budget.push({
      source: typeA(
        {
          key: `${path}/${measure}/noise`,
          what: { code: 'camera-noise' },
          evaluation: { code: 'camera-noise-from-pixels' },
        },
        // From all pixels, of which there are thousands.
        { degreesOfFreedom: light.columns * light.rows },
      ),
      contribution: 100 * errors.noise,
    });
  }
  return budget;
}

const UNASSESSED: Unassessed[] = [
  { what: { code: 'near-infrared-unseen' }, reason: { code: 'camera-sees-red' } },
  { what: { code: 'wall-itself' }, reason: { code: 'wall-as-matte' } },
];
