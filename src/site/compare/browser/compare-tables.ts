/** The tables of the comparison: figures side by side, and each difference on one scale. */
import { isFigure } from '../../../measure/figure.ts';
import { fixed, showDate } from '../../../words/format.ts';
import { inInches } from '../../../words/other-unit.ts';
import { elementOf, html } from '../../shared/browser/dom.ts';
import { type Piece, piece } from '../../shared/browser/pieces.ts';
import type { CompareRow, RowWords } from './compare-rows.ts';
import { capital } from './compare-sentence.ts';
import { type ComparedContender, compareRow, outcomeWords } from './compare-words.ts';
import { figureElements, pageOf, type Remark, unitPieces } from './compared-figure.ts';
import { differenceLine, placeDifference, SCALE_END } from './difference-line.ts';

/** What every table is made with. */
export interface TableMade {
  contenders: readonly ComparedContender[];
  /** The others are held against it. */
  first: ComparedContender;
  names: ReadonlyMap<ComparedContender, string>;
  words: RowWords;
  /** Reasons that the page has told already. */
  told: ReadonlySet<string>;
}

type Child = Node | string | undefined | false;

/** Pieces as what elements are filled with. */
export const children = (pieces: readonly Piece[]): Array<Node | string> =>
  pieces.map((it) => (typeof it === 'string' ? it : elementOf(it)));

// The roles are said, since a style sheet that lays rows out as blocks would else take them from some readers.
const tr = (attributes: Record<string, string>, ...cells: Child[]) =>
  html('tr', { role: 'row', ...attributes }, ...cells);
const td = (className: string, ...content: Child[]) => html('td', { role: 'cell', class: className }, ...content);
const head = (className: string, ...content: Child[]) =>
  html('th', { role: 'columnheader', scope: 'col', class: className }, ...content);
const rowHead = (className: string, ...content: Child[]) =>
  html('th', { role: 'rowheader', scope: 'row', class: className }, ...content);

/** A table of some rows: two panels in columns beside each other, more of them under each other in each row. */
export function rowsTable(rows: readonly CompareRow[], label: string, made: TableMade): HTMLElement {
  const { length: count } = made.contenders;
  const many = count > 2;
  return html(
    'table',
    { role: 'table', class: `compared ${many ? 'many' : count > 1 ? 'pair' : 'alone'}`, 'aria-label': label },
    html('thead', { role: 'rowgroup' }, tr({}, ...(many ? manyHeads(rows, made) : pairHeads(rows, made)))),
    ...(many
      ? rows.map((row) => html('tbody', { role: 'rowgroup', 'data-metric': row.metric }, ...manyRows(row, made)))
      : [html('tbody', { role: 'rowgroup' }, ...rows.map((row) => pairRow(row, made)))]),
  );
}

function pairHeads(rows: readonly CompareRow[], { contenders, first, names }: TableMade): HTMLElement[] {
  const second = contenders.find((it) => it !== first);
  return [
    head('what', ...cornerWords(rows, contenders)),
    ...contenders.map((it) => head('n', html('a', { href: pageOf(it) }, names.get(it)))),
    ...(second ? [scaleHead(`${names.get(second)} against ${names.get(first)}, 95 %`)] : []),
  ];
}

function manyHeads(rows: readonly CompareRow[], { contenders, first, names }: TableMade): HTMLElement[] {
  return [
    head('what', ...cornerWords(rows, contenders)),
    head('who', 'Panel'),
    head('n', 'Value'),
    scaleHead(`Against the ${names.get(first)}, 95 %`),
  ];
}

/** The scale of all differences, over the column of the lines. */
const scaleHead = (words: string) =>
  html(
    'th',
    { role: 'columnheader', scope: 'col', colspan: 2, class: 'scale' },
    words,
    html(
      'span',
      { class: 'ends', 'aria-hidden': 'true' },
      ...[`−${SCALE_END} %`, '0', `+${SCALE_END} %`].map((it) => html('span', {}, it)),
    ),
  );

/** Where all of them were read, if rows hang on that and they were read at one place. */
function cornerWords(rows: readonly CompareRow[], contenders: readonly ComparedContender[]): Array<Node | string> {
  if (rows.some((it) => it.distance !== undefined)) return ['Distance'];
  const distances = new Set(contenders.map((it) => it.panel.conditions?.distance));
  const [distance] = distances;
  const isOne = distances.size === 1 && distance !== undefined && rows.some((it) => it.alike === 'reading');
  return isOne ? children(['Read at ', ...lengthPieces(distance)]) : ['Figure'];
}

/** A length in both units of which readers choose one. */
const lengthPieces = (cm: number): Piece[] => [
  piece('span', { 'data-u': 'cm' }, `${cm}\u00a0cm`),
  piece('span', { 'data-u': 'in', hidden: true }, inInches(cm)),
];

/** Name of a row, which leads to its method, with its unit and the distance that all panels were read at. */
function rowName(row: CompareRow, { contenders, words }: TableMade): Array<Node | string> {
  const unit = children(unitPieces(contenders, row.metric));
  if (row.distance !== undefined) return [...children(lengthPieces(row.distance)), ...unit];
  const { name, method } = words[row.metric] ?? { name: row.metric, method: undefined };
  const { alike } = row;
  const written = new Set(
    alike === 'sound' || alike === 'magnetic' || alike === 'electric'
      ? contenders.map((it) => it.panel.distances[alike]?.written)
      : [],
  );
  const [at] = written;
  return [
    method ? html('a', { href: `/methods/${method}/` }, capital(name)) : capital(name),
    ...unit,
    ...(written.size === 1 && at !== undefined ? [` at ${at.replaceAll(' ', '\u00a0')}`] : []),
  ];
}

function pairRow(row: CompareRow, made: TableMade): HTMLElement {
  const second = made.contenders.find((it) => it !== made.first);
  return tr(
    { 'data-metric': row.metric },
    rowHead('what', ...rowName(row, made)),
    ...made.contenders.map((it) => figureCell(row, it)),
    ...(second ? differenceCells(row, second, made) : []),
  );
}

function manyRows(row: CompareRow, made: TableMade): HTMLElement[] {
  const { contenders, first, names } = made;
  const what = html(
    'th',
    { role: 'rowheader', scope: 'rowgroup', rowspan: contenders.length, class: 'what' },
    ...rowName(row, made),
  );
  return contenders.map((it, i) =>
    tr(
      {},
      i === 0 && what,
      rowHead('who', names.get(it)),
      figureCell(row, it),
      ...(it === first
        ? [td('drawn', elementOf(differenceLine(undefined))), td('apart')]
        : differenceCells(row, it, made)),
    ),
  );
}

function figureCell(row: CompareRow, it: ComparedContender): HTMLElement {
  return td('n', ...figureElements(it, row.metric, remarkOf(row, it)));
}

/** The day of a price, and the sides of a field. */
function remarkOf({ metric }: CompareRow, { panel }: ComparedContender): Remark | undefined {
  if (metric === 'real-price' && panel.priced) {
    const day = showDate(panel.priced);
    return { remark: day, otherRemark: day };
  }
  if (metric !== 'led-area' || !panel.field) return undefined;
  const { width, height } = panel.field;
  const sides = (unit: number, decimals: number) =>
    `${fixed(width / unit, decimals)} × ${fixed(height / unit, decimals)}`;
  return { remark: sides(1, 1), otherRemark: sides(2.54, 1) };
}

/** A difference as a line and in words; in words alone where there is nothing to draw. */
function differenceCells(row: CompareRow, it: ComparedContender, { first, told }: TableMade): HTMLElement[] {
  // A gap has said already why there is nothing to compare.
  const isThere = isFigure(it.figures.get(row.metric)) && isFigure(first.figures.get(row.metric));
  if (!isThere) return [td('drawn'), td('apart')];
  const outcome = compareRow(row, it, first);
  if (outcome.kind === 'unlike' || outcome.kind === 'unknown') {
    const isTold = outcome.kind === 'unlike' && told.has(outcome.reason);
    return [td('drawn'), td('apart gap', isTold ? 'not read alike' : outcomeWords(row, outcome).text)];
  }
  const { text, reach } = outcomeWords(row, outcome);
  const drawn = placeDifference(outcome, row.difference !== undefined);
  // How far a tie reaches is drawn beside it: said to who can't see that, and to everybody where the drawing ends before.
  const isDrawnWhole = drawn && !drawn.isPastLow && !drawn.isPastHigh;
  return [
    td('drawn', drawn && elementOf(differenceLine(drawn, outcome.kind === 'tie'))),
    td(
      'apart',
      text,
      reach !== undefined && html('small', { class: isDrawnWhole ? 'unseen' : undefined }, ` ${reach}`),
    ),
  ];
}
