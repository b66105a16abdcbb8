/** The tables of the comparison: all figures side by side, and the means by distance. */
import { distanceMetric, TABLE_DISTANCES } from '../../../measure/beam/table-distances.ts';
import { isFigure } from '../../../measure/figure.ts';
import { showDate } from '../../../words/format.ts';
import { inInches } from '../../../words/other-unit.ts';
import { html } from '../../shared/browser/dom.ts';
import { COMPARE_GROUPS, type CompareRow, type RowWords } from './compare-rows.ts';
import { type ComparedContender, compareRow, outcomeWords } from './compare-words.ts';
import { figureElements, pageOf } from './compared-figure.ts';

/** Every figure of the chosen panels, a column a panel; under each how it lies to the first panel's. */
export function figuresTable(
  contenders: readonly ComparedContender[],
  first: ComparedContender,
  words: RowWords,
): HTMLElement {
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
          ...group.rows.map((row) => figureRow(row, contenders, first, words)),
        ),
      ),
    ),
  );
}

const groupHead = (title: string, count: number) =>
  html('tr', { class: 'group' }, html('th', { scope: 'rowgroup', colspan: count + 1 }, title));

function figureRow(
  row: CompareRow,
  contenders: readonly ComparedContender[],
  first: ComparedContender,
  words: RowWords,
): HTMLElement {
  const { name, method } = words[row.metric] ?? { name: row.metric, method: undefined };
  const outcomes = contenders.map((it) => (it === first ? undefined : compareRow(row, it, first)));
  const isMixed = outcomes.some((it) => it?.kind === 'unlike');
  return html(
    'tr',
    { 'data-metric': row.metric },
    html(
      'th',
      { scope: 'row' },
      method ? html('a', { href: `/methods/${method}/` }, name) : name,
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
        ...figureElements(it, row.metric),
        row.metric === 'real-price' &&
          it.panel.priced !== null &&
          html('small', {}, ` on ${showDate(it.panel.priced)}`),
        // A gap has said already why there is nothing to compare.
        outcome !== undefined && hasOwn && html('small', { class: 'apart' }, ` ${outcomeWords(row, outcome)}`),
      );
    }),
  );
}

/** Mean irradiance of the chosen panels at the distances of the guide's tables. */
export function meansTable(contenders: readonly ComparedContender[]): HTMLElement {
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
            ...contenders.map((it) =>
              html('td', {}, ...figureElements(it, distanceMetric('mean-irradiance', distance))),
            ),
          ),
        ),
      ),
    ),
  );
}
