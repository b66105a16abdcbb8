import type { SharedError } from './error-sources.ts';
import { type Order, xOfHalfAngle } from './order-fit.ts';
import { HIGHEST_X, halfAngleAt, LOWEST_X, logAt, type OrderTable, tablePlace } from './order-table.ts';
import { type Answers, GEOMETRY, type Layout, TARGET_EVENNESS, TARGET_VALUES } from './panel-quantities.ts';
import type { Fitted, Scale } from './prepare-fit.ts';

/** Places of the results in a row of them. All but the half angle are logarithms while they are worked with. */
export const HALF_ANGLE = 0;
export const CAPTURE = 1;
export const BIAS = 2;
export const EMITTED = 3;
/** From here on the values of each target in turn. */
export const FIRST_TARGET = 4;

/** Whether a result is a ratio of light to light, which the emitted power leaves as it is. */
export function isRatio(output: number): boolean {
  return output < EMITTED || (output >= FIRST_TARGET && (output - FIRST_TARGET) % TARGET_VALUES === TARGET_EVENNESS);
}

/** What the calculation is put together from. */
export interface ResponseParts {
  layout: Layout;
  errors: readonly SharedError[];
  order: Order;
  /** The fit that gave the order; undefined where it is claimed. */
  fitted: Fitted | undefined;
  table: OrderTable;
  targetTable: OrderTable;
  readingAnswers: Answers;
  targetAnswers: Answers;
  /** Undefined without readings. */
  scale: Scale | undefined;
}

/** The whole calculation as a function of errors: what the truth is if the errors are these. */
export interface ResponseModel {
  parts: ResponseParts;
  outputs: number;
  /**
   * x = ln m.
   *
   * @param shared errors in units of their standard uncertainty
   * @param own relative errors of the fitted readings, each on its own
   */
  orderFor(shared: Float64Array, own: Float64Array): number;
  /**
   * All results for an order.
   *
   * @param reading relative error that the readings' own errors make in their mean
   * @param misfit the same that the panel's unevenness makes in the model of that mean
   */
  resultsFor(x: number, shared: Float64Array, reading: number, misfit: number, out: Float64Array): void;
}

/**
 * Puts the calculation together. While the order stays, geometry acts as straight lines in the logarithm, which for a
 * centimetre or two it does.
 */
export function responseModel(parts: ResponseParts): ResponseModel {
  const { layout, errors, order, fitted, table, targetTable, readingAnswers, targetAnswers, scale } = parts;
  const { field, targets } = layout;
  const outputs = FIRST_TARGET + TARGET_VALUES * targets.length;
  const scaleMean = scale?.mean ?? 0;
  const values = scale?.readings.values ?? [1];
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;

  const onReading = Float64Array.from(
    errors,
    ({ effect }) => (effect.reading ?? 0) + (effect.offset ?? 0) / mean + (effect.angular ?? 0),
  );
  const onAngle = Float64Array.from(errors, ({ effect }) => effect.halfAngle ?? 0);
  const ofGeometry = errors.flatMap(({ effect }, error) => {
    const moved = (answers: Answers, q: number, sides: readonly (typeof GEOMETRY)[number][]) =>
      sides.reduce((sum, side) => sum + (effect[side] ?? 0) * (answers[side][q] as number), 0);
    if (GEOMETRY.every((side) => !effect[side])) return [];
    const line = new Float64Array(outputs);
    const onMean = moved(readingAnswers, 0, GEOMETRY);
    const onScale = moved(readingAnswers, scaleMean, GEOMETRY);
    line[CAPTURE] = onMean + (effect.width ?? 0) / field.width + (effect.height ?? 0) / field.height;
    line[BIAS] = onScale - onMean;
    line[EMITTED] = -onScale;
    for (let i = 0; i < TARGET_VALUES * targets.length; i++) {
      // A target is wanted at its very distance.
      const onTarget = moved(targetAnswers, i, ['width', 'height', 'edge']);
      line[FIRST_TARGET + i] = isRatio(FIRST_TARGET + i) ? onTarget : onTarget - onScale;
    }
    return [{ error, line }];
  });

  const stated = fitted?.data.logs ?? new Float64Array(0);
  // What moves all readings alike leaves the order as it is.
  const effects = (fitted?.data.shared ?? []).flatMap((effect, k) =>
    effect.every((it) => it === effect[0]) ? [] : [{ k, effect }],
  );
  const logs = new Float64Array(stated.length);
  return {
    parts,
    outputs,
    orderFor(shared, own) {
      if (!fitted) {
        let relative = 1;
        for (let k = 0; k < onAngle.length; k++) relative += (onAngle[k] as number) * (shared[k] as number);
        return xOfHalfAngle(order.halfAngle * relative);
      }
      for (let j = 0; j < logs.length; j++) logs[j] = (stated[j] as number) + (own[j] as number);
      for (const { k, effect } of effects) {
        const by = shared[k] as number;
        for (let j = 0; j < logs.length; j++) logs[j] = (logs[j] as number) + by * (effect[j] as number);
      }
      return fitted.curve.settle(logs, fitted.from);
    },
    resultsFor(x, shared, reading, misfit, out) {
      const place = tablePlace(x);
      const logScale = logAt(table, scaleMean, place) + misfit;
      const logMean = logAt(table, 0, place);
      let relative = reading;
      for (let k = 0; k < onReading.length; k++) relative += (onReading[k] as number) * (shared[k] as number);
      // A draw that leaves no light at all is cut at a thousandth.
      const logEmitted = Math.log(Math.max(1e-3, 1 + relative)) - logScale;
      out[HALF_ANGLE] = halfAngleAt(Math.min(HIGHEST_X, Math.max(LOWEST_X, x)));
      out[CAPTURE] = logMean;
      out[BIAS] = logScale - logMean;
      out[EMITTED] = logEmitted;
      for (let i = FIRST_TARGET; i < outputs; i++) {
        out[i] = logAt(targetTable, i - FIRST_TARGET, place) + (isRatio(i) ? 0 : logEmitted);
      }
      for (const { error, line } of ofGeometry) {
        const by = shared[error] as number;
        for (let i = CAPTURE; i < outputs; i++) out[i] = (out[i] as number) + by * (line[i] as number);
      }
    },
  };
}
