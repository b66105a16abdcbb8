import { at } from '../measure/at.ts';
import type {
  Estimate,
  EstimatedOptics,
  EstimatesOf,
  OpticsResult,
  WithheldOptics,
} from '../measure/beam/optics-result.ts';
import type { BudgetComponent, ErrorSource } from '../measure/figure.ts';

interface PackedEstimate extends Omit<Estimate, 'budget'> {
  /** Pairs: place in the list of sources, contribution. */
  budget: Float64Array;
}

/** A result in a small form: two dozen figures of a panel have the same dozen error sources, which are then kept once. */
export type PackedResult =
  | WithheldOptics
  | (Omit<EstimatedOptics, 'estimates'> & { sources: readonly ErrorSource[]; estimates: EstimatesOf<PackedEstimate> });

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
  const estimates = changed(
    result.estimates,
    ({ budget, ...it }): PackedEstimate => ({
      ...it,
      budget: Float64Array.from(budget.flatMap(({ source, contribution }) => [placeOf(source), contribution])),
    }),
  );
  return { ...result, sources, estimates };
}

/** The result again, number for number. */
export function unpackResult(packed: PackedResult): OpticsResult {
  if (!packed.estimates) return packed;
  const { sources, estimates, ...rest } = packed;
  const unpack = ({ budget, ...it }: PackedEstimate): Estimate => {
    const own: BudgetComponent[] = [];
    for (let i = 0; i < budget.length; i += 2) {
      const [place = Number.NaN, contribution = Number.NaN] = budget.subarray(i, i + 2);
      own.push({ source: at(sources, place), contribution });
    }
    return { ...it, budget: own };
  };
  return { ...rest, estimates: changed(estimates, unpack) };
}

/** The same estimates, each in another form. */
function changed<From, To>(estimates: EstimatesOf<From>, change: (it: From) => To): EstimatesOf<To> {
  const { halfAngle, capture, samplingBias, emitted, targets, ...others } = estimates;
  return {
    ...others,
    halfAngle: change(halfAngle),
    capture: change(capture),
    ...(samplingBias && { samplingBias: change(samplingBias) }),
    emitted: change(emitted),
    targets: targets.map((target) =>
      target.peakAbsent
        ? { ...target, mean: change(target.mean) }
        : { ...target, mean: change(target.mean), peak: change(target.peak), evenness: change(target.evenness) },
    ),
  };
}
