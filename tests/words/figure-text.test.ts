import { describe, expect, test } from 'vitest';
import { gap } from '../../src/measure/figure.ts';
import { verbatim } from '../../src/measure/statement.ts';
import { showText } from '../../src/words/figure-text.ts';
import { figure, line } from '../measure/make.ts';

describe('showText', () => {
  test('a figure, the reason of a gap, or that there is nothing', () => {
    expect(showText(figure(84.3, [line('a', 9.2 / 1.959963985)]), 'EUR')).toBe('84 ± 9 W');
    expect(showText(gap('sound-on', verbatim('the meter was lent out')), 'EUR')).toBe('the meter was lent out');
    expect(showText(undefined, 'EUR')).toBe('not measured');
  });
});
