import { type Bound, type Figure, type FigureOrGap, gap, isFigure, type Unassessed } from '../figure.ts';
import { identityOf, type ListedMetricId } from '../metrics.ts';
import { MODES_COMBINED_FIRST, type Mode } from '../modes.ts';
import { number } from '../numbers.ts';
import type { Statement } from '../statement.ts';
import { type FigureIdentity, productFigure, propagate } from '../uncertainty.ts';
import { type FlickerLines, flickerLines, LOW_RISK_TO, NO_EFFECT_TO, ROW_EDGE } from './flicker-lines.ts';
import type { HeldFigure, LimitId } from './limit.ts';
import { leavingOut, relation } from './made-of.ts';

declare module '../statement.ts' {
  interface StatementData {
    'flicker-lines-visible-only': object;
    'flicker-multiple-unknown': { because: Statement };
    'flicker-frequency-a-bound': object;
    'flicker-without-frequency': object;
    /** The standard has no line above a frequency, Hz. */
    'flicker-no-line-above': { hertz: number };
    /** A frequency, Hz, close above where the lines step, and what the multiple would be just below it. */
    'flicker-near-step': { hertz: number; multiple: number; bound?: Bound };
    /** What a budget leaves out. */
    'flicker-frequency': object;
  }
}

/** What a session says of the flicker of one mode. */
export interface FlickerReading {
  /** Modulation depth, %. */
  depth: FigureOrGap;
  /** Hz */
  frequency: FigureOrGap;
}

/** The lines that flicker is held against. */
export type FlickerLine = keyof FlickerLines;

/** A mode's flicker as a multiple of one line. */
export interface FlickerResult extends HeldFigure, FlickerReading {
  hazard: 'flicker';
  mode: Mode;
  line: FlickerLine;
}

const LINES = [
  { line: 'lowRisk', metric: 'flicker-low-risk-multiple', limit: 'flicker-low-risk', to: LOW_RISK_TO },
  { line: 'noEffect', metric: 'flicker-no-effect-multiple', limit: 'flicker-no-effect', to: NO_EFFECT_TO },
] as const satisfies ReadonlyArray<{ line: FlickerLine; metric: string; limit: LimitId; to: number }>;

/** Frequencies that are less than this share above 90 Hz might well be below it. Our own choice. */
const NEAR_EDGE = 0.05;

/** Flicker as multiples of the two lines at its frequency: mode by mode. The lines speak of visible light. */
export function flickerResults(session: string, readings: (mode: Mode) => FlickerReading): FlickerResult[] {
  return MODES_COMBINED_FIRST.flatMap((mode) => {
    const reading = readings(mode);
    return LINES.map(({ line, metric, limit, to }): FlickerResult => {
      const id = `${metric}-${mode}` as const;
      const figure =
        mode === 'near-infrared'
          ? gap(id, { code: 'flicker-lines-visible-only' })
          : multiple(session, id, reading, line, to);
      return { hazard: 'flicker', id, figure, ...reading, mode, line, limit };
    });
  });
}

function multiple(
  session: string,
  metric: ListedMetricId,
  { depth, frequency }: FlickerReading,
  which: FlickerLine,
  to: number,
): FigureOrGap {
  if (!isFigure(depth)) return gap(metric, depth.reason);
  const unknown = (because: Statement) => gap(metric, { code: 'flicker-multiple-unknown', because });
  if (!isFigure(frequency)) return unknown(frequency.reason);
  if (frequency.bound) return unknown({ code: 'flicker-frequency-a-bound' });
  if (!(frequency.value > 0)) return unknown({ code: 'flicker-without-frequency' });
  const line = flickerLines(frequency.value)[which];
  if (line === 'no-limit') return gap(metric, { code: 'flicker-no-line-above', hertz: to });
  const value = depth.value / line;
  const identity: Omit<FigureIdentity, 'inputs'> = {
    ...identityOf(metric, session),
    basis: 'derived',
    notes: [...frequency.notes, ...nearStep(frequency, depth, which)],
    calculation: `k ${relation(depth.bound)} ${number(depth.value)} % ÷ (${number(line / frequency.value, 3)} % × ${number(frequency.value)}) = ${number(value)}`,
  };
  if (frequency.standardUncertainty !== null) {
    // Within a row the line is proportional to the frequency.
    return productFigure(
      identity,
      [
        { figure: depth, power: 1 },
        { figure: frequency, power: -1 },
      ],
      frequency.value / line,
    );
  }
  const ofDepth = propagate(identity, value, [{ figure: depth, sensitivity: 1 / line }]);
  const missing: Unassessed = {
    what: { code: 'flicker-frequency' },
    reason: frequency.uncertaintyAbsent ?? { code: 'uncertainty-not-known' },
  };
  return leavingOut({ ...ofDepth, inputs: [...ofDepth.inputs, frequency.id] }, missing);
}

/** Close above 90 Hz the row is in doubt, and the multiple with it. */
function nearStep(frequency: Figure, depth: Figure, which: FlickerLine): Statement[] {
  const hertz = frequency.value;
  if (hertz < ROW_EDGE || hertz >= ROW_EDGE * (1 + NEAR_EDGE)) return [];
  const below = flickerLines(ROW_EDGE * (1 - 1e-9))[which];
  if (below === 'no-limit') return [];
  return [
    { code: 'flicker-near-step', hertz, multiple: depth.value / below, ...(depth.bound && { bound: depth.bound }) },
  ];
}
