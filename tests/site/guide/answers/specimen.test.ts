import { beforeAll, describe, expect, test } from 'vitest';
import { isFigure } from '../../../../src/measure/figure.ts';
import { specimen } from '../../../../src/site/guide/answers/specimen.ts';
import { showFigure } from '../../../../src/words/format.ts';
import { type Demo, demoLedger } from '../../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

describe('the line to read the tables by', () => {
  test('is of a panel of the guide that ties, with a rank that is a range', () => {
    const found = specimen(demo.ledger, 'optical');
    const panel = [...demo.ledger.panels.values()].find((it) => it.name === found?.name);
    expect(panel?.rank?.tiedWith).not.toEqual([]);
    expect(found?.rank).toBe(panel?.rank?.range?.join('–'));
    expect(found?.value).toMatch(/^€[\d.]+$/);
    expect(found?.plusMinus).toMatch(/^[\d.]+$/);
    expect(found?.distance).toEqual({ cm: '15.24 cm', in: '6.0 in' });
  });

  test('goes by the watt that leaves the LEDs where the guide does', () => {
    const found = specimen(demo.ledger, 'emitted');
    const panel = [...demo.ledger.panels.values()].find((it) => it.name === found?.name);
    expect(found?.basis).toBe('emitted');
    expect(found?.rank).toBe(panel?.byEmitted.rank?.range?.join('–'));
    const figure = panel?.figures.get('price-per-emitted-watt');
    expect(found?.value).toBe(figure && isFigure(figure) && showFigure(figure, 'EUR').value);
  });

  test('does with a place where no rank is a range, and without any where none is ranked', () => {
    const certain = demo.ledger.classes.map((it) => ({
      ...it,
      groups: it.groups.map((group) => ({
        ...group,
        panels: group.panels.map((panel) =>
          panel.rank ? { ...panel, rank: { ...panel.rank, range: [1, 1] as const, tiedWith: [] } } : panel,
        ),
      })),
    }));
    expect(specimen({ ...demo.ledger, classes: certain }, 'optical')?.rank).toBe('1');
    expect(specimen({ ...demo.ledger, classes: [] }, 'optical')).toBeUndefined();
  });
});
