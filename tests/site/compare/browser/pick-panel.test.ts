import { describe, expect, test } from 'vitest';
import type { ListedPanel } from '../../../../src/site/compare/browser/compared-panel.ts';
import { meant } from '../../../../src/site/compare/browser/pick-panel.ts';

const PANELS = ['Knot R60', 'Knot R600', 'Plover Tern', 'Dunlin Tern Mini'].map(
  (name): ListedPanel => ({
    slug: name.toLowerCase().replaceAll(' ', '-'),
    name,
    maker: '',
    class: null,
    status: 'published',
  }),
);

describe('which panel a text means', () => {
  test.each([
    ['Knot R60', ['Knot R60']],
    ['  knot   r60 ', ['Knot R60']],
    ['r60', ['Knot R60', 'Knot R600']],
    ['r600', ['Knot R600']],
    ['tern', ['Plover Tern', 'Dunlin Tern Mini']],
    ['mini tern', ['Dunlin Tern Mini']],
    ['gull', []],
    ['  ', []],
  ])('“%s”', (text, names) => {
    expect(meant(text, PANELS).map((it) => it.name)).toEqual(names);
  });
});
