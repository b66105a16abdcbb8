/** Builds what stands below the choice: sentences, table, drawing, curves. */

import { html } from '../../shared/browser/dom.ts';
import { COMPARE_GROUPS, type RowWords } from './compare-rows.ts';
import { figuresTable, meansTable } from './compare-tables.ts';
import { againstFirst, type ComparedContender } from './compare-words.ts';
import { curvesPlot } from './curves-plot.ts';
import { curvesFigure, fieldsFigure } from './drawn-figures.ts';
import { fieldsDrawing } from './fields-drawing.ts';

const ROWS = COMPARE_GROUPS.flatMap((it) => it.rows);

/** Everything that is shown of the chosen panels, the first of which the others are held against. */
export function comparison(contenders: readonly ComparedContender[], words: RowWords): HTMLElement[] {
  const first = contenders[0];
  if (!first) return [];
  return [
    ...(contenders.length > 1 ? againstSection(contenders, first) : []),
    html('h2', { id: 'compared-figures' }, 'Figures'),
    figuresTable(contenders, first, words),
    html('h2', { id: 'compared-sizes' }, 'LED fields to one scale'),
    ...sizes(contenders),
    html('h2', { id: 'compared-distances' }, 'Mean irradiance by distance'),
    ...distances(contenders),
  ];
}

function againstSection(contenders: readonly ComparedContender[], first: ComparedContender): HTMLElement[] {
  return [
    html('h2', { id: 'compared-against' }, `Against the ${first.panel.name}`),
    html(
      'ul',
      { class: 'set-against' },
      ...contenders
        .slice(1)
        .map((it) => html('li', {}, html('strong', {}, it.panel.name), ` ${againstFirst(ROWS, it, first)}`)),
    ),
  ];
}

function sizes(contenders: readonly ComparedContender[]): HTMLElement[] {
  const drawing = fieldsDrawing(contenders.map((it) => it.panel));
  const missing = contenders.filter((it) => it.panel.field === null);
  return [
    ...(drawing ? [fieldsFigure(drawing)] : []),
    ...missing.map((it) => html('p', { class: 'gap' }, `Not drawn: ${it.panel.name}. Its LED field was not measured.`)),
  ];
}

function distances(contenders: readonly ComparedContender[]): HTMLElement[] {
  const drawn = contenders.flatMap(({ panel }, place) =>
    'absent' in panel.light ? [] : [{ name: panel.name, light: panel.light, place }],
  );
  const plot = curvesPlot(drawn);
  const missing = contenders.flatMap(({ panel }) =>
    'absent' in panel.light ? [`Not drawn: ${panel.name}: ${panel.light.absent}.`] : [],
  );
  return [
    html(
      'p',
      {},
      html('strong', {}, 'Modelled'),
      ' from the beams that each panel’s readings allow, over a rectangle of the size of its own LED field, both channels on. Nearer is brighter for the eyes too: ',
      html('a', { href: '/cautions/#eyes' }, 'eyes'),
      ', ',
      html('a', { href: '/cautions/#skin-and-heat' }, 'skin and heat'),
      '. ',
      html('a', { href: '/methods/distance-table/' }, 'How it is worked out.'),
    ),
    ...(plot ? [curvesFigure(plot)] : []),
    ...missing.map((it) => html('p', { class: 'gap' }, it)),
    ...(plot ? [meansTable(contenders)] : []),
  ];
}
