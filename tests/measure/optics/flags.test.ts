import { describe, expect, test } from 'vitest';
import { opticsFlags } from '../../../src/measure/optics/flags.ts';
import type { Order } from '../../../src/measure/optics/order-fit.ts';

const order = (source: Order['source']): Order => ({
  source,
  order: 4.8,
  halfAngle: 30,
  standardUncertainty: 1,
  interval95: [28, 32],
});

describe('flags of a panel’s beam', () => {
  test('none where there was nothing to find it from, or all ways agree', () => {
    expect(opticsFlags({ tried: {}, choice: { withheld: 'nothing', warnings: [] } })).toEqual([]);
    const grid = order('grid');
    expect(opticsFlags({ tried: { grid: { fit: grid } }, choice: { chosen: grid, warnings: [] } })).toEqual([]);
  });

  test('what is withheld is said with its reason, as a doubt', () => {
    const [flag, ...rest] = opticsFlags({
      tried: { grid: { withheld: 'no beam explains the grid', allowed: [] } },
      choice: { withheld: 'no beam explains the grid', warnings: [] },
    });
    expect(rest).toEqual([]);
    expect(flag).toMatchObject({ check: 'beam-withheld', severity: 'doubt' });
    expect(flag?.text).toBe('Emitted power and all that rests on the beam is withheld: no beam explains the grid.');
    expect(flag?.concerns).toContain('emitted-power');
    expect(flag?.concerns).not.toContain('optical-power');
  });

  test('a way that led nowhere is named beside the one that is used', () => {
    const flags = opticsFlags({
      tried: {
        sweep: { withheld: 'the sweep has one distance only' },
        grid: { fit: order('grid') },
        claim: { withheld: 'the claimed beam angle, 180°, is not between 0° and 180°' },
      },
      choice: { chosen: order('grid'), warnings: ['a, while b: the two disagree'] },
    });
    expect(flags.map((it) => [it.check, it.severity, it.text])).toEqual([
      ['beam-disagreement', 'doubt', 'A, while b: the two disagree.'],
      ['beam-not-used', 'note', 'The distance sweep did not give the beam: the sweep has one distance only.'],
      [
        'beam-not-used',
        'doubt',
        'The claimed beam angle did not give the beam: the claimed beam angle, 180°, is not between 0° and 180°.',
      ],
    ]);
  });
});
