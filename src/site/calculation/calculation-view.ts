import { curly } from '../../content/schema/curly.ts';
import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { type Figure, hasCancelled, isFigure } from '../../measure/figure.ts';
import { REPEATABILITY } from '../../measure/instrument/instrument.ts';
import { methodById } from '../../measure/methods.ts';
import { isMetricId, METRICS, metricById } from '../../measure/metrics.ts';
import { carriedWords } from '../../words/carried-words.ts';
import { reasonText } from '../../words/figure-text.ts';
import { fixed, methodOf, type Shown, showDate, showFigure, unitWords } from '../../words/format.ts';
import { nameOf } from '../../words/names.ts';
import { equationText, say } from '../../words/say.ts';
import { twoDigits } from '../../words/two-digits.ts';
import { type BeyondView, beyondView } from '../panel/beyond-view.ts';
import { carriedLines } from '../shared/carried-lines.ts';
import { type CorrectedMark, correctedMark } from '../shared/corrections.ts';
import { fileAnchor, filesAddress } from '../shared/file-addresses.ts';
import { type CalculationPage, calculationAnchor, calculationPage } from '../shared/shown-figure.ts';
import { type DistanceCalculation, distanceCalculation } from './distance-calculation.ts';
import { errorNames } from './error-names.ts';
import { type ErrorRow, errorRows, type InstrumentRow, instrumentRows, sourcesOf } from './error-sources.ts';
import { type Input, inputsOf, type LinkedPart, linkedEquation } from './linked-equation.ts';
import { type RawReading, rawReadings } from './raw-readings.ts';
import { type PrintedComponent, type Referable, type ShortBudget, shortBudget } from './short-budget.ts';
import { addTo, idsOf, type NewerFigures, nothingTold, type Told, tell } from './told-figures.ts';

/** A figure's calculation: all that a reader needs to repeat it. */
export interface Calculation {
  anchor: string;
  /** The anchor that stays when a newer session becomes the current one. */
  datedAnchor: string;
  /** One that a figure had which stood in its place. */
  formerAnchor: string | undefined;
  name: string;
  metric: string;
  id: string;
  shown: Shown;
  /** From which day it is, where its readings were not taken again. */
  carried: string | undefined;
  /** That it was corrected, from what, and why. */
  corrected: CorrectedMark | undefined;
  /** Anchor of its account, where that is an earlier session's: all of it is from there. */
  toldAt: string | undefined;
  basis: Figure['basis'];
  methodName: string;
  methodAddress: string;
  methodVersion: number;
  /** The formula with this panel's numbers put in, what it is made of linked to its own place. */
  calculation: LinkedPart[] | undefined;
  budget: PrintedComponent[];
  /** The same, said once. */
  short: ShortBudget;
  /** Standard uncertainty and 95 % interval, in the figure's unit. */
  combined: string | undefined;
  /** The interval alone. */
  interval: string | undefined;
  unassessed: Figure['unassessed'];
  /** What went in and does not stand in the formula. */
  inputs: Input[];
  /** The figure above that the same went into, where that is much. */
  asBefore: { anchor: string; name: string } | undefined;
  notes: string[];
  flags: Figure['flags'];
}

/** One session of the calculation page. */
export interface SessionCalculation {
  date: string;
  shownDate: string;
  isCurrent: boolean;
  conditions: string;
  notes?: string;
  instruments: InstrumentRow[];
  /** What else moves the readings, and how each was come by. */
  errors: ErrorRow[];
  /** What no interval holds, and why. */
  unassessed: Array<{ what: string; reason: string }>;
  readings: RawReading[];
  /** What was not taken again, with the days that it is from; their readings stand there. */
  carried: Array<{ text: string; anchor: string }>;
  /** Files from the bench, with their hashes; what they say stands on a page of its own. */
  files: Array<{ name: string; address: string; sha256: string }>;
  /** What was read past the edges of the field, with its places drawn. */
  beyond?: BeyondView;
  figures: Calculation[];
  /** Doubts about it, and what can't be; of an older one they are said here once. */
  flags: Figure['flags'];
  /** The table by distance, whose values share one account. */
  distances?: DistanceCalculation;
  gaps: Array<{ name: string; reason: string; anchor: string; datedAnchor?: string }>;
}

/**
 * All sessions of a panel with their calculation, the current one first.
 *
 * @param page which of a panel's pages tells it: figures that are had from files alone stand on a page of their own
 */
export function calculationView(
  panel: PanelEntry,
  currency: string,
  page: CalculationPage = 'methodology',
): SessionCalculation[] {
  const newer = new Map<string, Referable[]>();
  return panel.sessions.map((session) => {
    const view = sessionCalculation(panel, session, { currency, page }, newer);
    // What is told further down can't be referred to.
    for (const it of view.figures) if (it.toldAt === undefined) addTo(newer, it.metric, it);
    return view;
  });
}

/** Figures of a panel that has never been on the bench: its price and its size. */
export function looseCalculation(panel: PanelEntry, currency: string): Calculation[] {
  if (panel.current) return [];
  const told = nothingTold<Calculation>(panel.figures, new Map());
  for (const it of panel.figures.values()) {
    if (isFigure(it)) tell(told, figureCalculation(panel, undefined, it, currency, told));
  }
  return told.figures;
}

function sessionCalculation(
  panel: PanelEntry,
  session: SessionEntry,
  { currency, page }: { currency: string; page: CalculationPage },
  newer: NewerFigures,
): SessionCalculation {
  const isCurrent = session === panel.current;
  const told = nothingTold<Calculation>(session.figures, newer);
  const gaps: SessionCalculation['gaps'] = [];
  const all: Figure[] = [];
  for (const metric of METRICS) {
    if (calculationPage(metric.id) !== page) continue;
    const it = session.figures.get(metric.id);
    // No file could have given it.
    if (page === 'files' && !isFigure(it) && it?.reason.code === 'not-measured') continue;
    const anchor = calculationAnchor(metric.id, session, panel.current);
    if (isFigure(it)) all.push(it);
    if (isFigure(it) && metric.method === 'distance-table') continue;
    if (isFigure(it)) tell(told, figureCalculation(panel, session, it, currency, told));
    // The price belongs to the current session alone; its absence elsewhere is no gap.
    else if (isCurrent || it)
      gaps.push({
        name: metric.name,
        reason: reasonText(it),
        anchor,
        ...(isCurrent && { datedAnchor: `${metric.id}-${session.date}` }),
      });
  }
  const sources = sourcesOf(all);
  const distances = distanceCalculation(panel, session, currency);
  const beyond = beyondView(panel, session);
  return {
    date: session.date,
    shownDate: showDate(session.date),
    isCurrent,
    conditions: `LED plane to sensor ${fixed(session.conditions.distance, 2)} cm; bench procedure version ${session.conditions.methodVersion}.`,
    ...(session.readings.notes && { notes: curly(session.readings.notes) }),
    instruments: instrumentRows(session, sources),
    errors: errorRows(sources),
    unassessed: unassessedOf(all),
    readings: rawReadings(session),
    carried: carriedLines(session.readings).map(({ text, from }) => ({ text, anchor: `readings-${from}` })),
    files: session.files
      .filter((it) => it.date === session.date)
      .map((it) => ({ name: it.name, address: `${filesAddress(panel.slug)}#${fileAnchor(it)}`, sha256: it.sha256 })),
    ...(beyond && { beyond }),
    figures: told.figures,
    flags: session.flags.filter((it) => it.severity !== 'note'),
    ...(distances && { distances }),
    gaps,
  };
}

/** What the intervals of some figures leave out, each reason once; of one that many meters have, the meters in a row. */
function unassessedOf(figures: readonly Figure[]): SessionCalculation['unassessed'] {
  const whats = new Map<string, Set<string>>();
  const silent = new Set<string>();
  for (const { what, reason } of figures.flatMap((it) => it.unassessed)) {
    if (reason.code === 'scatter-not-known') silent.add(reason.instrument);
    else whats.set(say(reason), (whats.get(say(reason)) ?? new Set()).add(say(what)));
  }
  const rows = [...whats].map(([reason, all]) => ({ what: [...all].join(', '), reason }));
  if (silent.size === 0) return rows;
  const meters = [...silent].join(', the ');
  return [...rows, { what: say(REPEATABILITY), reason: say({ code: 'scatter-not-known', instrument: meters }) }];
}

function figureCalculation(
  panel: PanelEntry,
  session: SessionEntry | undefined,
  figure: Figure,
  currency: string,
  { own, byId, byInputs, byMethod, newer }: Told<Calculation>,
): Calculation {
  const { id: methodId, version, address } = methodOf(figure);
  const shown = showFigure(figure, currency);
  const unit = unitWords(figure.unit, currency);
  const metric = isMetricId(figure.metric) ? metricById(figure.metric) : undefined;
  const [u, k] = [figure.standardUncertainty ?? 0, figure.coverageFactor ?? 0];
  const anchor = calculationAnchor(figure.metric, session, panel.current);
  const names = errorNames(figure);
  const budget = figure.budget.map((it, i): PrintedComponent => {
    const { source, contribution } = it;
    // What two inputs share may cancel; what floating point leaves of it is nought.
    const cancels = hasCancelled(figure, it);
    return {
      key: source.key,
      name: names[i] ?? say(source.what),
      type: source.type,
      u: cancels ? '0' : `${small(Math.abs(contribution))}${unit ? ` ${unit}` : ''}`,
      relative: cancels ? '0 %' : figure.value === 0 ? '' : `${small(Math.abs((100 * contribution) / figure.value))} %`,
    };
  });
  const made = inputsOf(figure, panel, session, own);
  const { parts, rest } = linkedEquation(figure.calculation && equationText(figure.calculation), made, currency);
  const interval = u > 0 && k > 0 ? figure.interval95?.map(small4).join(' to ') : undefined;
  const same = rest.length > 2 ? byInputs.get(idsOf(rest)) : undefined;
  const alikes = [...(newer.get(figure.metric) ?? []), ...(byMethod.get(address) ?? [])];
  return {
    anchor,
    datedAnchor: `${figure.metric}-${session?.date ?? 'no-session'}`,
    formerAnchor: metric?.formerly && `${metric.formerly}-${session?.date ?? 'no-session'}`,
    name: metric?.name ?? figure.metric,
    metric: figure.metric,
    id: figure.id,
    shown,
    carried: carriedWords(figure),
    corrected: correctedMark(panel.corrections, figure, currency),
    toldAt: toldAt(figure),
    basis: figure.basis,
    methodName: methodById(methodId).name,
    methodAddress: address,
    methodVersion: version,
    calculation: parts,
    budget,
    short: shortBudget(
      budget,
      made.flatMap((it) => byId.get(it.id) ?? []),
      alikes,
    ),
    combined:
      interval &&
      `u ${small(u)}, ${figure.degreesOfFreedom === Number.POSITIVE_INFINITY ? '' : `${figure.degreesOfFreedom} degrees of freedom, k = ${fixed(k, 2)}, `}95 % ${interval}`,
    interval,
    unassessed: figure.unassessed,
    inputs: rest,
    asBefore: same && { anchor: same.anchor, name: nameOf(same.metric) },
    notes: figure.notes.map(say),
    flags: figure.flags,
  };
}

/** Where a figure that is nothing but an earlier session's has its account; undefined for all others. */
function toldAt({ metric, carriedOver }: Figure): string | undefined {
  const [day, ...others] = carriedOver?.from ?? [];
  return carriedOver?.isWhole && others.length === 0 ? `${metric}-${day}` : undefined;
}

const small = (value: number) => twoDigits(value).replace('-', '−');

function small4(value: number): string {
  return Number(value.toPrecision(4)).toString().replace('-', '−');
}
