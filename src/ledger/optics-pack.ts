import type { Contribution } from '../measure/figure.ts';
import type { Estimate, OpticsEstimates, OpticsResult } from '../measure/optics/estimate.ts';
import { lineWith } from '../measure/uncertainty.ts';

/** A line of a budget without what one figure answers to it by. */
type Line = Omit<Contribution, 'contribution'>;

interface PackedEstimate extends Omit<Estimate, 'budget'> {
  /** Pairs: place in the list of lines, contribution. */
  budget: Float64Array;
}

type Target = OpticsEstimates['targets'][number];

/** Estimates with their budgets packed. */
type PackedEstimates = Pick<OpticsEstimates, 'efficiency' | 'cutShare'> &
  Record<'halfAngle' | 'capture', PackedEstimate> &
  Partial<Record<'samplingBias' | 'emitted', PackedEstimate>> & {
    targets: Array<Pick<Target, 'distance'> & Record<'mean' | 'peak' | 'evenness', PackedEstimate>>;
  };

/**
 * A result in a small form: two dozen figures of a panel have the same dozen budget lines, whose words are then kept
 * once.
 */
export interface PackedResult extends Omit<OpticsResult, 'estimates'> {
  lines: Line[];
  estimates?: PackedEstimates;
}

/** Packs a result. */
export function packResult({ estimates, ...rest }: OpticsResult): PackedResult {
  const lines: Line[] = [];
  if (!estimates) return { ...rest, lines };
  const places = new Map<string, number>();
  const pack = ({ budget, ...it }: Estimate): PackedEstimate => ({
    ...it,
    budget: Float64Array.from(
      budget.flatMap(({ contribution, ...line }) => {
        let place = places.get(line.key);
        if (place === undefined) {
          place = lines.push(line) - 1;
          places.set(line.key, place);
        }
        return [place, contribution];
      }),
    ),
  });
  const { halfAngle, capture, samplingBias, emitted, efficiency, cutShare } = estimates;
  const targets = estimates.targets.map(({ distance, mean, peak, evenness }) => ({
    distance,
    mean: pack(mean),
    peak: pack(peak),
    evenness: pack(evenness),
  }));
  return {
    ...rest,
    lines,
    estimates: {
      halfAngle: pack(halfAngle),
      capture: pack(capture),
      ...(samplingBias && { samplingBias: pack(samplingBias) }),
      ...(emitted && { emitted: pack(emitted) }),
      ...(efficiency && { efficiency }),
      targets,
      cutShare,
    },
  };
}

/** The result again, number for number. */
export function unpackResult({ lines, estimates, ...rest }: PackedResult): OpticsResult {
  const { choice } = rest;
  if (!estimates || !('chosen' in choice)) return rest;
  const unpack = ({ budget, ...it }: PackedEstimate): Estimate => {
    const own: Contribution[] = [];
    for (let i = 0; i < budget.length; i += 2) {
      own.push(lineWith(lines[budget[i] as number] as Line, budget[i + 1] as number));
    }
    return { ...it, budget: own };
  };
  const { halfAngle, capture, samplingBias, emitted, efficiency, targets, cutShare } = estimates;
  return {
    ...rest,
    estimates: {
      order: choice.chosen,
      halfAngle: unpack(halfAngle),
      capture: unpack(capture),
      ...(samplingBias && { samplingBias: unpack(samplingBias) }),
      ...(emitted && { emitted: unpack(emitted) }),
      ...(efficiency && { efficiency }),
      targets: targets.map(({ distance, mean, peak, evenness }) => ({
        distance,
        mean: unpack(mean),
        peak: unpack(peak),
        evenness: unpack(evenness),
      })),
      cutShare,
    },
  };
}
