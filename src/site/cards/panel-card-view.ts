import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { type Figure, isFigure } from '../../measure/figure.ts';
import { number } from '../../measure/numbers.ts';
import { remarkWords } from '../../words/figure-words.ts';
import { fixed, showDate, unitBehind } from '../../words/format.ts';
import { DOUBT_MARK, IMPOSSIBLE_MARK } from '../../words/marks.ts';
import { type HeadFigure, headFigures } from '../panel/head-view.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { siteAddress } from '../shared/site-address.ts';
import { type ScaleEnds, scaleWords } from './card-scales.ts';

/** One figure of a card. */
export interface CardFigure {
  name: string;
  /** `48.0`, and what stands behind it, lighter: `± 2.4 mW/cm²`. Left out for a gap. */
  value?: { strong: string; rest: string };
  /** Why there is no figure. */
  gap?: string;
  /** Smaller, under it: its day, its interval where that is not symmetric. */
  remark?: string;
  /** Its place and its interval's ends as parts of the scale, and where that ends. */
  scale?: { at: number; from: number; to: number; end: string };
}

/** What stands on a panel's card. */
export interface PanelCardView {
  name: string;
  /** Day of the readings, and whose they are. */
  from: string;
  figures: CardFigure[];
  /** What has to be said with them: doubts, a paid code, how the piece came to the tester. */
  remarks: string[];
  /** The LED field or, where that is not known, the housing; cm. */
  field?: { width: number; height: number; words: string };
  /** What the code leads to, in full. */
  address: string;
  /** All of it in sentences, for those who don't see the card. */
  description: string;
}

/** A panel's card, from the ledger. */
export function panelCardView(panel: PanelEntry, ledger: Ledger, ends: ScaleEnds): PanelCardView {
  const { guide } = ledger;
  const heads = headFigures(panel, guide.currency);
  const figures = heads.map((it) => cardFigure(it, panel, guide.currency, ends));
  const remarks = remarksOf(panel, heads);
  const sizeClass = panel.sizeClass?.name;
  const day = panel.current && showDate(panel.current.date);
  const field = fieldOf(panel);
  return {
    name: panel.name,
    from: `${day ?? NOT_READ}, ${guide.title}`,
    figures,
    remarks,
    ...(field && { field }),
    address: siteAddress(`${panelAddress(panel.slug)}methodology/`, guide.site),
    description: [
      `${panel.name}. ${sizeClass ? `${sizeClass}. ` : ''}${day ? `Read on ${day}` : NOT_READ}.`,
      ...figures.map(
        (it) => `${it.name}: ${it.value ? spoken(it.value) : it.gap}${it.remark ? ` (${it.remark})` : ''}.`,
      ),
      ...(field ? [`${field.words}.`] : []),
      ...remarks,
    ].join(' '),
  };
}

const NOT_READ = 'Not on the bench yet';

const spoken = ({ strong, rest }: { strong: string; rest: string }) => `${strong}${rest}`;

function cardFigure(head: HeadFigure, panel: PanelEntry, currency: string, ends: ScaleEnds): CardFigure {
  const { figure, isUnitNamed } = head;
  const { shown, gap, dagger, carried } = figure;
  const name = fullName(head, panel);
  if (!shown) return { name, gap: gap ?? '' };
  const it = panel.figures.get(figure.metric);
  const unit = isUnitNamed ? '' : unitBehind(shown.unit);
  const spread = shown.plusMinus === undefined ? '' : ` ± ${shown.plusMinus}`;
  const remark = [remarkWords(shown.interval, undefined, undefined), carried].filter(Boolean).join(', ');
  const scale = isFigure(it) ? scaleOf(it, currency, ends) : undefined;
  return {
    name,
    value: { strong: shown.value, rest: `${spread}${unit}${dagger ? ` ${CARD_MARKS[dagger.mark] ?? ''}` : ''}` },
    ...(remark !== '' && { remark }),
    ...(scale && { scale }),
  };
}

/** A price has a day of its own, and a mean its distance; a carried one may have another than the session. */
function fullName({ name, figure }: HeadFigure, { prices: [newest], current }: PanelEntry): string {
  if (!figure.shown) return name;
  if (figure.metric === 'real-price' && newest) return `${name}, ${showDate(newest.price.date)}`;
  if (figure.metric === 'mean-irradiance' && current && !figure.carried)
    return `${name} at ${number(current.conditions.distance)} cm`;
  return name;
}

function scaleOf(it: Figure, currency: string, ends: ScaleEnds): CardFigure['scale'] {
  const end = ends(it.metric);
  if (end === undefined) return undefined;
  const [low, high] = it.interval95 ?? [it.value, it.value];
  const part = (value: number) => Math.min(1, Math.max(0, value / end));
  return { at: part(it.value), from: part(low), to: part(high), end: scaleWords(end, it.unit, currency) };
}

/** Marks of doubt as cards have them: the typefaces' files have no double dagger. */
const CARD_MARKS: Readonly<Record<string, string>> = { [IMPOSSIBLE_MARK]: '*', [DOUBT_MARK]: '†' };

const OBTAINED = {
  bought: undefined,
  lent: 'Lent by the maker.',
  given: 'Given by the maker.',
} as const;

/** What a figure may not be shown without. */
function remarksOf({ data, prices: [newest] }: PanelEntry, heads: readonly HeadFigure[]): string[] {
  const marks = new Set(heads.map((it) => it.figure.dagger?.mark));
  const { price } = newest ?? {};
  return [
    data.status === 'withdrawn' && 'Withdrawn.',
    data.obtained && OBTAINED[data.obtained.how],
    price?.discountCode.needed && price.discountCode.testerEarns && 'Price by a code that earns us money.',
    marks.has(IMPOSSIBLE_MARK) && `${CARD_MARKS[IMPOSSIBLE_MARK]} impossible as it stands.`,
    marks.has(DOUBT_MARK) && `${CARD_MARKS[DOUBT_MARK]} in doubt.`,
  ].filter((it) => typeof it === 'string');
}

function fieldOf({ data: { field, housing } }: PanelEntry): PanelCardView['field'] {
  const size = field ?? housing;
  if (!size) return undefined;
  const [width, height] = [size.width.value, size.height.value];
  return {
    width,
    height,
    words: `${field ? 'LED field' : 'Housing'} ${fixed(width, 0)} × ${fixed(height, 0)} cm`,
  };
}
