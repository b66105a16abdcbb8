/** Builds what is shown of the chosen panels: the sentence, the drawing of their sizes, tables, curves. */

import { showDate } from '../../../words/format.ts';
import { DOUBT_MARK } from '../../../words/marks.ts';
import { inInches } from '../../../words/other-unit.ts';
import { elementOf, html } from '../../shared/browser/dom.ts';
import { COMPARE_GROUPS, DISTANCE_ROWS, type RowWords } from './compare-rows.ts';
import { bodyWords, headingOf, pairSentence, shortNames, tallyWords, unlikeReasons } from './compare-sentence.ts';
import { children, rowsTable, type TableMade } from './compare-tables.ts';
import type { ComparedContender } from './compare-words.ts';
import { pageOf } from './compared-figure.ts';
import { fieldsDrawing } from './fields-drawing.ts';

/** What the page shows of the chosen panels, by its places. */
export interface Comparison {
  heading: Array<Node | string>;
  lead: HTMLElement[];
  drawn: HTMLElement[];
  tables: HTMLElement[];
}

/** Everything that is shown of the chosen panels; undefined where there is none. */
export function comparison(
  contenders: readonly ComparedContender[],
  words: RowWords,
  makeFirst: (slug: string) => void,
): Comparison | undefined {
  const [first, second] = contenders;
  if (!first) return undefined;
  const names = shortNames(contenders);
  if (!second) {
    const made = { contenders, first, names, words, told: new Set<string>() };
    const heading = [`And which other panel beside the ${names.get(first)}?`];
    return { heading, lead: [], drawn: sizes(made), tables: tables(made) };
  }
  const { heading, doubted } = headingOf(contenders);
  const mark = doubted.length > 0 ? ` ${DOUBT_MARK}` : '';
  const unlike = contenders.slice(1).map((it) => unlikeReasons(it, first));
  const made: TableMade = { contenders, first, names, words, told: new Set(unlike.flat()) };
  const against = (it: ComparedContender) => {
    const button = html('button', { type: 'button', 'data-act': 'first' }, `Against the ${names.get(it)} instead`);
    button.addEventListener('click', () => makeFirst(it.panel.slug));
    return button;
  };
  const notAlike = (i: number) => (unlike[i] ?? []).map((it) => ` Rows not read alike: ${it}.`);
  const body = (it: ComparedContender, subject: string) => {
    const told = bodyWords(it, first);
    return told.length > 0 ? children([`${subject} `, ...told, '.']) : [];
  };
  const doubts =
    doubted.length > 0
      ? [
          `${DOUBT_MARK} In doubt: `,
          ...doubted.flatMap((it, i) => [
            i > 0 && ', ',
            html('a', { href: `${pageOf(it)}#flags` }, `the ${names.get(it)}’s light`),
          ]),
          '.',
        ]
      : [];
  if (contenders.length === 2) {
    // "It" is the panel that the heading begins with.
    const subject =
      /^[^;]*\bthe (.+?) gives/i.exec(heading)?.[1] === names.get(second) ? 'It' : `The ${names.get(second)}`;
    const tally = tallyWords(second, first, words);
    const line = [...body(second, subject), tally && ` ${tally}`, ...notAlike(0), ' ', ...doubts];
    return {
      heading: [heading, mark],
      lead: [html('p', { class: 'lead', id: 'compared-against' }, ...line), html('p', {}, against(second))],
      drawn: sizes(made),
      tables: tables(made),
    };
  }
  return {
    heading: [heading, mark],
    lead: [
      ...(doubted.length > 0 ? [html('p', {}, ...doubts)] : []),
      html('h2', { id: 'compared-against' }, `Against the ${names.get(first)}`),
      html(
        'ul',
        {},
        ...contenders
          .slice(1)
          .map((it, i) =>
            html('li', {}, pairSentence(it, first, names), ' ', ...body(it, 'It'), ...notAlike(i), ' ', against(it)),
          ),
      ),
    ],
    drawn: sizes(made),
    tables: tables(made),
  };
}

/** The main figures, and the rest folded: by distance, then group by group. */
function tables(made: TableMade): HTMLElement[] {
  const [main, ...rest] = COMPARE_GROUPS;
  return [
    ...(main ? [html('div', { id: 'compared-figures' }, rowsTable(main.rows, main.title, made))] : []),
    cautions(),
    ...distances(made),
    ...spectra(made),
    ...rest.map(({ id, title, rows }) => folded(id, title, rowsTable(rows, title, made))),
    folded('bench', 'Class, date and procedure', benchList(made)),
  ];
}

function folded(id: string, title: string, ...content: HTMLElement[]): HTMLElement {
  return html(
    'details',
    { class: 'more-rows' },
    html('summary', {}, title),
    html('div', { id: `compared-${id}` }, ...content),
  );
}

/** What concerns the figures above, each one step away. */
function cautions(): HTMLElement {
  const link = (anchor: string, text: string) => html('a', { href: `/cautions/#${anchor}` }, text);
  return html(
    'p',
    { class: 'small' },
    'Cautions beside these figures: ',
    link('eyes', 'eyes'),
    ', ',
    link('skin-and-heat', 'skin and heat'),
    ', ',
    link('flicker', 'flicker'),
    ', ',
    link('implants-and-fields', 'implants and fields'),
    ', ',
    link('sound', 'sound'),
    '. Nearer is brighter for the eyes too.',
  );
}

/** Size class, day and procedure of each panel. */
function benchList({ contenders, names }: TableMade): HTMLElement {
  return html(
    'ul',
    {},
    ...contenders.map((it) => {
      const { sizeClass, tested, conditions } = it.panel;
      const parts = [
        sizeClass ?? 'size class not known, since the LED area was not measured',
        tested && conditions
          ? `tested ${showDate(tested)} at ${conditions.distance} cm (${inInches(conditions.distance)}), procedure version ${conditions.methodVersion}`
          : 'not on the bench yet',
      ];
      return html('li', {}, html('a', { href: pageOf(it) }, names.get(it)), `: ${parts.join('; ')}`);
    }),
  );
}

function sizes({ contenders, names }: TableMade): HTMLElement[] {
  const drawing = fieldsDrawing(contenders.map((it) => ({ panel: it.panel, name: names.get(it) ?? '' })));
  const missing = contenders.filter((it) => it.panel.field === null);
  const hasHousing = contenders.some((it) => it.panel.field && it.panel.housing);
  const caption = [
    ...(drawing
      ? [`To one scale; the figure is 170\u00a0cm tall.${hasHousing ? ' Broken line: the housing.' : ''}`]
      : []),
    ...missing.map((it) => `Not drawn: ${it.panel.name}. Its LED field was not measured.`),
  ];
  return [
    html(
      'figure',
      { class: 'one-scale', id: 'compared-sizes' },
      drawing && elementOf(drawing),
      html('figcaption', { class: 'small soft' }, caption.join(' ')),
    ),
  ];
}

/** Means by distance; their plot is drawn when somebody wants to see it, for it works the light out anew. */
function distances(made: TableMade): HTMLElement[] {
  const { contenders, names } = made;
  const drawn = contenders.flatMap((it, place) => {
    const { panel } = it;
    return 'absent' in panel.light ? [] : [{ name: names.get(it) ?? panel.name, light: panel.light, place }];
  });
  const missing = contenders.flatMap(({ panel }) =>
    'absent' in panel.light ? [`Not drawn: ${panel.name}: ${panel.light.absent}.`] : [],
  );
  const plot = html('div');
  const fold = folded(
    'distances',
    'Light by distance, modelled',
    html(
      'p',
      {},
      'Mean over a rectangle of the size of each panel’s own LED field, from the beams that its readings allow; both channels on. ',
      html('a', { href: '/methods/distance-table/' }, 'How it is worked out.'),
    ),
    plot,
    ...missing.map((it) => html('p', { class: 'gap' }, it)),
    ...(drawn.length > 0 ? [rowsTable(DISTANCE_ROWS, 'Mean irradiance by distance', made)] : []),
  );
  const draw = async () => {
    const { curvesFigure } = await import('./drawn-figures.ts');
    if (plot.childElementCount === 0) plot.append(...curvesFigure(drawn));
  };
  fold.addEventListener('toggle', draw, { once: true });
  matchMedia('print').addEventListener('change', draw, { once: true });
  return [fold];
}

/** Light by wavelength, drawn when somebody wants to see it; nothing where no panel has a spectrum. */
function spectra({ contenders, names }: TableMade): HTMLElement[] {
  const drawn = contenders.flatMap((it, place) => {
    const { panel } = it;
    const { slug, spectrum } = panel;
    return spectrum ? [{ slug, name: names.get(it) ?? panel.name, spectrum, place }] : [];
  });
  if (drawn.length === 0) return [];
  const missing = contenders.filter((it) => !it.panel.spectrum);
  const plot = html('div');
  const fold = folded(
    'spectra',
    'Light by wavelength',
    plot,
    html(
      'p',
      { class: 'small' },
      'Closer, with the files: ',
      ...drawn.flatMap(({ slug, name }, i) => [i > 0 && ', ', html('a', { href: `/panels/${slug}/files/` }, name)]),
    ),
    ...missing.map((it) => html('p', { class: 'gap' }, `Not drawn: ${it.panel.name}: no spectrum was taken.`)),
  );
  const draw = async () => {
    const { spectraFigure } = await import('./spectra-figure.ts');
    if (plot.childElementCount === 0) plot.append(...spectraFigure(drawn));
  };
  fold.addEventListener('toggle', draw, { once: true });
  matchMedia('print').addEventListener('change', draw, { once: true });
  return [fold];
}
