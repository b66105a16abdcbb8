import { describe, expect, test } from 'vitest';
import type { Figure } from '../../src/measure/figure.ts';
import { fileAgainstTyped } from '../../src/measure/file-against-typed.ts';
import { makeFigure } from '../../src/measure/uncertainty.ts';
import { identity, line } from './make.ts';

const PATH = 'plover/2026-10-01/wavelengths.red.peak';
const of = (value: number, budget: ReturnType<typeof line>[], part: Partial<Figure> = {}): Figure => ({
  ...makeFigure({ ...identity('wavelength-red', 'nm'), inputs: [PATH] }, value, { budget }),
  ...part,
});
const own = (key: string, u: number) => [line(key, u)];

describe('a typed reading beside one from a file', () => {
  test('is odd where they differ by more than 1.96 √(0.3² + 0.4²) = 0.98', () => {
    const at = (file: number) => fileAgainstTyped({ typed: of(660, own('a', 0.3)), file: of(file, own('b', 0.4)) });
    expect(at(660.97)).toEqual([]);
    expect(at(659.03)).toEqual([]);
    expect(at(660.99)).toMatchObject([
      {
        check: 'file-against-typed',
        severity: 'doubt',
        finding: { typed: 660, file: 660.99, bound: undefined },
        at: ['session', 'wavelengths', 'red', 'peak'],
      },
    ]);
    expect(at(659.01)).toHaveLength(1);
  });

  test('what both share is no reason to differ: of one calibration of 5, only 0.3 and 0.4 are their own', () => {
    const typed = of(660, [line('calibration', 5), line('a', 0.3)]);
    expect(fileAgainstTyped({ typed, file: of(660.9, [line('calibration', 5), line('b', 0.4)]) })).toEqual([]);
    expect(fileAgainstTyped({ typed, file: of(661.1, [line('calibration', 5), line('b', 0.4)]) })).toHaveLength(1);
  });

  test('nothing is said where either has no known uncertainty', () => {
    const vague = makeFigure({ ...identity('wavelength-red', 'nm'), inputs: [PATH] }, 700, {
      absent: { code: 'instrument-not-named' },
    });
    expect(fileAgainstTyped({ typed: vague, file: of(600, own('b', 0.4)) })).toEqual([]);
    expect(fileAgainstTyped({ typed: of(600, own('b', 0.4)), file: vague })).toEqual([]);
  });

  test('a bound is broken on its own side alone', () => {
    const typed = of(0.5, [], { bound: 'below', standardUncertainty: null, interval95: null, coverageFactor: null });
    const at = (file: number) => fileAgainstTyped({ typed, file: of(file, own('b', 0.1)) }).length;
    expect([at(0.1), at(0.6), at(0.8)]).toEqual([0, 0, 1]);
  });
});
