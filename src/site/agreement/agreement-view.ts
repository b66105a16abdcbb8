import type { GuideAgreement, SharedFigure } from '../../ledger/agreement.ts';
import { fixed, lastDigitOf, listed, showDate, showFigure, unitBehind } from '../../words/format.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { enText, explanationTexts, leftOut, panelAgreement } from './agreement-words.ts';

/** A shared figure as a line. */
export interface AgreementLine {
  metric: string;
  name: string;
  method: string;
  own: string;
  other: string;
  difference: string;
  en: string;
  enValue: number;
  agrees: boolean;
  follows: boolean;
  remark: string;
  /** Both intervals: ends and values, 0 to 100, on the scale of E_n that all lines share, its middle between the values. */
  drawn: { own: Drawn; other: Drawn };
}

/** Where an interval lies on the scale of all lines. */
export interface Drawn {
  low: number;
  value: number;
  high: number;
}

/** A shared panel. */
export interface AgreementPanel {
  name: string;
  address: string;
  otherAddress: string;
  days: string;
  says: string;
  /** Apart for themselves. */
  apart: AgreementLine[];
  /** Names of those that are apart since these are. */
  following: string[];
  agreeing: AgreementLine[];
  /** What would explain those that are apart for themselves. */
  explained: string[];
  left: string | undefined;
}

/** One guide held against another, in words. */
export interface AgreementView {
  other: { title: string; publisher: string; homepage: string; day: string };
  lead: string;
  panels: AgreementPanel[];
  rest: string[];
}

/** What page and command print. */
export function agreementView({ other, shared, onlyOwn, onlyOther }: GuideAgreement, currency: string): AgreementView {
  const figures = shared.flatMap((it) => it.figures);
  const apart = figures.filter((it) => !it.agrees);
  // To either side, half of the widest difference and the interval about it.
  const reach = 1 + Math.max(1, ...figures.map((it) => Math.abs(it.en))) / 2;
  const models = `${shared.length} model${shared.length === 1 ? '' : 's'}`;
  return {
    other: { title: other.title, publisher: other.publisher, homepage: other.homepage, day: showDate(other.version) },
    lead:
      shared.length === 0
        ? `${other.publisher} has read none of the models that stand here.`
        : `${other.publisher} has read ${models} that stand here too. Of ${figures.length} figures ${
            apart.length === 0
              ? 'all agree within their uncertainty'
              : `${figures.length - apart.length} agree within their uncertainty; ${apart.length} do${apart.length === 1 ? 'es' : ''} not, of the ${listed([...new Set(shared.filter((it) => it.figures.some((one) => !one.agrees)).map((it) => it.panel.name))])}`
          }.`,
    panels: shared.map((it) => {
      const lines = it.figures.map((one) => lineOf(one, currency, reach));
      return {
        name: it.panel.name,
        address: panelAddress(it.panel.slug),
        otherAddress: it.other.address,
        days: `Read here ${showDate(it.panel.current?.date ?? it.other.session)}, there ${showDate(it.other.session)}`,
        says: panelAgreement(it),
        apart: lines.filter((line) => !line.agrees && !line.follows),
        following: lines.filter((line) => line.follows).map((line) => line.name),
        agreeing: lines.filter((line) => line.agrees),
        explained: explanationTexts(it.figures.filter((one) => !one.agrees && !one.follows)),
        left: leftOut(it),
      };
    }),
    rest: [
      ...(onlyOwn.length > 0 ? [`Only here: ${listed(onlyOwn)}.`] : []),
      ...(onlyOther.length > 0 ? [`Only there: ${listed(onlyOther)}.`] : []),
    ],
  };
}

function lineOf(shared: SharedFigure, currency: string, reach: number): AgreementLine {
  const { metric, own, other, difference, en, agrees, follows, isOtherVersion, inDoubt } = shared;
  // The other's digits as those of the own figure, so that the two can be held against each other.
  const step = lastDigitOf(own);
  const decimals = step > 0 ? Math.round(-Math.log10(step)) : 2;
  const half = (other.interval95[1] - other.interval95[0]) / 2;
  const remarks = [
    isOtherVersion ? `Another version of the method there (${other.methodVersion}).` : undefined,
    inDoubt ? 'In doubt in one of the two guides.' : undefined,
  ];
  return {
    metric: metric.id,
    name: metric.name,
    method: `/methods/${metric.method}/`,
    own: showFigure(own, currency).text,
    other: `${fixed(other.value, decimals)} ± ${fixed(half, decimals)}${metric.unit === '1' ? '' : unitBehind(metric.unit)}`,
    difference: `${difference > 0 ? '+' : ''}${fixed(difference, decimals)}`,
    en: enText(en),
    enValue: en,
    agrees,
    follows,
    remark: remarks.filter(Boolean).join(' '),
    drawn: drawn(own, other, reach),
  };
}

/** Lengths in the expanded uncertainty of the difference: a line's two values are E_n apart. */
function drawn(
  { value, interval95 }: SharedFigure['own'],
  other: SharedFigure['other'],
  reach: number,
): AgreementLine['drawn'] {
  const own = { low: interval95?.[0] ?? value, value, high: interval95?.[1] ?? value };
  const their = { low: other.interval95[0], value: other.value, high: other.interval95[1] };
  const unit = Math.hypot((own.high - own.low) / 2, (their.high - their.low) / 2);
  const centre = (value + other.value) / 2;
  const place = (it: number) => Number((50 + (unit > 0 ? (50 * (it - centre)) / (reach * unit) : 0)).toFixed(1));
  const placed = ({ low, value: middle, high }: Drawn) => ({
    low: place(low),
    value: place(middle),
    high: place(high),
  });
  return { own: placed(own), other: placed(their) };
}
