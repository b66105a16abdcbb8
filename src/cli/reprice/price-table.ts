import { counted } from '../../content/read/problem-list.ts';
import type { Price } from '../../content/schema/panel.ts';
import { fixed, money, showDate } from '../../words/format.ts';
import type { PlannedPrice } from './plan.ts';

/** Widths of the columns: 80 in all, with a space between two. */
const WIDTHS = [25, 11, 11, 8, 11, 9] as const;
const HEAD = ['Panel', 'Paid before', 'Paid now', 'Change', 'List before', 'List now'];

/**
 * What was and what will be, a line a panel, in 80 columns; what there is besides the amounts stands below.
 *
 * @example
 * 2 prices, all of 24 Nov 2026:
 *
 * Panel                     Paid before    Paid now   Change List before  List now
 * Kelpwright Gannet                €849        €799   −5.9 %      €1,190    €1,190
 */
export function priceTable(planned: readonly PlannedPrice[]): string {
  const days = [...new Set(planned.map(({ price }) => price.date))];
  const [day = ''] = days;
  const title = days.length === 1 ? `, ${planned.length > 1 ? 'all ' : ''}of ${showDate(day)}` : '';
  const rows = planned.flatMap((it) => [
    line(cellsOf(it)),
    ...besides(it, days.length > 1).map((text) => `    ${text}`),
  ]);
  return [`${counted(planned.length, 'price')}${title}:`, '', line(HEAD), ...rows].join('\n');
}

function cellsOf({ panel, price, same, earlier }: PlannedPrice): string[] {
  const before = same ?? earlier;
  const shown = (of: Price | undefined, key: 'list' | 'paid') =>
    of?.[key] === undefined ? '–' : money(of[key], of.currency);
  return [
    panel.name,
    shown(before, 'paid'),
    shown(price, 'paid'),
    changeText(before, price),
    shown(before, 'list'),
    shown(price, 'list'),
  ];
}

/** How much more or less is to be paid, in %; of the list price where nothing else is known. */
function changeText(before: Price | undefined, now: Price): string {
  const percent = changeOf(before, now);
  if (percent === undefined) return '–';
  const text = fixed(percent, 1);
  return percent === 0 ? 'none' : `${text.startsWith('−') ? '' : '+'}${text} %`;
}

/** The same as a number; undefined where the two can't be compared. */
export function changeOf(before: Price | undefined, now: Price): number | undefined {
  const key = now.paid !== undefined && before?.paid !== undefined ? 'paid' : 'list';
  const [old, mine] = [before?.[key], now[key]];
  if (old === undefined || mine === undefined || before?.currency !== now.currency) return undefined;
  return (100 * (mine - old)) / old;
}

/** What a price says besides its amounts that the one before did not, or no longer. */
function besides({ price, same, earlier }: PlannedPrice, isDayShown: boolean): string[] {
  const before = same ?? earlier;
  const code = codeText(price);
  return [
    ...(isDayShown ? [`of ${showDate(price.date)}`] : []),
    ...(price.list === undefined && before?.list !== undefined
      ? ['no list price, since none was given for that day']
      : []),
    ...(price.paid === undefined && before?.paid !== undefined
      ? ['no paid price, since none was given for that day']
      : []),
    ...(code === codeText(before) ? [] : [code]),
    ...(price.link === before?.link ? [] : [price.link ? `link: ${price.link}` : 'no link any more']),
    ...(price.paidLink && price.link !== before?.link
      ? ['you earn when a reader buys through the link (paidLink)']
      : []),
    ...(price.note && price.note !== same?.note ? [`note: ${price.note}`] : []),
  ].map(shortened);
}

function codeText(price: Price | undefined): string {
  if (!price?.discountCode.needed) return 'no code needed';
  return `a code needed${price.discountCode.testerEarns ? ', by which you earn' : ''}`;
}

const LONGEST = 76;
const shortened = (text: string) => (text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text);

function line(cells: readonly string[]): string {
  return cells
    .map((cell, i) => {
      const width = WIDTHS[i] ?? 0;
      const text = i === 0 && cell.length > width ? `${cell.slice(0, width - 1)}…` : cell;
      return i === 0 ? text.padEnd(width) : text.padStart(width);
    })
    .join(' ')
    .trimEnd();
}
