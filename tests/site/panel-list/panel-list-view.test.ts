import { beforeAll, expect, test } from 'vitest';
import { type ListedPanel, type PanelListView, panelListView } from '../../../src/site/panel-list/panel-list-view.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

let view: PanelListView;
let panels: ListedPanel[];
const { ledger } = demoLedger();
beforeAll(() => {
  view = panelListView(ledger);
  panels = view.makers.flatMap((it) => it.panels);
});

test('has every panel once, under its maker', () => {
  expect(panels.map((it) => it.name).toSorted()).toEqual([...ledger.panels.values()].map((it) => it.name).toSorted());
  for (const { name, panels: own } of view.makers) {
    for (const it of own) expect(it.name).toBe(`${name} ${it.model}`);
  }
});

test('shows a photo, or for want of one its outline, all to one scale', () => {
  let outlined = 0;
  for (const it of panels) {
    const entry = [...ledger.panels.values()].find(({ name }) => name === it.name);
    const hasOwn = entry?.photos.some(({ date }) => date === undefined);
    expect([it.photo !== undefined, it.outline !== undefined], it.name).toEqual(
      hasOwn ? [true, false] : [false, entry?.data.field !== undefined],
    );
    if (!it.outline || !entry?.data.field) continue;
    outlined++;
    // To a ten-thousandth of the square.
    for (const side of ['width', 'height'] as const) {
      expect(it.outline.field[side]).toBeCloseTo(entry.data.field[side].value / largest(), 4);
    }
  }
  expect(outlined).toBeGreaterThan(1);
  expect(panels.some((it) => it.photo)).toBe(true);
});

function largest(): number {
  const sides = [...ledger.panels.values()].flatMap(({ data }) =>
    [data.field, data.housing].flatMap((it) => (it ? [it.width.value, it.height.value] : [])),
  );
  return Math.max(...sides);
}

test('explains the marks that it has, and that one was measured elsewhere', () => {
  expect(view.isFar).toBe(true);
  expect(view.marks).toEqual(['† marks a figure in doubt.']);
  expect(panels.find((it) => it.model === 'Vagg')?.about).toBe('Torso, measured at 30 cm');
  expect(panels.find((it) => it.model === 'Bord')?.about).toBe('Desk, withdrawn');
});
