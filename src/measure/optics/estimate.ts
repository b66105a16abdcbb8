import type { Contribution } from '../figure.ts';
import type { Readings, SharedError } from './error-sources.ts';
import { orderNodes } from './gaussian-sum.ts';
import { MILLI } from './irradiance.ts';
import { linearBudgets } from './linear-budget.ts';
import {
  chooseOrder,
  claimedOrder,
  fitOrder,
  type Order,
  type OrderChoice,
  type OrderFit,
  type OrderSource,
} from './order-fit.ts';
import { orderTable } from './order-table.ts';
import {
  answersOf,
  type Layout,
  panelQuantities,
  TARGET_EVENNESS,
  TARGET_MEAN,
  TARGET_PEAK,
  TARGET_VALUES,
} from './panel-quantities.ts';
import { type Fitted, prepareFit, type Scale } from './prepare-fit.ts';
import { BIAS, CAPTURE, EMITTED, FIRST_TARGET, HALF_ANGLE, responseModel } from './response.ts';
import { type MainsDraw, OPTICS_DRAWS, type Spread, simulate } from './simulate.ts';

/** Everything that a panel's light is worked out from. */
export interface OpticsInput {
  /** `<panel>/<date>`, for the keys of budget lines. */
  session: string;
  layout: Layout;
  /** Readings of the layout's grid points, in their order. */
  grid?: Readings;
  /** Readings at the layout's sweep distances, in their order. */
  sweep?: Readings;
  /** What the maker claims: full angle at half intensity, degrees. */
  beamAngle?: number;
  /** Errors that readings share, and the one of the claim. */
  errors: readonly SharedError[];
  /** Draw from the mains with both channels on; for the efficiency. */
  mains?: MainsDraw;
  seed: number;
  /** Of the simulation; OPTICS_DRAWS where left out. */
  draws?: number;
}

/** A value with what is known of it. */
export interface Estimate extends Spread {
  value: number;
  /**
   * The uncertainty by its causes, to first order, under the keys that other figures use. The root of their sum of
   * squares is the standard uncertainty as near as a straight line comes to the model.
   */
  budget: Contribution[];
}

/** What is found of a panel whose order is known. */
export interface OpticsEstimates {
  order: Order;
  /** Degrees. */
  halfAngle: Estimate;
  /** Power through the LED-area rectangle on the reference plane over emitted power. */
  capture: Estimate;
  /** Grid mean over true mean; undefined without a grid. */
  samplingBias?: Estimate;
  /** W; undefined without readings. */
  emitted?: Estimate;
  /** Emitted power over mains draw: what the simulation says of it; undefined without either. */
  efficiency?: Spread;
  /** At each target distance, cm: mW/cm2, and the dimmest place over the mean; empty without readings. */
  targets: Array<{ distance: number; mean: Estimate; peak: Estimate; evenness: Estimate }>;
  /** Share of the draws whose order lay at an end of the table, where it was cut. */
  cutShare: number;
}

/** What came of it. */
export interface OpticsResult {
  /** What each way to the order gave, as far as there was anything to try. */
  tried: Partial<Record<OrderSource, OrderFit>>;
  choice: OrderChoice;
  /** Undefined where the order is withheld. */
  estimates?: OpticsEstimates;
}

/**
 * Works out a panel's light: finds the order of its beams (from the sweep, else the grid, else the claim), and from it
 * the emitted power, the capture, the sampling bias and the irradiance at other distances, with their uncertainty by
 * simulation. The power follows from the grid where there is one, else from the sweep.
 *
 * Values are those of the readings as they stand.
 *
 * @throws RangeError where emitter, field, grid and distances do not fit one another
 */
export function estimatePanel(input: OpticsInput): OpticsResult {
  const { layout, grid, sweep, beamAngle } = input;
  const base = panelQuantities(layout);
  const { places } = base;
  const table = orderTable(places.count, (of, out) => base.readings(of, 0, out));
  const answers = answersOf(layout, base);
  const scale: Scale | undefined = grid
    ? { readings: grid, quantities: places.grid, mean: places.gridMean }
    : sweep && { readings: sweep, quantities: places.sweep, mean: places.sweepMean };

  const tried: Partial<Record<OrderSource, OrderFit>> = {};
  const fits: Partial<Record<OrderSource, Fitted>> = {};
  const attempt = (source: 'sweep' | 'grid', readings: Readings, quantities: readonly number[]) => {
    if (!scale) return;
    const fitted = prepareFit(readings, quantities, table, input.errors, scale, answers.readings);
    fits[source] = fitted;
    tried[source] = fitOrder(source, fitted.data, fitted.curve);
  };
  if (sweep && new Set(layout.sweep).size < 2) tried.sweep = { withheld: 'the sweep has one distance only' };
  else if (sweep) attempt('sweep', sweep, places.sweep);
  if (grid) attempt('grid', grid, places.grid);
  if (beamAngle !== undefined) tried.claim = claimedOrder(beamAngle);
  const choice = chooseOrder(tried);
  if (!('chosen' in choice)) return { tried, choice };

  const order = choice.chosen;
  const of = orderNodes(order.order);
  const extremes = base.extremes(of);
  const model = responseModel({
    layout,
    errors: input.errors,
    order,
    fitted: fits[order.source],
    table,
    targetTable: orderTable(TARGET_VALUES * layout.targets.length, (nodes, out) => base.targets(nodes, out, extremes)),
    readingAnswers: answers.readings(of),
    targetAnswers: answers.targets(of, extremes),
    scale,
  });

  const perWatt = new Float64Array(places.count);
  base.readings(of, 0, perWatt);
  const targets = new Float64Array(TARGET_VALUES * layout.targets.length);
  base.targets(of, targets, extremes);
  const trueMean = perWatt[places.mean] as number;
  // Without readings the power stays at 1 W, and nothing that depends on it is told.
  const emitted = scale ? average(scale.readings.values) / (perWatt[scale.mean] as number) : 1;
  const values: number[] = [];
  values[HALF_ANGLE] = order.halfAngle;
  values[CAPTURE] = (trueMean * layout.field.width * layout.field.height) / MILLI;
  values[BIAS] = (perWatt[places.gridMean] as number) / trueMean;
  values[EMITTED] = emitted;
  targets.forEach((value, i) => {
    values[FIRST_TARGET + i] = i % TARGET_VALUES === TARGET_EVENNESS ? value : value * emitted;
  });

  const budgets = linearBudgets(model, values, input.session);
  const { spreads, efficiency, cutShare } = simulate(
    model,
    values,
    input.seed,
    input.draws ?? OPTICS_DRAWS,
    input.mains,
  );
  const at = (output: number): Estimate => ({
    value: values[output] as number,
    ...(spreads[output] as Spread),
    budget: budgets[output] as Contribution[],
  });
  return {
    tried,
    choice,
    estimates: {
      order,
      halfAngle: at(HALF_ANGLE),
      capture: at(CAPTURE),
      ...(grid && { samplingBias: at(BIAS) }),
      ...(scale && { emitted: at(EMITTED) }),
      ...(efficiency && { efficiency }),
      targets: (scale ? layout.targets : []).map((distance, i) => ({
        distance,
        mean: at(FIRST_TARGET + TARGET_VALUES * i + TARGET_MEAN),
        peak: at(FIRST_TARGET + TARGET_VALUES * i + TARGET_PEAK),
        evenness: at(FIRST_TARGET + TARGET_VALUES * i + TARGET_EVENNESS),
      })),
      cutShare,
    },
  };
}

function average(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
