/** Takes printed figures apart again, so that a page can be held against the data files. */
import type { DataFigure } from './site.ts';

type Known = Extract<DataFigure, { value: number }>;

/** A number as it is printed: `31,000`, `−0.4`, `9.58`. */
const NUMBER = String.raw`−?\d[\d,]*(?:\.\d+)?`;
const FIGURE = new RegExp(
  String.raw`^(?<bound>[<>] )?(?<sign>−?[€£$])?(?<value>${NUMBER})(?: ± (?<plusMinus>${NUMBER}))?(?<unit>/\w+|°| dB\(A\)| [^\s(±\d][^\s(±]*)?(?<rest>.*)$`,
);

/** A printed number, and how much one of its last digit is worth. */
export interface Printed {
  value: number;
  step: number;
}

/** A figure in the parts that a reader sees. */
export interface PrintedFigure extends Printed {
  bound: '' | '<' | '>';
  /** Currency sign in front. */
  sign: string;
  plusMinus?: Printed;
  /** Where the interval is not symmetric: `(0 to 3.1)`. */
  interval?: [Printed, Printed];
  unit: string;
  /** Why the uncertainty is not known; empty where the page only says that it isn't. */
  notKnown?: string;
}

function number(text: string): Printed {
  const plain = text
    .replaceAll(',', '')
    .replace('−', '-')
    .replace(/^(-?)[€£$]/, '$1');
  return { value: Number(plain), step: 10 ** -(plain.split('.')[1]?.length ?? 0) };
}

/** The parts of a figure's text; undefined where it does not begin with a number. */
export function takeApart(text: string): PrintedFigure | undefined {
  const parts = FIGURE.exec(text)?.groups;
  if (!parts) return undefined;
  const rest = parts.rest ?? '';
  const interval = /\(?([−€£$\d.,]+) to ([−€£$\d.,]+)\)?/.exec(rest);
  const notKnown = /± not known(?:: (.*))?/.exec(rest);
  return {
    ...number(parts.value as string),
    bound: (parts.bound ?? '').trim() as '' | '<' | '>',
    sign: parts.sign ?? '',
    unit: (parts.unit ?? '').trim(),
    ...(parts.plusMinus && { plusMinus: number(parts.plusMinus) }),
    ...(interval && { interval: [number(interval[1] as string), number(interval[2] as string)] }),
    ...(notKnown && { notKnown: notKnown[1] ?? '' }),
  };
}

/**
 * What the last digit of a whole number is worth that stands beside its uncertainty: 1,110 ± 240 ends with its tens. By the
 * Particle Data Group's rule, which has two digits of an uncertainty that begins with 100 to 354 or 950 to 999, else one.
 */
function wholeStep([low, high]: readonly [number, number] | readonly number[]): number {
  const half = ((high ?? 0) - (low ?? 0)) / 2;
  const place = 10 ** Math.floor(Math.log10(half));
  return Math.max(1, half / place < 3.55 ? place / 10 : place);
}

/** Whether a printed number is the given one, rounded to its last digit. */
export function rounds(
  printed: (Printed & { bound?: string }) | undefined,
  value: number,
  interval?: readonly number[] | null,
): boolean {
  if (printed === undefined) return false;
  // A bound without ± is rounded away from what it bounds.
  if (printed.bound && !interval) {
    const away = (printed.bound === '<' ? 1 : -1) * (printed.value - value);
    return away >= -1e-9 * value && away < printed.step;
  }
  const step = printed.step === 1 && interval ? wholeStep(interval) : printed.step;
  return Math.abs(printed.value - value) <= 0.5001 * step;
}

/**
 * How a figure's text and the same figure in the data files disagree; empty where they agree. Value, bound and
 * uncertainty are compared; the unit is left to the caller, since tables give it in their heads.
 */
export function disagreements(text: string, figure: Known): string[] {
  const printed = takeApart(text);
  if (!printed) return [`"${text}" begins with no number`];
  const faults: string[] = [];
  const expect = (holds: boolean, what: string) => {
    if (!holds) faults.push(`"${text}": ${what}`);
  };
  const u = figure.standard_uncertainty;
  const [low, high] = figure.interval95 ?? [0, 0];
  const rounded = (it: Printed | undefined, value: number) => rounds(it, value, figure.interval95);
  expect(rounded(printed, figure.value), `the data have ${figure.value}`);
  expect(printed.bound === { below: '<', above: '>', none: '' }[figure.bound ?? 'none'], 'another bound in the data');
  // What lies beyond a bound has no ±, and its sign says so.
  expect((printed.notKnown !== undefined) === (u === null && !figure.bound), 'known and not known uncertainty');
  if (printed.notKnown) expect(printed.notKnown === figure.uncertainty_absent, 'another reason in the data');
  if (u === null) return faults;
  if (u === 0) expect(!printed.plusMinus && !printed.interval, 'exact in the data');
  else if (printed.plusMinus) expect(rounded(printed.plusMinus, (high - low) / 2), `the interval is ${low} to ${high}`);
  else {
    const ends = printed.interval;
    expect(rounded(ends?.[0], low) && rounded(ends?.[1], high), `the interval is ${low} to ${high}`);
  }
  return faults;
}

/** Unit of the data files as pages write it behind a number, and the sign in front of it. */
export function pageUnit(unit: string, currency: string): { sign: string; unit: string } {
  const sign = new Intl.NumberFormat('en-GB', { style: 'currency', currency })
    .formatToParts(0)
    .find((it) => it.type === 'currency')?.value as string;
  if (unit === currency) return { sign, unit: '' };
  if (unit.startsWith(`${currency}/`)) return { sign, unit: unit.slice(currency.length) };
  return { sign: '', unit: unit === '1' ? '' : unit };
}
