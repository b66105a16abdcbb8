import type { Estimate, OpticsEstimates, OpticsResult } from '../measure/beam/optics-result.ts';
import type { BudgetComponent, ErrorSource } from '../measure/figure.ts';

interface PackedEstimate extends Omit<Estimate, 'budget'> {
  /** Pairs: place in the list of sources, contribution. */
  budget: Float64Array;
}

type Target = OpticsEstimates['targets'][number];

/** Estimates with their budgets packed. */
type PackedEstimates = Pick<OpticsEstimates, 'source' | 'efficiency' | 'model'> &
  Record<'halfAngle' | 'capture' | 'emitted', PackedEstimate> &
  Partial<Record<'samplingBias', PackedEstimate>> & {
    targets: Array<
      Pick<Target, 'distance' | 'peakAbsent'> &
        Record<'mean', PackedEstimate> &
        Partial<Record<'peak' | 'evenness', PackedEstimate>>
    >;
  };

/**
 * A result in a small form: two dozen figures of a panel have the same dozen error sources, whose words are then kept
 * once.
 */
export interface PackedResult extends Omit<OpticsResult, 'estimates'> {
  sources: ErrorSource[];
  estimates?: PackedEstimates;
}

/** Packs a result. */
export function packResult({ estimates, ...rest }: OpticsResult): PackedResult {
  const sources: ErrorSource[] = [];
  if (!estimates) return { ...rest, sources };
  const places = new Map<string, number>();
  const pack = ({ budget, ...it }: Estimate): PackedEstimate => ({
    ...it,
    budget: Float64Array.from(
      budget.flatMap(({ source, contribution }) => {
        let place = places.get(source.key);
        if (place === undefined) {
          place = sources.push(source) - 1;
          places.set(source.key, place);
        }
        return [place, contribution];
      }),
    ),
  });
  const { halfAngle, capture, samplingBias, emitted, targets, ...others } = estimates;
  return {
    ...rest,
    sources,
    estimates: {
      ...others,
      halfAngle: pack(halfAngle),
      capture: pack(capture),
      ...(samplingBias && { samplingBias: pack(samplingBias) }),
      emitted: pack(emitted),
      targets: targets.map(({ mean, peak, evenness, ...place }) => ({
        ...place,
        mean: pack(mean),
        ...(peak && { peak: pack(peak) }),
        ...(evenness && { evenness: pack(evenness) }),
      })),
    },
  };
}

/** The result again, number for number. */
export function unpackResult({ sources, estimates, ...rest }: PackedResult): OpticsResult {
  if (!estimates) return rest;
  const unpack = ({ budget, ...it }: PackedEstimate): Estimate => {
    const own: BudgetComponent[] = [];
    for (let i = 0; i < budget.length; i += 2) {
      own.push({ source: sources[budget[i] as number] as ErrorSource, contribution: budget[i + 1] as number });
    }
    return { ...it, budget: own };
  };
  const { halfAngle, capture, samplingBias, emitted, targets, ...others } = estimates;
  return {
    ...rest,
    estimates: {
      ...others,
      halfAngle: unpack(halfAngle),
      capture: unpack(capture),
      ...(samplingBias && { samplingBias: unpack(samplingBias) }),
      emitted: unpack(emitted),
      targets: targets.map(({ mean, peak, evenness, ...place }) => ({
        ...place,
        mean: unpack(mean),
        ...(peak && { peak: unpack(peak) }),
        ...(evenness && { evenness: unpack(evenness) }),
      })),
    },
  };
}
