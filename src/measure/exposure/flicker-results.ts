import { type Figure, type FigureOrGap, gap, isFigure, type Unassessed } from '../figure.ts';
import { methodReference } from '../method-versions.ts';
import type { MetricId } from '../metrics.ts';
import { number } from '../numbers.ts';
import { type FigureIdentity, productFigure, propagate } from '../uncertainty.ts';
import { flickerLines, LOW_RISK, LOW_RISK_TO, NO_EFFECT, NO_EFFECT_TO, ROW_EDGE } from './flicker-lines.ts';
import { cited, type Limit, type LimitResult, type Wording, worded } from './limit.ts';
import { amount, asRead, leavingOut, outcome, relation } from './words.ts';

/** Modes as metric ids spell them, and in words. */
export const FLICKER_MODES = [
  ['combined', 'with both channels on'],
  ['red', 'with red alone on'],
  ['near-infrared', 'with near-infrared alone on'],
] as const;

export type FlickerMode = (typeof FLICKER_MODES)[number][0];

/** What a session says of the flicker of one mode. */
export interface FlickerReading {
  /** Modulation depth, %. */
  depth: FigureOrGap;
  /** Hz */
  frequency: FigureOrGap;
}

const LINES = [
  { key: 'lowRisk', metric: 'flicker-low-risk-multiple', limit: LOW_RISK, to: LOW_RISK_TO },
  { key: 'noEffect', metric: 'flicker-no-effect-multiple', limit: NO_EFFECT, to: NO_EFFECT_TO },
] as const;

/** Frequencies that are less than this share above 90 Hz might well be below it. Our own choice. */
const NEAR_EDGE = 0.05;

/** Flicker as multiples of the two lines at its frequency: mode by mode. */
export function flickerResults(session: string, readings: (mode: FlickerMode) => FlickerReading): LimitResult[] {
  return FLICKER_MODES.flatMap(([mode, words]) => {
    const reading = readings(mode);
    return LINES.map(({ key, metric, limit, to }): LimitResult => {
      const id = `${metric}-${mode}` as const;
      const figure =
        mode === 'near-infrared'
          ? gap(id, 'the lines speak of visible light')
          : multiple(session, id, reading, key, to);
      return {
        id,
        title: `Flicker ${words}: multiple of the ${limit.name}`,
        figure,
        ...(mode === 'near-infrared' ? invisibleWording(words, limit) : wordingFor(words, figure, reading, limit, key)),
        limit,
        caution: 'flicker',
      };
    });
  });
}

function multiple(
  session: string,
  metric: MetricId,
  { depth, frequency }: FlickerReading,
  key: 'lowRisk' | 'noEffect',
  to: number,
): FigureOrGap {
  if (!isFigure(depth)) return gap(metric, depth.reason);
  if (!isFigure(frequency)) return gap(metric, `not known, for ${frequency.reason}`);
  if (frequency.bound) return gap(metric, 'not known, for the frequency is only known to be beyond a bound');
  if (!(frequency.value > 0)) return gap(metric, 'not known, for without a frequency there is no line');
  const line = flickerLines(frequency.value)[key];
  if (line === 'no limit') return gap(metric, `no line applies, for the standard has none above ${to} Hz`);
  const value = depth.value / line;
  const identity: Omit<FigureIdentity, 'inputs'> = {
    id: `${session}/${metric}`,
    metric,
    unit: '1',
    basis: 'derived',
    method: methodReference('flicker-lines'),
    notes: [...frequency.notes, ...edgeNote(frequency, depth, key)],
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
    what: 'Frequency of the flicker',
    reason: frequency.uncertaintyAbsent ?? 'its uncertainty is not known',
  };
  return leavingOut({ ...ofDepth, inputs: [...ofDepth.inputs, frequency.id] }, missing);
}

/** Marks the note on a frequency close above 90 Hz. */
const EDGE_WORDS = 'where the line steps';

/** Close above 90 Hz the row is in doubt, and the multiple with it. */
function edgeNote(frequency: Figure, depth: Figure, key: 'lowRisk' | 'noEffect'): string[] {
  const f = frequency.value;
  if (f < ROW_EDGE || f >= ROW_EDGE * (1 + NEAR_EDGE)) return [];
  const below = flickerLines(ROW_EDGE * (1 - 1e-9))[key];
  if (below === 'no limit') return [];
  const multiple = `${depth.bound ? `${depth.bound} ` : ''}${number(depth.value / below, 3)}`;
  return [`${number(f)} Hz is close to ${ROW_EDGE} Hz, ${EDGE_WORDS}; just below it the multiple would be ${multiple}`];
}

/** Why there is none for near-infrared alone. */
function invisibleWording(words: string, limit: Limit): Wording {
  return worded(
    [`No multiple of the line can be given ${words}: the line, the ${cited(limit)}, speaks of visible light.`],
    'Near-infrared is invisible, so that the line can’t be held against it; that does not say that its flicker does nothing.',
  );
}

function wordingFor(
  words: string,
  figure: FigureOrGap,
  { depth, frequency }: FlickerReading,
  limit: Limit,
  key: 'lowRisk' | 'noEffect',
): Wording {
  const source = `The line is the ${cited(limit)}; it speaks of visible light only.`;
  if (!isFigure(figure) || !isFigure(depth) || !isFigure(frequency)) {
    const reason = isFigure(figure) ? '' : figure.reason;
    return worded([`No multiple of the line can be given ${words}: ${reason}.`], source);
  }
  const height = flickerLines(frequency.value)[key];
  const line = height === 'no limit' ? 'the line' : `the line at that frequency, ${amount(height, '%')}`;
  const edge = figure.notes.find((note) => typeof note === 'string' && note.includes(EDGE_WORDS));
  return worded(
    [
      `The light flickers ${words} by ${asRead(depth)} at ${amount(frequency.value, 'Hz')}: ${outcome(figure, 'high', line)}.`,
      frequency.standardUncertainty === null ? 'How sure the frequency is, is not known.' : '',
      edge ? `Note: ${edge}.` : '',
    ],
    source,
  );
}
