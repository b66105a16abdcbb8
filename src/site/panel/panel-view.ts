import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import type { FigureOrGap } from '../../measure/figure.ts';
import { type MetricId, metricsOnPanelPage } from '../../measure/metrics.ts';
import { MODES_COMBINED_FIRST } from '../../measure/modes.ts';
import { claimText } from '../../words/claim-text.ts';
import { showText } from '../../words/figure-text.ts';
import { type Dagger, markOf } from '../../words/flags.ts';
import { fixed, money, showDate, showFigure } from '../../words/format.ts';
import { say } from '../../words/say.ts';
import { rankSentence } from '../guide/rank-sentence.ts';
import { isPlannable } from '../plan/plan-data.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { rateWords } from '../shared/priced.ts';
import { type ShownFigure, shownFigure } from '../shared/shown-figure.ts';
import { beyondView } from './beyond-view.ts';
import { type CalledCaution, calledCautions } from './called-cautions.ts';
import { type GridDrawing, gridDrawing } from './grid-drawing.ts';
import { type LightView, lightView } from './light-view.ts';
import { type LimitsView, limitsView } from './limits-view.ts';

/** Everything that a panel's page prints. */
export interface PanelView {
  slug: string;
  name: string;
  model: string;
  maker: PanelEntry['maker'];
  status: PanelEntry['data']['status'];
  statusReason?: string;
  verdict?: string;
  className?: string;
  /** "Bought, paid by the membership fees." */
  obtained: string;
  facts: Array<{ name: string; text: string }>;
  rank: string;
  frontier?: string;
  key: ShownFigure[];
  light: { heads: string[]; rows: Array<{ name: string; method: string; cells: ShownFigure[] }> };
  spread: ShownFigure[];
  times: ShownFigure[];
  surroundings: Array<{
    name: string;
    method: string;
    distance: string;
    on: ShownFigure;
    off: ShownFigure;
    /** With the panel on; for the fields whose reference level depends on it. */
    frequency?: ShownFigure;
  }>;
  cautions: CalledCaution[];
  /** What the model makes of the light; undefined without a session. */
  modelled?: LightView;
  /** Its readings against published limits; undefined without a session. */
  limits?: LimitsView;
  claims: Array<{
    subject: string;
    claimed: string;
    measured: string;
    outcome: string;
    address?: string;
    dagger?: Dagger;
  }>;
  unchecked: Array<{ name: string; text: string }>;
  /** That the light past the edges was measured, and where its readings stand. */
  beyond?: { text: string; address: string };
  grid?: GridDrawing;
  gridAbsent?: string;
  hotSpots?: string;
  sessions: Array<{
    date: string;
    shownDate: string;
    conditions: string;
    power: ShownFigure;
    mean: ShownFigure;
    change: string;
    changeDagger?: Dagger;
  }>;
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
  flags: PanelEntry['flags'];
  methodology: string;
  /** Where a session with it can be planned; undefined where the planner would refuse it. */
  plan?: string;
  /** Where it can be set beside others; undefined where it has never been on the bench. */
  compare?: string;
}

/** Metrics that each mode has. */
type ModeMetric = 'peak-irradiance' | 'mains-draw' | 'efficiency' | 'flicker' | 'flicker-frequency';

/** The view of one panel. */
export function panelView(panel: PanelEntry, ledger: Ledger): PanelView {
  const { data, slug, current } = panel;
  const { currency } = ledger.guide;
  const figure = (metric: MetricId) => shownFigure(panel, panel.figures.get(metric), metric, currency);
  const grid = current && gridDrawing(panel, current);
  const beyond = current && beyondView(panel, current);
  const rateOf = (of: string) => rateWords(ledger.guide, of);
  const modelled = lightView(panel, currency);
  const limits = limitsView(panel, currency);
  const modeRow = (name: string, metric: ModeMetric) => ({
    name,
    method: figure(`${metric}-combined`).method,
    cells: MODES_COMBINED_FIRST.map((mode) => figure(`${metric}-${mode}`)),
  });

  return {
    slug,
    name: panel.name,
    model: data.model,
    maker: panel.maker,
    status: data.status,
    ...(data.statusReason && { statusReason: data.statusReason }),
    ...(data.verdict && { verdict: data.verdict }),
    ...(panel.sizeClass && { className: panel.sizeClass.name }),
    obtained: obtainedWords(data.obtained),
    facts: facts(panel),
    rank: rankSentence(panel, ledger),
    ...(panel.frontier && {
      frontier:
        panel.frontier === 'on'
          ? 'On the price–power frontier: no panel measured alike costs no more and gives more light.'
          : 'A close call at the price–power frontier: what beats it does so by no more than the uncertainty.',
    }),
    key: metricsOnPanelPage('key').map(figure),
    light: {
      heads: ['Both channels', 'Red alone', 'Near-infrared alone'],
      rows: [
        modeRow('Peak irradiance', 'peak-irradiance'),
        modeRow('Mains draw', 'mains-draw'),
        modeRow('Efficiency', 'efficiency'),
        {
          name: 'Efficiency less standby',
          method: '/methods/efficiency/',
          cells: MODES_COMBINED_FIRST.map((mode) => figure(`efficiency-${mode}-net`)),
        },
        modeRow('Flicker', 'flicker'),
        modeRow('Flicker frequency', 'flicker-frequency'),
      ],
    },
    spread: metricsOnPanelPage('spread').map(figure),
    times: metricsOnPanelPage('times').map(figure),
    surroundings: (['magnetic', 'electric', 'radio', 'sound'] as const).map((kind) => {
      const metric = kind === 'sound' ? 'sound' : (`${kind}-field` as const);
      const on = figure(`${metric}-on`);
      return {
        name: on.name.replace(/, panel on$/, ''),
        method: on.method,
        distance:
          current?.readings[kind]?.distance?.written ??
          (current?.readings[kind] ? 'distance not recorded' : 'not measured'),
        on,
        off: figure(`${metric}-off`),
        ...((kind === 'magnetic' || kind === 'electric') && { frequency: figure(`${kind}-field-frequency`) }),
      };
    }),
    cautions: calledCautions(panel, currency),
    ...(modelled && { modelled }),
    ...(limits && { limits }),
    claims: panel.claims.map((it) => {
      const { subject, text } = claimText(it);
      return {
        subject,
        claimed: `${fixed(it.claimed, Number.isInteger(it.claimed) ? 0 : 1)} ${it.unit}`,
        measured: it.measured ? showFigure(it.measured, currency).text : 'not measured',
        outcome: text,
        ...(it.measured && { address: `${panelAddress(slug)}methodology/#${it.measured.metric}` }),
        ...marked(it.measured ?? undefined),
      };
    }),
    unchecked: uncheckedClaims(panel),
    ...(beyond && {
      beyond: {
        text: `Measured past the edges at ${beyond.count} place${beyond.count === 1 ? '' : 's'}`,
        address: `${panelAddress(slug)}methodology/#${beyond.anchor}`,
      },
    }),
    ...(grid && { grid }),
    ...(!grid && { gridAbsent: gridAbsence(panel) }),
    ...(current?.readings.hotSpots && { hotSpots: current.readings.hotSpots }),
    sessions: panel.sessions.map((session) => ({
      date: session.date,
      shownDate: showDate(session.date),
      conditions: `${session.conditions.distance} cm, bench procedure version ${session.conditions.methodVersion}`,
      power: shownFigure(panel, session.figures.get('optical-power'), 'optical-power', currency, session),
      mean: shownFigure(panel, session.figures.get('mean-irradiance'), 'mean-irradiance', currency, session),
      change: showText(session.change, currency),
      ...(markOf(session.change) && { changeDagger: markOf(session.change) }),
    })),
    prices: panel.prices.map(({ price, figure: base, perWatt }) => ({
      date: showDate(price.date),
      list: price.list === undefined ? 'not recorded' : money(price.list, price.currency),
      paid: price.paid === undefined ? 'not recorded' : money(price.paid, price.currency),
      base: showFigure(base, currency).text,
      ...(rateOf(price.currency) && { rate: rateOf(price.currency) }),
      perWatt: showText(perWatt, currency),
      ...marked(perWatt),
      code: codeWords(price.discountCode),
      ...(price.link && { link: price.link }),
      isPaidLink: price.paidLink,
      ...(price.note && { note: price.note }),
    })),
    stepUps: panel.stepUps.best.map((it) => ({
      name: ledger.panels.get(it.panel)?.name ?? it.panel,
      address: panelAddress(it.panel),
      extraPrice:
        it.extraPrice > 0
          ? `${money(it.extraPrice, currency)} more`
          : it.extraPrice === 0
            ? 'the same price'
            : `${money(-it.extraPrice, currency)} less`,
      extraPower: showFigure(it.extraPower, currency).text,
      perWatt: it.extraPricePerWatt ? showFigure(it.extraPricePerWatt, currency).text : 'more light for no more money',
      ...marked(it.extraPower),
      flagsAt: markOf(panel.figures.get('optical-power')) ? '#flags' : `${panelAddress(it.panel)}#flags`,
    })),
    ...(!panel.rank && { stepUpsAbsent: panel.rankAbsent ? say(panel.rankAbsent) : 'not ranked' }),
    moreStepUps: panel.stepUps.more,
    flags: panel.flags,
    methodology: `${panelAddress(slug)}methodology/`,
    ...(isPlannable(panel) && { plan: `/plan/?panel=${slug}` }),
    ...(current && { compare: `/compare/?with=${slug}` }),
  };
}

/** The mark of a figure, where it has one. */
function marked(it: FigureOrGap | undefined): { dagger?: Dagger } {
  const dagger = markOf(it);
  return dagger ? { dagger } : {};
}

function obtainedWords(obtained: PanelEntry['data']['obtained']): string {
  if (!obtained) return 'How it was obtained is not recorded.';
  const how = { bought: 'Bought', lent: 'Lent by the maker', given: 'Given by the maker' }[obtained.how];
  return `${how}. Paid for by: ${obtained.paidBy.replace(/\.$/, '')}.${obtained.note ? ` ${obtained.note}` : ''}`;
}

function codeWords({ needed, testerEarns }: { needed: boolean; testerEarns: boolean }): string {
  if (!needed) return 'no code needed';
  return testerEarns ? 'with a code that earns the tester money' : 'with a code that earns the tester nothing';
}

function facts({ data }: PanelEntry): Array<{ name: string; text: string }> {
  const size = (it: NonNullable<typeof data.field>) => `${fixed(it.width.value, 1)} × ${fixed(it.height.value, 1)} cm`;
  return [
    ...(data.field ? [{ name: 'LED field', text: size(data.field) }] : []),
    ...(data.housing ? [{ name: 'Housing', text: size(data.housing) }] : []),
    ...(data.weight ? [{ name: 'Weight', text: `${fixed(data.weight.value, 1)} kg` }] : []),
  ];
}

function uncheckedClaims({ data: { claims }, current }: PanelEntry): Array<{ name: string; text: string }> {
  if (!claims) return [];
  const isRuledOut = current?.light.flags.some((it) => it.check === 'beam-claim');
  const beam = isRuledOut
    ? ', which the readings rule out'
    : current?.light.model
      ? ', which the readings leave possible'
      : ', not checked';
  const shares = (claims.wavelengths ?? [])
    .filter((it) => it.share)
    .map((it) => `${fixed(it.share?.value ?? 0, 0)} % at ${fixed(it.peak.value, 0)} nm`);
  return [
    ...(shares.length > 0 ? [{ name: 'Shares', text: `${shares.join(', ')}, not checked` }] : []),
    ...(claims.beamAngle ? [{ name: 'Beam angle', text: `${claims.beamAngle.written}${beam}` }] : []),
    ...(claims.ledCount ? [{ name: 'LEDs', text: `${claims.ledCount}, not checked` }] : []),
  ];
}

function gridAbsence(panel: PanelEntry): string {
  if (!panel.current) return 'There is no bench session yet.';
  if (!panel.current.readings.grid) return 'The grid was not measured.';
  if (!panel.data.field) return 'The LED field was not measured, so the points have no place.';
  return 'The LED field is too small for the grid’s inset, so the points have no place.';
}
