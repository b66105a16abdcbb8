import { at } from '../measure/at.ts';
import type { DrawnLight } from '../measure/beam/drawn-light.ts';
import type {
  Estimate,
  EstimatedOptics,
  EstimatesOf,
  OpticsResult,
  WithheldOptics,
} from '../measure/beam/optics-result.ts';
import type { BudgetComponent, ErrorSource } from '../measure/figure.ts';

/** Stands for what is among the numbers. */
const PACKED = 0;

type WithoutDrawing<Of> = Omit<EstimatesOf<Of>, 'drawn'>;

/**
 * A result in a small form, which is read again fast: all numbers of its estimates and of its drawing are one list, in the
 * order in which they are met. Two dozen figures of a panel have the same dozen error sources, which are kept once.
 */
export type PackedResult =
  | WithheldOptics
  | (Omit<EstimatedOptics, 'estimates'> & {
      sources: readonly ErrorSource[];
      numbers: Float64Array;
      estimates: WithoutDrawing<typeof PACKED>;
      /** Of the drawing. */
      field?: { columns: number; rows: number };
    });

/** Packs a result. */
export function packResult(result: OpticsResult): PackedResult {
  if (!result.estimates) return result;
  const sources: ErrorSource[] = [];
  const places = new Map<string, number>();
  const placeOf = (source: ErrorSource): number => {
    const known = places.get(source.key);
    if (known !== undefined) return known;
    places.set(source.key, sources.length);
    return sources.push(source) - 1;
  };
  const numbers: number[] = [];
  const { drawn, ...all } = result.estimates;
  const estimates = changed(all, ({ value, standardUncertainty, interval95, budget }: Estimate): typeof PACKED => {
    numbers.push(value, standardUncertainty, ...interval95, budget.length);
    for (const { source, contribution } of budget) numbers.push(placeOf(source), contribution);
    return PACKED;
  });
  const { curve, field } = drawn;
  const lists = [curve.distances, curve.mean, curve.peak, ...(field ? [field.cells, field.atPoints] : [])];
  for (const it of lists) numbers.push(it.length, ...it);
  return {
    ...result,
    sources,
    numbers: Float64Array.from(numbers),
    estimates,
    ...(field && { field: { columns: field.columns, rows: field.rows } }),
  };
}

/** The result again, number for number. */
export function unpackResult(packed: PackedResult): OpticsResult {
  if (!packed.estimates) return packed;
  const { sources, numbers, estimates, field, ...rest } = packed;
  let place = 0;
  const next = () => at(numbers, place++);
  const nextList = () => {
    const from = place + 1;
    place = from + next();
    return numbers.slice(from, place);
  };
  const unpacked = changed(estimates, (): Estimate => {
    const [value, standardUncertainty, low, high] = [next(), next(), next(), next()];
    const budget = Array.from({ length: next() }, (): BudgetComponent => {
      const source = at(sources, next());
      return { source, contribution: next() };
    });
    return { value, standardUncertainty, interval95: [low, high], budget };
  });
  const drawn: DrawnLight = {
    curve: { distances: nextList(), mean: nextList(), peak: nextList() },
    ...(field && { field: { ...field, cells: nextList(), atPoints: nextList() } }),
  };
  return { ...rest, estimates: { ...unpacked, drawn } };
}

/** The same estimates, each in another form; they are met in the same order, whatever their form. */
function changed<From, To>(estimates: WithoutDrawing<From>, change: (it: From) => To): WithoutDrawing<To> {
  const { halfAngle, capture, samplingBias, emitted, targets, ...others } = estimates;
  return {
    ...others,
    halfAngle: change(halfAngle),
    capture: change(capture),
    ...(samplingBias !== undefined && { samplingBias: change(samplingBias) }),
    emitted: change(emitted),
    targets: targets.map((target) =>
      target.peakAbsent
        ? { ...target, mean: change(target.mean) }
        : { ...target, mean: change(target.mean), peak: change(target.peak), evenness: change(target.evenness) },
    ),
  };
}
