/** A panel's prices over time as steps: each holds until the next was seen. */
import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { money, showDate } from '../../words/format.ts';
import { type PieceElement, piece } from '../shared/browser/pieces.ts';

/** One dated price in the guide's currency. */
interface Step {
  date: string;
  paid: number;
  list: number | undefined;
}

const WIDTH = 420;
/** At the right there is room for the newest price. */
const EDGE = { left: 6, right: 72, top: 18, bottom: 24 };
const HEIGHT = 130;
const FLOOR = HEIGHT - EDGE.bottom;
/** Room for a letter of labels, and for a date. */
const LETTER = 7;
/** Between a line and its label. */
const GAP = 5;
const LINE_HEIGHT = 14;

/** The drawing, on a scale of money from nought; undefined where there are not two prices. */
export function priceSteps({ prices }: PanelEntry, { guide, today }: Ledger): PieceElement | undefined {
  const steps = prices.map(stepOf).toReversed();
  const [first] = steps;
  const newest = steps.at(-1);
  if (!first || steps.length < 2) return undefined;
  const { currency } = guide;
  const [from, until] = [first.date, today].map((it) => Date.parse(it)) as [number, number];
  const most = Math.max(...steps.flatMap((it) => [it.paid, it.list ?? 0]));
  const right = WIDTH - EDGE.right;
  const x = (date: string) =>
    round(EDGE.left + ((right - EDGE.left) * (Date.parse(date) - from)) / Math.max(1, until - from));
  const y = (amount: number) => round(FLOOR - ((FLOOR - EDGE.top) * amount) / most);
  const endOf = (i: number) => (steps[i + 1] ? x(steps[i + 1]?.date ?? today) : right);

  const line = (amountOf: (it: Step) => number | undefined) => {
    let path = '';
    let isDrawing = false;
    steps.forEach((it, i) => {
      const amount = amountOf(it);
      if (amount !== undefined) path += `${isDrawing ? `V${y(amount)}` : `M${x(it.date)} ${y(amount)}`}H${endOf(i)}`;
      isDrawing = amount !== undefined;
    });
    return path;
  };
  const listPath = line((it) => it.list);
  const dates = kept(
    steps.map((it) => ({ at: x(it.date), text: showDate(it.date) })),
    right,
  );
  return piece(
    'svg',
    {
      class: 'price-steps',
      viewBox: `0 0 ${WIDTH} ${HEIGHT}`,
      width: WIDTH,
      height: HEIGHT,
      role: 'img',
      'aria-label': `Prices over time: ${steps.map((it) => `${showDate(it.date)}, ${stepWords(it, currency)}`).join('; ')}`,
    },
    piece('path', { class: 'axis', d: `M${EDGE.left} ${FLOOR}H${right}` }),
    listPath !== '' && piece('path', { class: 'list', d: listPath }),
    piece('path', { class: 'paid', d: line((it) => it.paid) }),
    ...steps
      .slice(0, -1)
      .flatMap((it, i) => labels(it, { x: x(it.date) + 3, y, currency, room: endOf(i) - x(it.date) }, newest)),
    ...(newest ? endLabels(newest, { x: right + GAP, y, currency }) : []),
    ...dates.map((it) => piece('text', { x: it.x, y: HEIGHT - 6, 'text-anchor': it.anchor }, it.text)),
  );
}

function stepOf({ price, figure }: PanelEntry['prices'][number]): Step {
  // The figure is what was paid, or asked where nothing was, in the guide's currency.
  const own = price.paid ?? price.list ?? 0;
  const list = price.list === undefined || own === 0 ? undefined : (price.list / own) * figure.value;
  return { date: price.date, paid: figure.value, list };
}

const stepWords = ({ paid, list }: Step, currency: string) =>
  list === undefined || list === paid
    ? money(rounded(paid), currency)
    : `list ${money(rounded(list), currency)}, paid ${money(rounded(paid), currency)}`;

/** Of the list over its line, of what was paid under it, where the step is long enough; what the end says is not said twice. */
function labels(
  { paid, list }: Step,
  at: { x: number; y: (amount: number) => number; currency: string; room: number },
  newest: Step | undefined,
): PieceElement[] {
  const text = (words: string, y: number, className: string) =>
    words.length * LETTER <= at.room ? [piece('text', { class: className, x: at.x, y: round(y) }, words)] : [];
  return [
    ...(list === undefined || list === paid || list === newest?.list
      ? []
      : text(`list ${money(rounded(list), at.currency)}`, at.y(list) - GAP, 'list')),
    ...(paid === newest?.paid ? [] : text(money(rounded(paid), at.currency), at.y(paid) + LINE_HEIGHT, 'paid')),
  ];
}

/** Of the newest price, at the end of its lines. */
function endLabels(
  { paid, list }: Step,
  at: { x: number; y: (amount: number) => number; currency: string },
): PieceElement[] {
  const middle = 4;
  const low = at.y(paid) + middle;
  const text = (words: string, y: number, className: string) =>
    piece('text', { class: className, x: at.x, y: round(y) }, words);
  return [
    ...(list === undefined || list === paid
      ? []
      : [text(`list ${money(rounded(list), at.currency)}`, Math.min(at.y(list) + middle, low - LINE_HEIGHT), 'list')]),
    text(money(rounded(paid), at.currency), low, 'paid'),
  ];
}

/** Dates that have room beside those before them. */
function kept(dates: ReadonlyArray<{ at: number; text: string }>, right: number) {
  const shown: Array<{ x: number; anchor: 'start' | 'end'; text: string; end: number }> = [];
  for (const { at, text } of dates) {
    const width = text.length * LETTER;
    const isLast = at + width > right + EDGE.right;
    const start = isLast ? right + EDGE.right - width : at;
    const before = shown.at(-1);
    if (before && start < before.end + LETTER) continue;
    shown.push({ x: isLast ? right + EDGE.right : at, anchor: isLast ? 'end' : 'start', text, end: start + width });
  }
  return shown;
}

/** To cents, as money is written. */
const rounded = (amount: number) => Number(amount.toFixed(2));
const round = (value: number) => Number(value.toFixed(1));
