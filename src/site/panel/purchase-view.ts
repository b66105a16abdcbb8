import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { showText } from '../../words/figure-text.ts';
import { type Dagger, markOf } from '../../words/flags.ts';
import { money, showDate, showFigure } from '../../words/format.ts';
import { say } from '../../words/say.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { rateWords } from '../shared/priced.ts';

/** What a panel costs, and what a little more money buys. */
export interface PurchaseView {
  prices: Array<{
    date: string;
    list: string;
    paid: string;
    base: string;
    /** The guide's dated rate, where the price is in another currency. */
    rate?: string;
    perWatt: string;
    dagger?: Dagger;
    code: string;
    link?: string;
    isPaidLink: boolean;
    note?: string;
  }>;
  stepUps: Array<{
    name: string;
    address: string;
    extraPrice: string;
    extraPower: string;
    perWatt: string;
    dagger?: Dagger;
    /** Where the flags stand: here, or on the other panel's page. */
    flagsAt: string;
  }>;
  /** Why none were looked for. */
  stepUpsAbsent?: string;
  /** Further step-ups that are not listed. */
  moreStepUps: number;
}

/** A panel's prices and its step-ups. */
export function purchaseView(panel: PanelEntry, ledger: Ledger): PurchaseView {
  return {
    prices: panel.prices.map((it) => priceRow(it, ledger)),
    stepUps: panel.stepUps.best.map((it) => stepUpRow(panel, it, ledger)),
    ...(!panel.rank && { stepUpsAbsent: panel.rankAbsent ? say(panel.rankAbsent) : 'not ranked' }),
    moreStepUps: panel.stepUps.more,
  };
}

function priceRow(
  { price, figure: base, perWatt }: PanelEntry['prices'][number],
  { guide }: Ledger,
): PurchaseView['prices'][number] {
  const rate = rateWords(guide, price.currency);
  const dagger = markOf(perWatt);
  return {
    date: showDate(price.date),
    list: price.list === undefined ? 'not recorded' : money(price.list, price.currency),
    paid: price.paid === undefined ? 'not recorded' : money(price.paid, price.currency),
    base: showFigure(base, guide.currency).text,
    ...(rate && { rate }),
    perWatt: showText(perWatt, guide.currency),
    ...(dagger && { dagger }),
    code: codeWords(price.discountCode),
    ...(price.link && { link: price.link }),
    isPaidLink: price.paidLink,
    ...(price.note && { note: price.note }),
  };
}

function stepUpRow(
  panel: PanelEntry,
  it: PanelEntry['stepUps']['best'][number],
  { guide: { currency }, panels }: Ledger,
): PurchaseView['stepUps'][number] {
  const dagger = markOf(it.extraPower);
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
    perWatt: it.extraPricePerWatt ? showFigure(it.extraPricePerWatt, currency).text : 'more light for no more money',
    ...(dagger && { dagger }),
    flagsAt: markOf(panel.figures.get('optical-power')) ? '#flags' : `${panelAddress(it.panel)}#flags`,
  };
}

function codeWords({ needed, testerEarns }: { needed: boolean; testerEarns: boolean }): string {
  if (!needed) return 'no code needed';
  return testerEarns ? 'with a code that earns the tester money' : 'with a code that earns the tester nothing';
}
