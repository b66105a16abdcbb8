import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { isFigure } from '../../measure/figure.ts';
import type { MetricId } from '../../measure/metrics.ts';
import { claimText } from '../../words/claim-text.ts';
import { showDate } from '../../words/format.ts';
import { plainName } from '../../words/plain-names.ts';
import { standingSentence } from '../guide/rank-sentence.ts';
import type { PieceElement } from '../shared/browser/pieces.ts';
import { carriedLines } from '../shared/carried-lines.ts';
import { type ShownFigure, shownFigure } from '../shared/shown-figure.ts';
import { type Against, nextInRank } from './next-in-rank.ts';
import { priceScale } from './price-scale.ts';

/** What stands under one of the head's figures: a second one with its words, or words alone. */
export interface HeadRemark {
  before?: string;
  figure?: ShownFigure;
  after?: string;
}

/** One of the figures that a panel's page opens with. */
export interface HeadFigure {
  name: string;
  figure: ShownFigure;
  /** Its name says the unit already. */
  isUnitNamed?: boolean;
  remark?: HeadRemark;
}

/** The first screen of a panel's page. */
export interface HeadView {
  figures: HeadFigure[];
  /** What a watt costs here on the scale of all panels; undefined where nothing is ranked with it. */
  scale?: PieceElement;
  /** Its rank in a sentence, ties named. */
  standing: string;
  /** The neighbour by rank to hold it against; undefined where there is none. */
  against?: Against;
  /** Why it can't be beaten on price and light both; undefined where it can. */
  frontier?: string;
  /** How the maker's claims held, in a line; undefined where none was checked. */
  claims?: { held: string; apart?: string };
  /** How the piece came to the tester, and by whose money. */
  obtained: string;
  /** Day of the newest session, its distance, cm, and what it did not read again, with the day that this is from. */
  read?: { date: string; shownDate: string; distance: number; carried: string[] };
}

/** The first screen of a panel. */
export function headView(panel: PanelEntry, ledger: Ledger): HeadView {
  const { currency } = ledger.guide;
  const { current, data, frontier } = panel;
  const scale = priceScale(panel, ledger);
  const claims = claimsLine(panel.claims);
  const against = nextInRank(panel, ledger);
  return {
    figures: headFigures(panel, currency),
    ...(scale && { scale }),
    standing: standingSentence(panel, ledger),
    ...(against && { against }),
    ...(frontier && {
      frontier:
        frontier === 'on'
          ? 'No panel read alike gives more light for no more money.'
          : 'A panel read alike gives more light for no more money, by no more than the uncertainty.',
    }),
    ...(claims && { claims }),
    obtained: obtainedWords(data.obtained),
    ...(current && {
      read: {
        date: current.date,
        shownDate: showDate(current.date),
        distance: current.conditions.distance,
        carried: carriedLines(current.readings).map((it) => it.text),
      },
    }),
  };
}

/** The five; of a panel that was never on the bench those alone that are known. */
export function headFigures(panel: PanelEntry, currency: string): HeadFigure[] {
  const figure = (metric: MetricId) => shownFigure(panel, panel.figures.get(metric), metric, currency);
  const known = (metric: MetricId) => (isFigure(panel.figures.get(metric)) ? figure(metric) : undefined);
  const under = (metric: MetricId, words: Omit<HeadRemark, 'figure'>): { remark?: HeadRemark } => {
    const it = known(metric);
    return it ? { remark: { ...words, figure: it } } : {};
  };
  const [newest] = panel.prices;
  const all: HeadFigure[] = [
    { name: capital(plainName('price-per-watt')), figure: figure('price-per-watt'), isUnitNamed: true },
    {
      name: capital(plainName('real-price')),
      figure: figure('real-price'),
      ...(newest && { remark: { after: priceTerms(newest.price) } }),
    },
    {
      name: 'Light in the frame',
      figure: figure('optical-power'),
      ...under('emitted-power', { after: 'leave the LEDs' }),
    },
    { name: 'Mean', figure: figure('mean-irradiance'), ...under('peak-irradiance-combined', { before: 'peak' }) },
    {
      name: capital(plainName('efficiency-combined')),
      figure: figure('efficiency-combined'),
      ...under(
        'mains-draw-combined',
        // Behind its day the other words would not be read as one.
        figure('mains-draw-combined').carried ? { before: 'mains draw' } : { before: 'of', after: 'from the mains' },
      ),
    },
  ];
  return (panel.current ? all : all.filter((it) => it.figure.shown)).map(correctedOnce);
}

/** A figure and the one under it that were corrected together say so once. */
function correctedOnce(it: HeadFigure): HeadFigure {
  const { figure, remark } = it;
  if (!remark?.figure || remark.figure.corrected?.address !== figure.corrected?.address) return it;
  const { corrected: _said, ...under } = remark.figure;
  return { ...it, remark: { ...remark, figure: under } };
}

/** The day of a price, and whose gain its code is. */
function priceTerms({ date, discountCode }: PanelEntry['prices'][number]['price']): string {
  if (!discountCode.needed) return showDate(date);
  return `${showDate(date)}, with a code${discountCode.testerEarns ? ' that earns us money' : ''}`;
}

/** `4 of 4 held`, and which did not; undefined where nothing is claimed that could be held against a reading. */
function claimsLine(claims: PanelEntry['claims']): HeadView['claims'] {
  const compared = claims.filter((it) => it.outcome !== 'not-comparable');
  if (compared.length === 0) return undefined;
  const apart = compared.filter((it) => it.outcome !== 'within');
  const held = `${compared.length - apart.length} of ${compared.length} held`;
  return { held, ...(apart.length > 0 && { apart: apartWords(apart) }) };
}

/** `irradiance 70 % under the claim: missed; mains draw 27 % under the claim`. */
function apartWords(apart: PanelEntry['claims']): string {
  const texts = apart.map((it) => {
    const { subject, text } = claimText(it);
    return `${subject} ${text}`.replaceAll(' %', '\u00a0%');
  });
  return texts.join('; ');
}

const HOW = { bought: 'Bought', lent: 'Lent by the maker', given: 'Given by the maker' };

function obtainedWords(obtained: PanelEntry['data']['obtained']): string {
  if (!obtained) return 'How it came to us is not recorded.';
  const { how, paidBy, note } = obtained;
  // An article that begins a field goes on in a sentence; a name keeps its capital.
  const by = paidBy.replace(/\.$/, '').replace(/^(The|A|An) /, (it) => it.toLowerCase());
  return `${HOW[how]}, paid for by ${by}.${note ? ` ${note}` : ''}`;
}

/** A figure whose name says its unit, without it. */
export function shownPlainly(figure: ShownFigure): ShownFigure {
  const { shown, other } = figure;
  return {
    ...figure,
    ...(shown && { shown: { ...shown, unit: '' } }),
    ...(other && { other: { ...other, unit: '' } }),
  };
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
