import { describe, expect, test } from 'vitest';
import { gap, isFigure } from '../../src/measure/figure.ts';
import { verbatim } from '../../src/measure/statement.ts';
import { figure, vague } from './make.ts';

describe('figures and gaps', () => {
  test('a figure is one, and a gap or nothing is none', () => {
    expect(isFigure(figure(84))).toBe(true);
    expect(isFigure(vague(84))).toBe(true);
    expect(isFigure(gap('optical-power', verbatim('not measured')))).toBe(false);
    expect(isFigure(undefined)).toBe(false);
  });

  test('a gap carries its metric and its reason, and no value', () => {
    expect(gap('optical-power', verbatim('not measured'))).toEqual({
      gap: true,
      metric: 'optical-power',
      reason: verbatim('not measured'),
    });
  });
});
