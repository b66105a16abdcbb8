import { beforeAll, describe, expect, test } from 'vitest';
import { isFigure } from '../../../../src/measure/figure.ts';
import { classAnswers } from '../../../../src/site/guide/answers/class-answers.ts';
import { type Demo, demoLedger } from '../../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

describe('the lowest price of a watt in each size class', () => {
  test('is in the order of the classes, with a way to the class and to each panel', () => {
    const answers = classAnswers(demo.ledger, 'optical');
    expect(answers.map((it) => [it.name, it.address])).toEqual(
      demo.ledger.guide.sizeClasses.map((it) => [it.name, `#${it.id}`]),
    );
    for (const { panels } of answers) {
      expect(panels.length).toBeGreaterThan(0);
      for (const it of panels) expect(it.perWatt.calculation).toBe(`${it.address}methodology/#price-per-watt`);
    }
  });

  test('is what no panel of the class, measured alike, undercuts', () => {
    const perWatt = (slug: string) => {
      const it = demo.ledger.panels.get(slug)?.figures.get('price-per-watt');
      return isFigure(it) ? it.value : Number.NaN;
    };
    for (const { name, panels } of classAnswers(demo.ledger, 'optical')) {
      const alike = [...demo.ledger.panels.values()].filter(
        (it) => it.sizeClass?.name === name && it.rank && it.current?.conditions.isReference,
      );
      const lowest = Math.min(...alike.map((it) => perWatt(it.slug)));
      expect(perWatt(panels[0]?.address.split('/')[2] ?? ''), name).toBe(lowest);
    }
  });

  test('names all that the readings do not tell apart from it, and nobody else', () => {
    for (const { panels } of classAnswers(demo.ledger, 'optical')) {
      const slugs = panels.map((it) => it.address.split('/')[2] ?? '');
      const [first = '', ...others] = slugs;
      expect(others.toSorted()).toEqual(demo.ledger.panels.get(first)?.rank?.tiedWith.toSorted());
    }
    expect(classAnswers(demo.ledger, 'optical').some((it) => it.panels.length > 1)).toBe(true);
  });

  test('goes by the watt that leaves the LEDs where the guide does', () => {
    const answers = classAnswers(demo.ledger, 'emitted');
    for (const { panels } of answers) {
      const [first, ...others] = panels.map((it) => demo.ledger.panels.get(it.address.split('/')[2] ?? ''));
      expect(others.map((it) => it?.slug).toSorted()).toEqual(first?.byEmitted.rank?.tiedWith.toSorted());
      for (const it of panels) expect(it.perWatt.calculation).toBe(`${it.address}methodology/#price-per-emitted-watt`);
    }
    const names = (it: typeof answers) => it.map(({ panels }) => panels.map(({ name }) => name));
    expect(names(answers)).not.toEqual(names(classAnswers(demo.ledger, 'optical')));
  });

  test('has nothing to say of an empty guide', () => {
    expect(classAnswers({ ...demo.ledger, classes: [] }, 'optical')).toEqual([]);
  });
});
