import { type Figure, type FigureOrGap, gap, isFigure } from '../figure.ts';
import { methodReference } from '../method-versions.ts';
import { number } from '../numbers.ts';
import { makeFigure, propagate } from '../uncertainty.ts';
import { BACKGROUND_CORRECTION, backgroundCorrection, levelSensitivities } from './background-sound.ts';
import { cited, type LimitResult, worded } from './limit.ts';
import { amount, asRead, cautiousEnd, outcome, roundedTo } from './words.ts';

const METRIC = 'sound-of-panel';

/** Levels read with the panel on and off, dB(A), and where. */
export interface SoundReading {
  on: FigureOrGap;
  off: FigureOrGap;
  /** The distance as the tester wrote it: "1 m". */
  distance: string | undefined;
}

/** The panel's own sound level at the place of the reading: the level read, less what the room adds. */
export function soundFigure(session: string, { on, off }: SoundReading): FigureOrGap {
  if (!isFigure(on)) return gap(METRIC, on.reason);
  if (on.bound) return gap(METRIC, `the reading with the panel on is only a bound, ${asRead(on)}`);
  if (!isFigure(off)) return gap(METRIC, `the room can’t be taken off: ${off.reason}`);
  if (off.bound === 'above') return gap(METRIC, 'the room was louder than the meter reads');
  const identity = {
    id: `${session}/${METRIC}`,
    metric: METRIC,
    unit: 'dB(A)',
    basis: 'derived',
    method: methodReference('sound-of-panel'),
    // A level in decibels may lie below zero.
    lowest: Number.NEGATIVE_INFINITY,
  } as const;
  const upperBound = (value: number, calculation: string, absent: string) =>
    makeFigure(
      {
        ...identity,
        bound: 'below',
        inputs: [on.id, off.id],
        notes: [...new Set([...on.notes, ...off.notes])],
        calculation,
      },
      value,
      { absent },
    );

  if (off.bound === 'below') {
    return upperBound(
      on.value,
      `L ≤ L_on = ${number(on.value)} dB(A), the room being below ${number(off.value)} dB(A)`,
      'only an upper bound is known, for the room was too quiet for the meter',
    );
  }
  // 45.2 less 30.2 is 15 dB, not the 15.000000000000004 of floating point, which is another row.
  const margin = Number((on.value - off.value).toFixed(9));
  if (!(margin > 0)) {
    return gap(METRIC, `not distinguishable from the room: at most ${amount(on.value, 'dB(A)')}`);
  }
  const { correction, isUpperBound } = backgroundCorrection(margin);
  const value = on.value - correction;
  const difference = `${number(on.value)} dB(A) − ${number(correction)} dB = ${number(value)} dB(A)`;
  if (isUpperBound) {
    return upperBound(
      value,
      `ΔL = ${number(margin)} dB < 6 dB: L ≤ ${difference}`,
      'only an upper bound is known, for the room is too loud for the full correction',
    );
  }
  const calculation =
    correction === 0
      ? `ΔL = ${number(margin)} dB > 15 dB: L = ${difference}`
      : `L = 10 lg(10^(${number(on.value)}/10) − 10^(${number(off.value)}/10)) = ${difference}`;
  const { on: onSensitivity, off: offSensitivity } = correction === 0 ? { on: 1, off: 0 } : levelSensitivities(margin);
  return propagate({ ...identity, calculation }, value, [
    { figure: on, sensitivity: onSensitivity },
    { figure: off, sensitivity: offSensitivity },
  ]);
}

/** The panel's sound in words. It is held against no limit. */
export function soundResult(session: string, reading: SoundReading): LimitResult {
  const figure = soundFigure(session, reading);
  const method = `The room is taken off by the ${cited(BACKGROUND_CORRECTION)}; no limit is held against it.`;
  return {
    id: METRIC,
    title: 'Sound of the panel alone',
    figure,
    ...(isFigure(figure)
      ? worded([readWords(reading), panelWords(figure, reading.on)], POINT, method)
      : worded([`No level can be given for the panel alone: ${figure.reason}.`], POINT, method)),
    limit: undefined,
    caution: 'sound',
  };
}

const POINT = 'It is a level at a point, not a sound power.';

function readWords({ on, off, distance }: SoundReading): string {
  if (!isFigure(on) || !isFigure(off)) return '';
  const place = distance === undefined ? 'the distance is not recorded' : `read at ${distance}`;
  return `With the panel on, the level was ${asRead(on)}; with it off, ${asRead(off)}; ${place}.`;
}

function panelWords(figure: Figure, on: FigureOrGap): string {
  if (!figure.bound || !isFigure(on)) return `The panel alone gives ${outcome(figure, 'high')}.`;
  // A bound carries no interval; how far the reading itself may be off moves it all the same.
  const end = on.interval95 ? cautiousEnd(on, 'high') : undefined;
  const moved =
    end === undefined
      ? ' (the value itself is used, for its uncertainty is not known)'
      : `, at the cautious end of the interval of the reading at most ${amount(roundedTo(figure.value + (end - on.value), 'high'), 'dB(A)')}`;
  return `The panel alone gives at most ${amount(figure.value, 'dB(A)')}${moved}; ${figure.uncertaintyAbsent}.`;
}
