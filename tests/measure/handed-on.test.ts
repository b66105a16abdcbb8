import { describe, expect, test } from 'vitest';
import { changeFigure } from '../../src/measure/change.ts';
import type { Flag } from '../../src/measure/figure.ts';
import { impossibility, isInDoubt } from '../../src/measure/handed-on.ts';
import { stepUpFigures } from '../../src/measure/money/step-ups.ts';
import { verbatim } from '../../src/measure/statement.ts';
import { productFigure } from '../../src/measure/uncertainty.ts';
import { figure, identity, line } from './make.ts';

const flag = (severity: Flag['severity'], check = 'a-check'): Flag => ({
  check,
  severity,
  finding: verbatim(`${check}: odd.`),
  concerns: ['optical-power'],
});
const doubted = { ...figure(10, [line('a', 0.1)]), flags: [flag('note', 'old'), flag('doubt')] };

describe('a doubt', () => {
  test('goes into what is worked out of the figure, a note does not', () => {
    const it = productFigure(identity('price-per-watt'), [{ figure: doubted, power: -1 }], 100);
    expect(it.flags).toEqual([{ ...flag('doubt'), from: 'optical-power' }]);
    const next = productFigure(identity('next'), [{ figure: it, power: 1 }]);
    expect(next.flags.map((one) => one.from)).toEqual(['optical-power']);
  });

  test('goes into a change between sessions and into a step-up', () => {
    expect(isInDoubt(changeFigure('s', 'optical-power-change', figure(12, [line('b', 0.1)]), doubted))).toBe(true);
    const [step] = stepUpFigures(
      { panel: 'small', price: 100, power: doubted },
      [{ panel: 'large', price: 120, power: figure(20, [line('b', 0.1)]) }],
      'EUR',
    );
    expect(step && isInDoubt(step.extraPower)).toBe(true);
    expect(step?.extraPricePerWatt && isInDoubt(step.extraPricePerWatt)).toBe(true);
  });

  test('is no impossibility, and a note is no doubt', () => {
    expect(impossibility(doubted)).toBeUndefined();
    expect(isInDoubt({ flags: [flag('note')] })).toBe(false);
    expect(impossibility({ flags: [flag('doubt'), flag('impossible', 'wrong')] })?.check).toBe('wrong');
  });
});
