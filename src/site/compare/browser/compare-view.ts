/** Builds what stands below the choice: sentences, table, drawing, curves. */

import { distanceMetric, TABLE_DISTANCES } from '../../../measure/beam/table-distances.ts';
import { isFigure } from '../../../measure/figure.ts';
import { figureWords, pricedAs } from '../../../words/figure-words.ts';
import { showDate } from '../../../words/format.ts';
import { inInches } from '../../../words/other-unit.ts';
import { sayDifference } from '../../../words/say-difference.ts';
import { elementOf, html, svg } from '../../shared/browser/dom.ts';
import { figurePieces } from '../../shared/browser/figure-pieces.ts';
import { fieldsDrawing } from './compare-drawing.ts';
import { curvesPlot } from './compare-plot.ts';
import { COMPARE_GROUPS, type CompareRow } from './compare-rows.ts';
import { againstFirst, type ComparedContender, compareRow, outcomeWords } from './compare-words.ts';

const ROWS = COMPARE_GROUPS.flatMap((it) => it.rows);

/** Everything that is shown of the chosen panels, the first of which the others are held against. */
export function comparison(contenders: readonly ComparedContender[]): HTMLElement[] {
  const first = contenders[0];
  if (!first) return [];
  return [
    ...(contenders.length > 1 ? againstSection(contenders, first) : []),
    html('h2', { id: 'compared-figures' }, 'Figures'),
    figuresTable(contenders, first),
    html('h2', { id: 'compared-sizes' }, 'LED fields to one scale'),
    ...sizes(contenders),
    html('h2', { id: 'compared-distances' }, 'Mean irradiance by distance'),
    ...distances(contenders),
  ];
}

const panelPage = (slug: string) => `/panels/${slug}/`;
const pageOf = ({ panel }: ComparedContender) => panelPage(panel.slug);

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

function figuresTable(contenders: readonly ComparedContender[], first: ComparedContender): HTMLElement {
  const plain = (name: string, method: string | undefined, of: (it: ComparedContender) => string) =>
    html(
      'tr',
      {},
      html('th', { scope: 'row' }, method ? html('a', { href: `/methods/${method}/` }, name) : name),
      ...contenders.map((it) => html('td', {}, of(it))),
    );
  const bench = html(
    'tbody',
    {},
    groupHead('Bench', contenders.length),
    plain('Size class', 'size-class', ({ panel }) => panel.sizeClass ?? 'not known: the LED area was not measured'),
    plain('Tested', 'bench-procedure', ({ panel }) => (panel.tested ? showDate(panel.tested) : 'not on the bench yet')),
    plain('Measuring distance', 'bench-procedure', ({ panel }) =>
      panel.conditions
        ? `${panel.conditions.distance} cm (${inInches(panel.conditions.distance)}), procedure version ${panel.conditions.methodVersion}`
        : 'not on the bench yet',
    ),
  );
  const many = contenders.length > 1;
  return html(
    'div',
    { class: 'sheet side-by-side', role: 'group', 'aria-label': 'Figures side by side', tabindex: 0 },
    html(
      'table',
      {},
      html(
        'caption',
        {},
        many ? `Under each figure: how it lies to that of the ${first.panel.name}, with the 95 % interval. ` : '',
        'Each value leads to its working, each name to its method.',
      ),
      html(
        'thead',
        {},
        html(
          'tr',
          {},
          html('th', { scope: 'col' }, 'Figure'),
          ...contenders.map((it) =>
            html(
              'th',
              { scope: 'col' },
              html('a', { href: pageOf(it) }, it.panel.name),
              it.panel.status !== 'published' && html('small', {}, ` ${it.panel.status}`),
              it === first && many && html('small', {}, ' the others are held against it'),
            ),
          ),
        ),
      ),
      bench,
      ...COMPARE_GROUPS.map((group) =>
        html(
          'tbody',
          {},
          groupHead(group.title, contenders.length),
          ...group.rows.map((row) => figureRow(row, contenders, first)),
        ),
      ),
    ),
  );
}

const groupHead = (title: string, count: number) =>
  html('tr', { class: 'group' }, html('th', { scope: 'rowgroup', colspan: count + 1 }, title));

function figureRow(row: CompareRow, contenders: readonly ComparedContender[], first: ComparedContender): HTMLElement {
  const outcomes = contenders.map((it) => (it === first ? undefined : compareRow(row, it, first)));
  const isMixed = outcomes.some((it) => it?.kind === 'unlike');
  return html(
    'tr',
    { 'data-metric': row.metric },
    html(
      'th',
      { scope: 'row' },
      html('a', { href: `/methods/${row.method}/` }, row.name),
      row.isModelled && html('small', {}, ' modelled'),
      isMixed && html('small', {}, ' not all measured alike'),
      row.caution &&
        html('small', {}, ' cautions: ', html('a', { href: `/cautions/#${row.caution.anchor}` }, row.caution.label)),
    ),
    ...contenders.map((it, i) => {
      const outcome = outcomes[i];
      const hasOwn = isFigure(it.figures.get(row.metric));
      return html(
        'td',
        {},
        ...figureNodes(it, row.metric),
        row.metric === 'real-price' &&
          it.panel.priced !== null &&
          html('small', {}, ` on ${showDate(it.panel.priced)}`),
        // A gap has said already why there is nothing to compare.
        outcome !== undefined && hasOwn && html('small', { class: 'apart' }, ` ${outcomeWords(row, outcome)}`),
      );
    }),
  );
}

/** A figure of a panel as on its own page. */
function figureNodes({ panel, figures }: ComparedContender, metric: string): HTMLElement[] {
  const words = figureWords(figures.get(metric), {
    currency: panel.currency,
    say: sayDifference,
    priced: metric === 'real-price' && panel.asPriced !== null ? pricedAs(panel.asPriced) : undefined,
    dagger: panel.marks[metric],
  });
  const page = panelPage(panel.slug);
  return figurePieces(words, {
    href: `${page}methodology/#${metric}`,
    className: 'figure',
    flagsAt: `${page}#flags`,
  }).map(elementOf);
}

function sizes(contenders: readonly ComparedContender[]): HTMLElement[] {
  const drawing = fieldsDrawing(contenders.map((it) => it.panel));
  const missing = contenders.filter((it) => it.panel.field === null);
  return [
    ...(drawing
      ? [
          html(
            'figure',
            { class: 'one-scale' },
            html(
              'div',
              { class: 'own-scroll', role: 'group', 'aria-label': 'LED fields to one scale', tabindex: 0 },
              svg(
                'svg',
                {
                  viewBox: `0 0 ${drawing.width} ${drawing.height}`,
                  width: drawing.width,
                  height: drawing.height,
                  role: 'img',
                  'aria-label': drawing.description,
                },
                svg('line', {
                  class: 'floor',
                  x1: drawing.rule.x,
                  x2: drawing.width,
                  y1: drawing.floor,
                  y2: drawing.floor,
                }),
                svg('line', {
                  class: 'rule',
                  x1: drawing.rule.x,
                  x2: drawing.rule.x,
                  y1: drawing.rule.top,
                  y2: drawing.floor,
                }),
                ...drawing.rule.ticks.flatMap(({ y, length, text }) => [
                  svg('line', { class: 'rule', x1: drawing.rule.x - length, x2: drawing.rule.x, y1: y, y2: y }),
                  ...(text ? [svg('text', { class: 'y', x: drawing.rule.x - 13, y }, text)] : []),
                ]),
                svg('text', { class: 'y', x: drawing.rule.x - 13, y: drawing.floor + 17 }, 'cm'),
                svg('path', { class: 'person', d: drawing.person.body }),
                svg('ellipse', { class: 'person', ...drawing.person.head }),
                svg('text', { class: 'x', ...drawing.person.label }, '170 cm tall'),
                ...drawing.fields.flatMap(({ leds, housing, middle, lines }) => [
                  ...(housing ? [svg('rect', { class: 'housing', ...housing })] : []),
                  svg('rect', { class: 'leds', ...leds }),
                  ...lines.map((text, i) =>
                    svg('text', { class: 'x', x: middle, y: drawing.floor + 17 * (i + 1) }, text),
                  ),
                ]),
              ),
            ),
            html(
              'figcaption',
              { class: 'small soft' },
              'Full line: the LED field as measured. Broken line: the housing, where its size is recorded; the field is drawn in its middle. Each hangs with its middle 85 cm above the floor, for the drawing only, or stands on the floor where it is taller than the figure. The figure is a plain outline of our own, for scale.',
            ),
          ),
        ]
      : []),
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
    ...(plot ? [curves(plot)] : []),
    ...missing.map((it) => html('p', { class: 'gap' }, it)),
    ...(plot ? [meansTable(contenders)] : []),
  ];
}

function curves(plot: NonNullable<ReturnType<typeof curvesPlot>>): HTMLElement {
  const { frame } = plot;
  return html(
    'figure',
    { class: 'plot overlaid' },
    html(
      'div',
      { class: 'own-scroll', role: 'group', 'aria-label': 'Mean irradiance by distance, drawn', tabindex: 0 },
      svg(
        'svg',
        {
          viewBox: `0 0 ${plot.width} ${plot.height}`,
          width: plot.width,
          height: plot.height,
          role: 'img',
          'aria-label': plot.description,
        },
        ...plot.y.flatMap(({ at, text }) => [
          svg('line', { class: 'grid', x1: frame.left, x2: frame.right, y1: at, y2: at }),
          svg('text', { class: 'y', x: frame.left - 8, y: at }, text),
        ]),
        ...plot.x.flatMap(({ at, text }) => [
          svg('line', { class: 'tick', x1: at, x2: at, y1: frame.bottom, y2: frame.bottom + 5 }),
          svg('text', { class: 'x', x: at, y: frame.bottom + 18 }, text),
        ]),
        svg(
          'text',
          { class: 'x', x: (frame.left + frame.right) / 2, y: frame.bottom + 36 },
          'distance from the LEDs, cm',
        ),
        svg(
          'text',
          { class: 'x', transform: `translate(12 ${(frame.top + frame.bottom) / 2}) rotate(-90)` },
          'mean irradiance, mW/cm²',
        ),
        ...plot.curves.flatMap((curve) => [
          svg('path', { class: `curve place-${curve.place}`, d: curve.path, 'stroke-dasharray': curve.dash }),
          svg('path', {
            class: 'leader',
            d: `M${curve.end.x + 3} ${curve.end.y}L${curve.label.x - 4} ${curve.label.y}`,
          }),
          svg('text', { class: 'name', x: curve.label.x + 34, y: curve.label.y }, curve.label.text),
          // A piece of the line itself before its name.
          svg('path', {
            class: `curve place-${curve.place}`,
            d: `M${curve.label.x} ${curve.label.y}h28`,
            'stroke-dasharray': curve.dash,
          }),
        ]),
      ),
    ),
    html('figcaption', { class: 'small soft' }, 'The values with their 95 % intervals stand in the table below.'),
  );
}

function meansTable(contenders: readonly ComparedContender[]): HTMLElement {
  return html(
    'div',
    {
      class: 'sheet side-by-side',
      role: 'group',
      'aria-label': 'Mean irradiance by distance, in numbers',
      tabindex: 0,
    },
    html(
      'table',
      {},
      html('caption', {}, 'Mean irradiance over each panel’s own LED field; 95 % intervals. Modelled.'),
      html(
        'thead',
        {},
        html(
          'tr',
          {},
          html('th', { scope: 'col' }, 'Distance'),
          ...contenders.map((it) => html('th', { scope: 'col' }, html('a', { href: pageOf(it) }, it.panel.name))),
        ),
      ),
      html(
        'tbody',
        {},
        ...TABLE_DISTANCES.map((distance) =>
          html(
            'tr',
            {},
            html('th', { scope: 'row' }, `${distance} cm (${inInches(distance)})`),
            ...contenders.map((it) => html('td', {}, ...figureNodes(it, distanceMetric('mean-irradiance', distance)))),
          ),
        ),
      ),
    ),
  );
}
