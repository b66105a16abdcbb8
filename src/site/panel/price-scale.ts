/** What a watt costs here, with its interval, on one scale with all panels that were read alike. */
import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { type Figure, isFigure } from '../../measure/figure.ts';
import { money, showFigure } from '../../words/format.ts';
import { type LogAxis, logAxis } from '../guide/picture/log-axis.ts';
import { type PieceElement, piece } from '../shared/browser/pieces.ts';
import { madeOfAll } from '../shared/page-reads.ts';

const WIDTH = 360;
const EDGE = 16;
const LINE = 14;
/** Others stand on the nearest of so many places, so that one new price leaves most pages as they were. */
const PLACES = 100;
const STEP = (WIDTH - 2 * EDGE) / PLACES;
/** How wide a mark is. Marks side by side are a line with dashes: the style sheet has their height, and STEP less this between them. */
const MARK = 1;
/** Room for a letter along the axis. */
const LETTER = 7;

/** The prices of a watt that one scale holds: how many of a size class stand at each place. */
interface Shared {
  axis: LogAxis;
  places: ReadonlyMap<PanelEntry['sizeClass'], ReadonlyMap<number, number>>;
}

/** One for all pages of a ledger. */
const known = new WeakMap<Ledger, Shared | undefined>();

/** The drawing; undefined where the panel's price of a watt can't be held against others'. */
export const priceScale = madeOfAll('price-scale', (panel, ledger): PieceElement | undefined => {
  const own = panel.figures.get('price-per-watt');
  if (!isComparable(panel) || !isFigure(own)) return undefined;
  if (!known.has(ledger)) known.set(ledger, sharedBy(ledger));
  const shared = known.get(ledger);
  return shared && drawing(panel, own, shared, ledger.guide.currency);
});

/** True for a panel that was read as the guide reads them, and is in its ranking. */
const isComparable = ({ rank, current }: PanelEntry) => rank !== undefined && current?.conditions.isReference === true;

function sharedBy({ panels, guide }: Ledger): Shared | undefined {
  const prices = [...panels.values()].filter(isComparable).flatMap((panel) => {
    const it = panel.figures.get('price-per-watt');
    return isFigure(it) && it.value > 0 ? [{ panel, value: it.value }] : [];
  });
  // A scale for one compares nothing.
  if (prices.length < 2) return undefined;
  const axis = logAxis(
    prices.map((it) => it.value),
    [EDGE, WIDTH - EDGE],
    (value) => moneyWords(value, guide.currency),
    (text) => LETTER * (text.length + 1),
  );
  const places = new Map<PanelEntry['sizeClass'], Map<number, number>>();
  for (const { panel, value } of prices) {
    const own = places.get(panel.sizeClass) ?? new Map<number, number>();
    const place = coarse(axis.place(value));
    places.set(panel.sizeClass, own.set(place, (own.get(place) ?? 0) + 1));
  }
  return { axis, places };
}

const moneyWords = (value: number, currency: string) => money(value, currency, value < 1 ? 2 : 0);

function drawing(panel: PanelEntry, own: Figure, { axis, places }: Shared, currency: string): PieceElement {
  const at = axis.place(own.value);
  const marks = (isAlike: boolean) => {
    const taken = new Set<number>();
    for (const [sizeClass, counts] of places) {
      if ((sizeClass === panel.sizeClass) !== isAlike) continue;
      // Its own mark is another one.
      for (const [place, count] of counts) if (!isAlike || count > 1 || place !== coarse(at)) taken.add(place);
    }
    if (taken.size === 0) return false;
    return piece('path', { class: isAlike ? 'alike' : 'other', d: dashed([...taken].toSorted((a, b) => a - b)) });
  };
  const [from, to] = (own.interval95 ?? [own.value, own.value]).map(axis.place) as [number, number];
  const ends = `from ${moneyWords(axis.low, currency)} to ${moneyWords(axis.high, currency)}`;
  return piece(
    'svg',
    {
      class: 'price-scale',
      viewBox: `0 0 ${WIDTH} 38`,
      width: WIDTH,
      height: 38,
      role: 'img',
      'aria-label': `${showFigure(own, currency).text} on the scale of all panels, ${ends}`,
    },
    piece('path', { class: 'axis', d: `M${EDGE} ${LINE}H${WIDTH - EDGE}` }),
    marks(false),
    marks(true),
    piece('rect', { class: 'interval', x: from, y: LINE - 3, width: Number((to - from).toFixed(1)), height: 6 }),
    piece('path', { class: 'own', d: `M${at} ${LINE - 10}v20` }),
    ...axis.ticks.flatMap((it) => (it.text === undefined ? [] : [piece('text', { x: it.at, y: 36 }, it.text)])),
  );
}

/** The nearest of the places where others stand. */
const coarse = (x: number) => Math.round((x - EDGE) / STEP);

const tenths = (it: number) => Number(it.toFixed(1));

/** A line for every run of places without a gap, in their order. */
function dashed(places: readonly number[]): string {
  const startOf = (place: number) => EDGE + STEP * place - MARK / 2;
  let path = '';
  let at = 0;
  for (const [i, place] of places.entries()) {
    if (place - 1 === places[i - 1]) continue;
    let last = place;
    for (let next = i + 1; places[next] === last + 1; next++) last++;
    const from = tenths(startOf(place));
    // A little beyond the last mark there is no dash yet.
    const length = tenths(startOf(last) + MARK + 0.05 - from);
    path += `${path === '' ? `M${from} ${LINE}` : `m${tenths(from - at)} 0`}h${length}`;
    at = from + length;
  }
  return path;
}
