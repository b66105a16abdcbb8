import { describe, expect, test } from 'vitest';
import { gap, isFigure, relativeUncertainty } from '../../src/measure/figure.ts';
import { figure, line, vague } from './make.ts';

describe('figures and gaps', () => {
  test('a figure is one, and a gap or nothing is none', () => {
    expect(isFigure(figure(84))).toBe(true);
    expect(isFigure(vague(84))).toBe(true);
    expect(isFigure(gap('optical-power', 'not measured'))).toBe(false);
    expect(isFigure(undefined)).toBe(false);
  });

  test('a gap carries its metric and its reason, and no value', () => {
    expect(gap('optical-power', 'not measured')).toEqual({
      gap: true,
      metric: 'optical-power',
      reason: 'not measured',
    });
  });
});

describe('relative uncertainty', () => {
  test('is the standard uncertainty over the value', () => {
    expect(relativeUncertainty(figure(84, [line('a', 4.2)]))).toBeCloseTo(0.05, 12);
  });

  test('is positive for a negative value', () => {
    expect(relativeUncertainty(figure(-84, [line('a', 4.2)]))).toBeCloseTo(0.05, 12);
  });

  test('is 0 for an exact figure, zero included', () => {
    expect(relativeUncertainty(figure(599))).toBe(0);
    expect(relativeUncertainty(figure(0))).toBe(0);
  });

  test('is not known where the uncertainty is not', () => {
    expect(relativeUncertainty(vague(84))).toBeNull();
  });
});
