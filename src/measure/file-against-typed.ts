import { differenceFrom } from './difference.ts';
import type { Figure, Flag, Unit } from './figure.ts';
import type { MetricId } from './metrics.ts';
import { coverageFactor, effectiveDegreesOfFreedom } from './uncertainty.ts';

declare module './statement.ts' {
  interface StatementData {
    /** A typed reading and one from a file that tell of the same; `joint` is the 95 % uncertainty of their difference. */
    'file-against-typed': {
      metric: MetricId;
      typed: number;
      file: number;
      unit: Unit;
      /** How the typed one is bounded. */
      bound: Figure['bound'];
      joint: number;
    };
    'which-of-the-two': object;
  }
}

/** A reading that was typed and comes from a file too. */
export interface FileTwin {
  typed: Figure;
  file: Figure;
}

/** `<panel>/<date>/` of a reading's path. */
const OWNER = /^[^/]+\/\d{4}-\d\d-\d\d\//;

/**
 * Holds a reading from a file against the one that was typed: odd where they differ by more than the 95 % uncertainty of
 * their difference. What both share, as the calibration of one meter, is no reason to differ (JCGM 100:2008, 5.2.2).
 * Where all that they do not share is unknown, the two uncertainties stand in as if nothing were shared: wider, and so
 * slower to doubt. Nothing is said where either has no known uncertainty.
 */
export function fileAgainstTyped({ typed, file }: FileTwin): Flag[] {
  const joint = jointUncertainty(typed, file);
  if (joint === undefined || !isApart(typed, file, joint)) return [];
  const [path = ''] = typed.inputs;
  const finding = {
    code: 'file-against-typed',
    metric: typed.metric,
    typed: typed.value,
    file: file.value,
    unit: typed.unit,
    bound: typed.bound,
    joint,
  } as const;
  return [
    {
      check: 'file-against-typed',
      severity: 'doubt',
      finding,
      hint: { code: 'which-of-the-two' },
      concerns: [typed.metric],
      at: ['session', ...keysOf(path.replace(OWNER, ''))],
    },
  ];
}

/** True where the two tell of different things; a bound is only broken on its own side. */
function isApart(typed: Figure, file: Figure, joint: number): boolean {
  const difference = file.value - typed.value;
  if (typed.bound === 'below') return difference > joint;
  if (typed.bound === 'above') return -difference > joint;
  return Math.abs(difference) > joint;
}

/** 95 % uncertainty of the difference; undefined where it is not known. */
export function jointUncertainty(typed: Figure, file: Figure): number | undefined {
  if (file.standardUncertainty === null || file.coverageFactor === null) return undefined;
  // A bound has none of its own: what lies beyond it by the file's own uncertainty breaks it.
  if (typed.bound) return file.coverageFactor * file.standardUncertainty;
  if (typed.standardUncertainty === null) return undefined;
  const difference = differenceFrom(file, typed);
  if (difference.kind === 'apart' || difference.kind === 'tie') {
    return (difference.interval95[1] - difference.interval95[0]) / 2;
  }
  const u = Math.hypot(typed.standardUncertainty, file.standardUncertainty);
  const parts = [typed, file].flatMap((it) => it.budget);
  return coverageFactor(effectiveDegreesOfFreedom(parts)) * u;
}

/** `wavelengths.red.peak`, `grid.rows[0][1]` to keys. */
function keysOf(path: string): PropertyKey[] {
  return path.split(/[.[\]]+/).flatMap((it) => (it === '' ? [] : [/^\d+$/.test(it) ? Number(it) : it]));
}
