import type { Content, Entry } from '../content/read/content.ts';
import type { Guide } from '../content/schema/guide.ts';
import type { InstrumentKind } from '../content/schema/instrument.ts';
import type { Panel, Price } from '../content/schema/panel.ts';
import type { Session } from '../content/schema/session.ts';
import { pricePerEmittedWattFigure } from '../measure/beam/figures.ts';
import { changeFigure } from '../measure/change.ts';
import { flagsOf } from '../measure/checks/index.ts';
import type { FigureMap } from '../measure/figure.ts';
import {
  type Figure,
  type FigureOrGap,
  type Flag,
  figureFinder,
  gap,
  hasCancelled,
  isFigure,
} from '../measure/figure.ts';
import type { Instrument } from '../measure/instrument/instrument.ts';
import { areNinePointAlike } from '../measure/irradiance/bench-procedure.ts';
import { ledAreaFigure, sideFigure } from '../measure/irradiance/optical-power.ts';
import { sameDistance } from '../measure/irradiance/same-distance.ts';
import type { MetricId } from '../measure/metrics.ts';
import { METRICS } from '../measure/metrics.ts';
import { priceFigure, pricePerWattFigure } from '../measure/money/price.ts';
import { sizeClassOf } from '../measure/money/size-class.ts';
import { checkedReadings } from './checked-readings.ts';
import { flaggedFigures } from './flagged-figures.ts';
import { instrumentOf, usedInstruments } from './instruments.ts';
import type { Conditions, PanelEntry, PriceEntry, SessionEntry } from './ledger.ts';
import { panelClaims } from './panel-claims.ts';
import { gridPointMeans, sessionFigures } from './session-figures.ts';

/** A panel with its figures, before it is compared with any other: no rank, no step-ups. */
export type SinglePanel = Omit<PanelEntry, 'rank' | 'rankAbsent' | 'byEmitted' | 'stepUps' | 'frontier'>;

/** Works out all figures of one panel. */
export function panelEntry({ id: slug, data }: Entry<Panel>, content: Content, today: string): SinglePanel {
  const guide = content.guide.data;
  const maker = content.makers.get(data.maker)?.data;
  if (!maker) throw new Error(`${slug}: the maker "${data.maker}" was not read`);
  const sessionsByDate = data.sessions.toSorted((a, b) => b.date.localeCompare(a.date));
  const instruments = instrumentFinder(content, sessionsByDate[0]);
  const field = fieldFigures(slug, data, guide, instruments('length'));
  const prices = data.prices.toSorted((a, b) => b.date.localeCompare(a.date));
  const [price] = prices;

  const sessions = sessionsByDate.map((session): SessionEntry => {
    const id = `${slug}/${session.date}`;
    const { figures, light, ...held } = sessionFigures({
      id,
      slug,
      panel: data,
      session,
      guide,
      instrumentFor: instrumentFinder(content, session),
      field,
    });
    const conditions = conditionsOf(session, guide);
    const claims = panelClaims(data, figures, conditions.distance);
    const change = gap(CHANGE, 'the first session');
    const instruments = usedInstruments(session, content.instruments);
    const { date } = session;
    return { id, date, readings: session, instruments, conditions, figures, claims, light, ...held, flags: [], change };
  });
  const [current] = sessions;

  const figures = new Map<MetricId, FigureOrGap>(
    current?.figures ?? METRICS.map((metric) => [metric.id, gap(metric.id, 'there is no bench session yet')]),
  );
  for (const it of [field.width, field.height, field.area]) figures.set(it.metric, it);
  const money: FigureOrGap = price ? priceFigureOf(slug, price, guide) : gap('real-price', 'no price is recorded');
  figures.set('real-price', money);
  const power = figures.get('optical-power') as FigureOrGap;
  const perWatt = pricePerWatt(current?.id ?? slug, money, power, guide.currency);
  figures.set('price-per-watt', perWatt);
  const emitted = figures.get('emitted-power') as FigureOrGap;
  figures.set('price-per-emitted-watt', pricePerEmittedWatt(current?.id ?? slug, money, emitted, guide.currency));

  // Flags look at a panel as a whole, so they come when all of its figures are there.
  const flagged = sessions.map((session, index) => {
    const all = index === 0 ? figures : session.figures;
    return { ...session, flags: sessionFlags(data, session, all, content, today, index === 0 ? price : undefined) };
  });
  const own = flagged[0]?.flags ?? looseFlags(data, figures, content, today, price);

  const withFlags = flagged.map((session, index): SessionEntry => {
    const own = flaggedFigures(index === 0 ? figures : session.figures, session.flags);
    return { ...session, figures: own, ...flaggedResults(session, own) };
  });
  const finished = withFlags.map((session, index): SessionEntry => {
    const earlier = withFlags[index + 1];
    return earlier ? { ...session, change: changeSince(session, earlier) } : session;
  });
  const ownFigures = finished[0]?.figures ?? flaggedFigures(figures, own);
  const ownPower = ownFigures.get('optical-power') as FigureOrGap;

  return {
    slug,
    name: `${maker.name} ${data.model}`,
    maker,
    data,
    sizeClass: isFigure(field.area) ? sizeClassOf(field.area.value, guide.sizeClasses) : undefined,
    sessions: finished,
    current: finished[0],
    figures: ownFigures,
    flags: own,
    claims: finished[0]?.claims ?? [],
    prices: prices.map((it): PriceEntry => {
      const figure = priceFigureOf(slug, it, guide);
      return { price: it, figure, perWatt: pricePerWatt(current?.id ?? slug, figure, ownPower, guide.currency) };
    }),
  };
}

/** What a session says of its figures, with the flags on them. */
function flaggedResults({ limits, claims }: SessionEntry, figures: FigureMap): Pick<SessionEntry, 'limits' | 'claims'> {
  const flagged = (it: Figure) => {
    const found = figures.get(it.metric);
    return isFigure(found) ? found : it;
  };
  return {
    limits: limits.map((it) => (isFigure(it.figure) ? { ...it, figure: flagged(it.figure) } : it)),
    claims: claims.map((it) => (it.measured ? { ...it, measured: flagged(it.measured) } : it)),
  };
}

/** Metric id of the change of optical power between sessions. */
const CHANGE = 'optical-power-change';

function changeSince(later: SessionEntry, earlier: SessionEntry): FigureOrGap {
  const [now, before] = [later.figures.get('optical-power'), earlier.figures.get('optical-power')];
  if (!isFigure(now) || !isFigure(before)) return gap(CHANGE, 'one of the two has no optical power');
  const alike =
    sameDistance(later.conditions.distance, earlier.conditions.distance) &&
    areNinePointAlike(later.conditions.methodVersion, earlier.conditions.methodVersion);
  if (!alike) return gap(CHANGE, 'measured under other conditions');
  return changeFigure(later.id, CHANGE, now, before);
}

function instrumentFinder(
  content: Content,
  session: Session | undefined,
): (kind: InstrumentKind) => Instrument | undefined {
  return (kind) => {
    const id = session?.instruments[kind];
    const instrument = id === undefined ? undefined : content.instruments.get(id);
    return session && instrument && instrumentOf(instrument.id, instrument.data, session.date);
  };
}

function fieldFigures(slug: string, panel: Panel, guide: Guide, tape: Instrument | undefined) {
  if (!panel.field) {
    const reason = 'the LED field was not measured';
    return { width: gap('field-width', reason), height: gap('field-height', reason), area: gap('led-area', reason) };
  }
  const side = (name: 'width' | 'height', value: number) =>
    sideFigure({ panel: slug, side: name, value, edgeSetting: guide.edgeSetting.value, instrument: tape });
  const width = side('width', panel.field.width.value);
  const height = side('height', panel.field.height.value);
  return { width, height, area: ledAreaFigure(slug, width, height) };
}

/** The figure of one dated price: what was really paid, or the list price where that is not known. */
function priceFigureOf(slug: string, price: Price, guide: Guide): Figure {
  const amount = price.paid ?? price.list;
  if (amount === undefined) throw new Error(`${slug}: a price of ${price.date} with no amount was let through`);
  const rate = price.currency === guide.currency ? 1 : guide.rates.find((it) => it.currency === price.currency)?.rate;
  if (rate === undefined) throw new Error(`${slug}: no rate for ${price.currency} was let through`);
  return priceFigure({
    panel: slug,
    amount,
    currency: price.currency,
    rate,
    baseCurrency: guide.currency,
    date: price.date,
    kind: price.paid === undefined ? 'list' : 'paid',
  });
}

function pricePerWatt(session: string, price: FigureOrGap, power: FigureOrGap, currency: string): FigureOrGap {
  if (!isFigure(price)) return gap('price-per-watt', price.reason);
  if (!isFigure(power)) return gap('price-per-watt', power.reason);
  return pricePerWattFigure(session, price, power, currency);
}

function pricePerEmittedWatt(session: string, price: FigureOrGap, emitted: FigureOrGap, currency: string): FigureOrGap {
  if (!isFigure(price)) return gap('price-per-emitted-watt', price.reason);
  if (!isFigure(emitted)) return gap('price-per-emitted-watt', emitted.reason);
  return pricePerEmittedWattFigure(session, price, emitted, currency);
}

function conditionsOf(session: Session, guide: Guide): Conditions {
  const distance = (session.distance ?? guide.referenceDistance).value;
  const { methodVersion } = session;
  const same = sameDistance(distance, guide.referenceDistance.value);
  return { distance, methodVersion, isReference: same && areNinePointAlike(methodVersion, guide.methodVersion) };
}

function sides(it: Panel['field']): { width: number; height: number } | undefined {
  return it && { width: it.width.value, height: it.height.value };
}

function sessionFlags(
  panel: Panel,
  session: SessionEntry,
  figures: FigureMap,
  content: Content,
  today: string,
  price: Price | undefined,
): Flag[] {
  const { readings } = session;
  const plausibility = flagsOf({
    figure: figureFinder(figures),
    gridPoints: gridPointMeans(readings),
    gridColumns: readings.grid?.rows[0]?.length ?? 1,
    field: sides(panel.field),
    housing: sides(panel.housing),
    priceDate: price?.date,
    today,
    sessionDate: session.date,
    calibrations: session.instruments.flatMap(({ id, name, calibration }) =>
      calibration
        ? [
            {
              instrument: name,
              due: calibration.due,
              // Every budget is gone through for it, and hardly ever asked for: a calibration mostly holds.
              get reads() {
                return metricsResting(id, figures);
              },
            },
          ]
        : [],
    ),
    claims: session.claims,
    ...checkedReadings(panel, readings, content, figures),
  });
  return [...plausibility, ...session.light.flags];
}

/** Flags of a panel that has never been on the bench: its price and its sizes can still be odd. */
function looseFlags(
  panel: Panel,
  figures: FigureMap,
  content: Content,
  today: string,
  price: Price | undefined,
): Flag[] {
  return flagsOf({
    figure: figureFinder(figures),
    gridPoints: [],
    gridColumns: 1,
    field: sides(panel.field),
    housing: sides(panel.housing),
    priceDate: price?.date,
    today,
    sessionDate: today,
    calibrations: [],
    claims: [],
    ...checkedReadings(panel, undefined, content, figures),
  });
}

/** Metrics in whose budget a meter's calibration stands, and has not cancelled; a doubt about it concerns them. */
function metricsResting(instrument: string, figures: FigureMap): string[] {
  return [...figures.values()]
    .filter(isFigure)
    .filter((figure) =>
      figure.budget.some(
        (it) => it.source.key.startsWith(`${instrument}@`) && it.contribution !== 0 && !hasCancelled(figure, it),
      ),
    )
    .map((figure) => figure.metric);
}
