import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { stepUpsOf } from '../../ledger/step-ups-of.ts';
import { isFigure } from '../../measure/figure.ts';
import type { StepUp } from '../../measure/money/step-ups.ts';
import { carriedWords } from '../../words/carried-words.ts';
import { showText } from '../../words/figure-text.ts';
import { type Dagger, markOf } from '../../words/flags.ts';
import { money, showDate, showFigure } from '../../words/format.ts';
import type { PieceElement } from '../shared/browser/pieces.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { rateWords } from '../shared/priced.ts';
import { priceSteps } from './price-steps.ts';

/** What a panel costs, and what a little more money buys. */
export interface PurchaseView {
  prices: Array<{
    date: string;
    list: string;
    paid: string;
    /** In the guide's currency, with its dated rate, where the price is in another one. */
    base?: string;
    rate?: string;
    perWatt: string;
    /** There is no price of a watt; the text says why. */
    isGap: boolean;
    dagger?: Dagger;
    /** From which day the light is, where it was not read again. */
    carried?: string;
    /** What the code that it takes does; undefined where it takes none. */
    code?: string;
    link?: string;
    isPaidLink: boolean;
    note?: string;
  }>;
  /** The prices over time; undefined where there are not two. */
  priceSteps?: PieceElement;
  stepUps: Array<{
    name: string;
    address: string;
    extraPrice: string;
    extraPower: string;
    /** Of each further watt; undefined where they cost nothing more. */
    perWatt?: string;
    dagger?: Dagger;
    carried?: string;
    /** Where the flags stand: here, or on the other panel's page. */
    flagsAt: string;
  }>;
  /** They were looked for: the panel is ranked. */
  hasStepUps: boolean;
  /** Further step-ups that are not listed. */
  moreStepUps: number;
}

/** A panel's prices and its step-ups. */
export function purchaseView(panel: PanelEntry, ledger: Ledger): PurchaseView {
  const steps = priceSteps(panel, ledger);
  return {
    prices: panel.prices.map((it) => priceRow(it, ledger)),
    ...(steps && { priceSteps: steps }),
    stepUps: stepUpsOf(panel, ledger).map((it) => stepUpRow(panel, it, ledger)),
    hasStepUps: panel.rank !== undefined,
    moreStepUps: panel.stepUps.more,
  };
}

function priceRow(
  { price, figure: base, perWatt }: PanelEntry['prices'][number],
  { guide }: Ledger,
): PurchaseView['prices'][number] {
  const rate = rateWords(guide, price.currency);
  const dagger = markOf(perWatt);
  const carried = carriedWords(perWatt);
  return {
    date: showDate(price.date),
    list: price.list === undefined ? '–' : money(price.list, price.currency),
    paid: price.paid === undefined ? '–' : money(price.paid, price.currency),
    ...(rate && { base: showFigure(base, guide.currency).text, rate }),
    perWatt: isFigure(perWatt)
      ? showFigure({ ...perWatt, unit: 'currency' }, guide.currency).text
      : showText(perWatt, guide.currency),
    isGap: !isFigure(perWatt),
    ...(dagger && { dagger }),
    ...(carried && { carried }),
    ...(price.discountCode.needed && { code: codeWords(price.discountCode.testerEarns) }),
    ...(price.link && { link: price.link }),
    isPaidLink: price.paidLink,
    ...(price.note && { note: price.note }),
  };
}

function stepUpRow(
  panel: PanelEntry,
  it: StepUp,
  { guide: { currency }, panels }: Ledger,
): PurchaseView['stepUps'][number] {
  const dagger = markOf(it.extraPower);
  const carried = carriedWords(it.extraPower);
  return {
    name: panels.get(it.panel)?.name ?? it.panel,
    address: panelAddress(it.panel),
    extraPrice:
      it.extraPrice > 0
        ? `${money(it.extraPrice, currency)} more`
        : it.extraPrice === 0
          ? 'the same price'
          : `${money(-it.extraPrice, currency)} less`,
    extraPower: showFigure(it.extraPower, currency).text,
    ...(it.extraPricePerWatt && { perWatt: showFigure({ ...it.extraPricePerWatt, unit: 'currency' }, currency).text }),
    ...(dagger && { dagger }),
    ...(carried && { carried }),
    flagsAt: markOf(panel.figures.get('optical-power')) ? '#flags' : `${panelAddress(it.panel)}#flags`,
  };
}

const codeWords = (testerEarns: boolean) => `with a code that earns us ${testerEarns ? 'money' : 'nothing'}`;
