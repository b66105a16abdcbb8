import { describe, expect, test } from 'vitest';
import { type Difference, isTie, ratioTo } from '../../../src/measure/difference.ts';
import { NO_INSTRUMENT } from '../../../src/measure/instrument/instrument.ts';
import { costRatio, pricePerWatt } from '../../../src/measure/money/cost.ts';
import { say } from '../../../src/words/say.ts';
import { figure, line, vague } from '../make.ts';

const known = (it: Difference) => {
  if (it.kind === 'unknown') throw new Error(`not known: ${say(it.reason)}`);
  return it;
};

describe('what a watt costs', () => {
  test('is the price over the power', () => {
    expect(pricePerWatt(660, 120)).toBe(5.5);
  });

  test('of more light for less money is negative', () => {
    expect(pricePerWatt(-100, 20)).toBe(-5);
  });
});

describe('what a watt costs, against another', () => {
  test('is the ratio of the prices over that of the powers, which have the errors', () => {
    const [x, y] = [figure(120, [line('a', 3)]), figure(100, [line('b', 2)])];
    const cost = known(costRatio({ price: 660, power: x }, { price: 500, power: y }));
    const power = known(ratioTo(y, x));
    expect(cost.value).toBeCloseTo(660 / 120 / 5, 12);
    expect(cost.interval95[0]).toBeCloseTo((660 / 500) * power.interval95[0], 12);
    expect(cost.interval95[1]).toBeCloseTo((660 / 500) * power.interval95[1], 12);
  });

  test('of two equal exact offers is the same', () => {
    expect(costRatio({ price: 10, power: figure(5) }, { price: 20, power: figure(10) }).kind).toBe('same');
  });

  test('is not known without an uncertainty, in whichever it is missing', () => {
    const [sure, unsure] = [
      { price: 10, power: figure(5, [line('a', 0.1)]) },
      { price: 10, power: vague(5, NO_INSTRUMENT) },
    ];
    for (const it of [costRatio(sure, unsure), costRatio(unsure, sure)]) {
      expect(it).toEqual({ kind: 'unknown', reason: NO_INSTRUMENT });
      expect(isTie(it)).toBe(false);
    }
  });
});
