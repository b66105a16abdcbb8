import { beforeAll, describe, expect, test } from 'vitest';
import { buildLedger } from '../../../../src/ledger/build-ledger.ts';
import type { Ledger, PanelEntry } from '../../../../src/ledger/ledger.ts';
import { isFigure } from '../../../../src/measure/figure.ts';
import type { MetricId } from '../../../../src/measure/metrics.ts';
import { type Box, isWithin, overlap } from '../../../../src/site/guide/picture/boxes.ts';
import { frontierFactors } from '../../../../src/site/guide/picture/drawn-panels.ts';
import { MARK } from '../../../../src/site/guide/picture/picture-layout.ts';
import { type PowerPicture, pictureView } from '../../../../src/site/guide/picture/picture-view.ts';
import { textWidth } from '../../../../src/site/guide/picture/text-width.ts';
import { TODAY, tinyContent } from '../../../support/content-folder.ts';
import { type Demo, demoLedger } from '../../../support/demo-ledger.ts';

let demo: Demo;
let picture: PowerPicture;
beforeAll(() => {
  demo = demoLedger();
  picture = pictureView(demo.ledger);
});

const figureOf = (panel: PanelEntry, metric: MetricId) => {
  const it = panel.figures.get(metric);
  return isFigure(it) ? it.value : undefined;
};
const panelOf = ({ address }: { address: string }) => demo.panel(address.split('/')[2] ?? '');
/** A ledger with some of its panels, or with panels changed. */
const changed = (ledger: Ledger, change: (panel: PanelEntry) => PanelEntry[]): Ledger => ({
  ...ledger,
  panels: new Map([...ledger.panels.values()].flatMap(change).map((it) => [it.slug, it])),
});
type Layout = PowerPicture['layouts'][number];
const nameBox = (layout: Layout, { x, y, anchor, text }: NonNullable<Layout['marks'][number]['name']>): Box => {
  const width = textWidth(text, layout.nameSize);
  const left = x - { start: 0, middle: width / 2, end: width }[anchor];
  return { left, right: left + width, top: y - 0.8 * layout.nameSize, bottom: y + 0.2 * layout.nameSize };
};

describe('the panels', () => {
  test('every one of the ledger is drawn in both layouts, or left out with a reason', () => {
    expect(picture.layouts.map((it) => it.name)).toEqual(['wide', 'narrow']);
    const out = picture.leftOut.flatMap((it) => it.panels.map(({ address }) => address));
    for (const { panels } of picture.layouts) {
      const all = [...panels.map((it) => it.address), ...out];
      expect(all.toSorted()).toEqual([...demo.ledger.panels.keys()].map((it) => `/panels/${it}/`).toSorted());
    }
  });

  test('withdrawn ones and those measured elsewhere are left out', () => {
    const reasons = new Map(picture.leftOut.flatMap((it) => it.panels.map((panel) => [panel.name, it.reason])));
    expect(reasons.get('Ostrel Bord')).toBe('withdrawn from the guide');
    expect(reasons.get('Ostrel Vagg')).toBe('measured at 30 cm');
  });

  test('so are those without a figure, with one that can’t be right, or measured elsewhere', () => {
    const reasonOf = (change: (panel: PanelEntry) => PanelEntry) => {
      const ledger = changed(demo.ledger, (it) => [it.slug === 'kelpwright-gannet' ? change(it) : it]);
      const view = pictureView(ledger);
      expect(view.layouts[0]?.panels.some((it) => it.label.startsWith('Kelpwright Gannet'))).toBe(false);
      return view.leftOut.find((it) => it.panels.some(({ name }) => name === 'Kelpwright Gannet'))?.reason;
    };
    const withFigures = (panel: PanelEntry, metric: MetricId, figure: ReturnType<PanelEntry['figures']['get']>) => {
      const figures = new Map(panel.figures);
      if (figure) figures.set(metric, figure);
      else figures.delete(metric);
      return { ...panel, figures };
    };
    expect(reasonOf((it) => withFigures(it, 'real-price', undefined))).toBe('not measured');
    expect(
      reasonOf((it) => {
        const power = it.figures.get('optical-power');
        if (!isFigure(power)) throw new Error('no power');
        const [flag] = [...demo.ledger.panels.values()].flatMap((other) => other.flags);
        if (!flag) throw new Error('no flag');
        return withFigures(it, 'optical-power', { ...power, flags: [{ ...flag, severity: 'impossible' }] });
      }),
    ).toBe('impossible as it stands, see its flags');
    expect(
      reasonOf((it) => {
        const price = it.figures.get('real-price');
        if (!isFigure(price)) throw new Error('no price');
        return withFigures(it, 'real-price', { ...price, value: 0 });
      }),
    ).toBe('a price or a power of nought');
    expect(
      reasonOf((it) => {
        if (!it.current) throw new Error('not tested');
        const conditions = { distance: 20, methodVersion: 1, isReference: false };
        return { ...it, current: { ...it.current, conditions } };
      }),
    ).toBe('measured at 20 cm');
  });

  test('each says its name, price, power and price for a watt', () => {
    const labels = picture.layouts[0]?.panels.map((it) => it.label);
    expect(labels).toContain('Kelpwright Gannet: €849, 207 W, €4.10 a watt');
    expect(labels?.filter((it) => it.startsWith('Quennick Dab'))).toEqual([expect.stringMatching(/; in doubt$/)]);
  });

  test('they stand where their figures say, cheapest first', () => {
    for (const { panels } of picture.layouts) {
      const prices = panels.map((it) => figureOf(panelOf(it), 'real-price') ?? 0);
      expect(prices).toEqual(prices.toSorted((a, b) => a - b));
      expect(panels.map((it) => it.x)).toEqual(panels.map((it) => it.x).toSorted((a, b) => a - b));
      const strongest = panels.toSorted((a, b) => a.y - b.y).map((it) => figureOf(panelOf(it), 'optical-power') ?? 0);
      expect(strongest).toEqual(strongest.toSorted((a, b) => b - a));
    }
  });

  test('an interval reaches past its mark’s middle both ways', () => {
    for (const { panels } of picture.layouts) {
      for (const { interval } of panels) {
        const [from, to] = (/^M0 ([\d.]+)V(-[\d.]+)$/.exec(interval ?? '') ?? []).slice(1).map(Number);
        expect(from).toBeGreaterThan(0);
        expect(to).toBeLessThan(0);
      }
    }
  });

  test('each has the shape of its size class, which the key explains', () => {
    const keys = new Map(picture.keys.map((it) => [it.id, it.name]));
    expect(new Set(picture.keys.map((it) => it.shape)).size).toBe(picture.keys.length);
    for (const it of picture.layouts[0]?.panels ?? []) expect(keys.get(it.shape)).toBe(panelOf(it).sizeClass?.name);
  });
});

describe('names', () => {
  test('all twelve panels of the demonstration have theirs, on a phone too', () => {
    for (const { panels } of picture.layouts) expect(panels.filter((it) => !it.name)).toEqual([]);
  });

  test('are the model’s, and the maker’s too where two models are called alike', () => {
    const names = (view: PowerPicture) => view.layouts[0]?.panels.flatMap((it) => it.name?.text ?? []) ?? [];
    expect(names(picture)).toContain('Gannet');
    const alike = changed(demo.ledger, (it) => [
      it.data.model === 'Tope' ? { ...it, data: { ...it.data, model: 'Gannet' } } : it,
    ]);
    expect(names(pictureView(alike))).toEqual(expect.arrayContaining(['Kelpwright Gannet', 'Quennick Tope']));
  });

  test('have the mark of a doubt', () => {
    const names = picture.layouts[0]?.panels.flatMap((it) => it.name?.text ?? []);
    expect(names).toContain('Dab†');
  });
});

describe.each([1, 9])('a ledger with %i times the panels', (times) => {
  const many = () =>
    changed(demo.ledger, (panel) =>
      Array.from({ length: times }, (_, i) => {
        const figures = new Map(panel.figures);
        for (const metric of ['real-price', 'optical-power'] as const) {
          const it = figures.get(metric);
          if (isFigure(it)) figures.set(metric, { ...it, value: it.value * (1 + 0.13 * i) });
        }
        const data = { ...panel.data, model: `${panel.data.model} ${i}` };
        return { ...panel, data, slug: `${panel.slug}-${i}`, figures };
      }),
    );

  test('nothing that is drawn meets another thing, and nothing leaves its sheet', () => {
    for (const layout of pictureView(many()).layouts) {
      const { panels, frame, width, height, xTicks, lines, wordSize } = layout;
      expect(panels).toHaveLength(11 * times);
      const marks = panels.map(
        ({ x, y }): Box => ({ left: x - MARK, right: x + MARK, top: y - MARK, bottom: y + MARK }),
      );
      for (const it of marks) expect(isWithin(it, frame)).toBe(true);
      const names = panels.flatMap(({ x, y, name }) =>
        name ? [nameBox(layout, { ...name, x: x + name.x, y: y + name.y })] : [],
      );
      expect(names.length).toBeGreaterThan(8);
      for (const [i, it] of names.entries()) {
        expect(isWithin(it, frame)).toBe(true);
        expect([...names.slice(i + 1), ...marks].filter((other) => overlap(it, other))).toEqual([]);
        // The middles of the lines' words.
        for (const { x, y } of lines) expect(overlap(it, { left: x, right: x, top: y, bottom: y })).toBe(false);
      }
      expect(lines.length).toBeGreaterThan(2);
      for (const { at, text } of xTicks) {
        expect(at - textWidth(text, wordSize) / 2).toBeGreaterThanOrEqual(0);
        expect(at + textWidth(text, wordSize) / 2).toBeLessThanOrEqual(width + 0.1);
      }
      expect(isWithin(frame, { left: 0, top: 0, right: width, bottom: height })).toBe(true);
    }
  });

  test('the same each time', () => {
    expect(pictureView(many())).toEqual(pictureView(many()));
  });

  test('lengths are short', () => {
    const text = JSON.stringify(
      pictureView(many()).layouts.map(({ panels, grid, stairs, lines }) => [panels, grid, stairs, lines]),
    );
    expect(text).toMatch(/\d\.\d/);
    const drawn = text.replaceAll(/"(label|text)":"[^"]*"/g, '');
    expect(drawn).not.toMatch(/\d\.\d\d/);
  });
});

test('where names crowd, those near the frontier keep theirs', () => {
  const crowd = changed(demo.ledger, (panel) =>
    Array.from({ length: 9 }, (_, i) => {
      const figures = new Map(panel.figures);
      const power = figures.get('optical-power');
      if (isFigure(power)) figures.set('optical-power', { ...power, value: power.value * 0.93 ** i });
      return {
        ...panel,
        data: { ...panel.data, model: `${panel.data.model} ${i}` },
        slug: `${panel.slug}-${i}`,
        figures,
      };
    }),
  );
  const panelAt = ({ address }: { address: string }) => crowd.panels.get(address.split('/')[2] ?? '') as PanelEntry;
  for (const { panels } of pictureView(crowd).layouts) {
    const offers = panels.map(panelAt).map((it) => ({
      price: figureOf(it, 'real-price') ?? 0,
      power: figureOf(it, 'optical-power') ?? 0,
    }));
    const factors = frontierFactors(offers);
    const mean = (indexes: number[]) => indexes.reduce((sum, i) => sum + (factors[i] ?? 0), 0) / indexes.length;
    const [named, unnamed] = [true, false].map((has) =>
      panels.flatMap((it, i) => ((it.name !== undefined) === has ? [i] : [])),
    ) as [number[], number[]];
    expect(Math.min(named.length, unnamed.length)).toBeGreaterThan(10);
    expect(mean(named)).toBeLessThan(mean(unnamed));
  }
});

test('the stepped line goes through the panels of the frontier', () => {
  for (const { stairs, panels } of picture.layouts) {
    const on = panels.filter((it) => panelOf(it).frontier === 'on');
    expect(on.length).toBeGreaterThan(3);
    const [first, ...rest] = on;
    expect(stairs.startsWith(`M${first?.x} ${first?.y}`)).toBe(true);
    for (const { x, y } of rest) expect(stairs).toContain(`H${x}V${y}`);
  }
});

test('a guide that has nothing to draw draws nothing', () => {
  const none = pictureView(changed(demo.ledger, (it) => (it.data.status === 'withdrawn' ? [it] : [])));
  expect(none.layouts).toEqual([]);
  expect(none.leftOut).toHaveLength(1);
});

test('a guide of two panels has a picture', () => {
  const content = tinyContent();
  try {
    const ledger = buildLedger(content.content(), { today: TODAY });
    const view = pictureView(ledger);
    const drawn = view.layouts[0]?.panels.length ?? 0;
    expect(drawn + view.leftOut.flatMap((it) => it.panels).length).toBe(ledger.panels.size);
  } finally {
    content.delete();
  }
});
