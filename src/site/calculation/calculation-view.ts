import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { type Figure, hasCancelled, isFigure } from '../../measure/figure.ts';
import { methodById } from '../../measure/methods.ts';
import { METRICS } from '../../measure/metrics.ts';
import { reasonText } from '../../words/figure-text.ts';
import { fixed, methodOf, type Shown, showDate, showFigure, unitSigns, unitWords } from '../../words/format.ts';
import { sentenceOf } from '../../words/limits/index.ts';
import { equationText, say } from '../../words/say.ts';
import { statedUncertainty } from '../../words/stated-uncertainty.ts';
import { type BeyondView, beyondView } from '../panel/beyond-view.ts';
import { formula } from '../shared/formula.ts';
import { calculationAnchor } from '../shared/shown-figure.ts';
import { type DistanceCalculation, distanceCalculation } from './distance-calculation.ts';
import { type RawReading, rawReadings } from './raw-readings.ts';

/** One line of a printed uncertainty budget. */
export interface PrintedComponent {
  source: string;
  type: 'A' | 'B';
  /** In the figure's unit. */
  u: string;
  /** Of the figure, %. */
  relative: string;
  evaluation: string;
}

/** A figure's calculation: all that a reader needs to repeat it. */
export interface Calculation {
  anchor: string;
  /** The anchor that stays when a newer session becomes the current one. */
  datedAnchor: string;
  name: string;
  id: string;
  shown: Shown;
  basis: Figure['basis'];
  methodName: string;
  methodAddress: string;
  methodVersion: number;
  formula?: string;
  /** Where the page has the formula already. */
  formulaAt?: string;
  calculation?: string;
  /** What the figure means beside a published limit, in full. */
  sentence?: string;
  budget: PrintedComponent[];
  combined?: string;
  unassessed: Figure['unassessed'];
  inputs: string[];
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
  instruments: Array<{
    kind: string;
    id: string;
    name: string;
    calibrated: string;
    due: string;
    isOverdue: boolean;
    uncertainty: string;
  }>;
  readings: RawReading[];
  /** What was read past the edges of the field, with its places drawn. */
  beyond?: BeyondView;
  figures: Calculation[];
  /** The table by distance, whose values share one account. */
  distances?: DistanceCalculation;
  gaps: Array<{ name: string; reason: string; anchor: string; datedAnchor?: string }>;
}

/** All sessions of a panel with their calculation, the current one first. */
export function calculationView(panel: PanelEntry, currency: string): SessionCalculation[] {
  const seen: SeenFormulas = new Map();
  return panel.sessions.map((session) => sessionCalculation(panel, session, currency, seen));
}

/** Where on the page the formula of a method stands: many figures have one, and it is long. */
type SeenFormulas = Map<string, string>;

/** Figures of a panel that has never been on the bench: its price and its size. */
export function looseCalculation(panel: PanelEntry, currency: string): Calculation[] {
  const seen: SeenFormulas = new Map();
  return panel.current
    ? []
    : [...panel.figures.values()].filter(isFigure).map((it) => figureCalculation(panel, undefined, it, currency, seen));
}

function sessionCalculation(
  panel: PanelEntry,
  session: SessionEntry,
  currency: string,
  seen: SeenFormulas,
): SessionCalculation {
  const isCurrent = session === panel.current;
  const figures: Calculation[] = [];
  const gaps: SessionCalculation['gaps'] = [];
  for (const metric of METRICS) {
    const it = session.figures.get(metric.id);
    const anchor = calculationAnchor(metric.id, session, panel.current);
    if (isFigure(it) && metric.method === 'distance-table') continue;
    if (isFigure(it)) figures.push(figureCalculation(panel, session, it, currency, seen));
    // The price belongs to the current session alone; its absence elsewhere is no gap.
    else if (isCurrent || it)
      gaps.push({
        name: metric.name,
        reason: reasonText(it),
        anchor,
        ...(isCurrent && { datedAnchor: `${metric.id}-${session.date}` }),
      });
  }
  const distances = distanceCalculation(panel, session, currency);
  const beyond = beyondView(panel, session);
  return {
    date: session.date,
    shownDate: showDate(session.date),
    isCurrent,
    conditions: `LED plane to sensor ${fixed(session.conditions.distance, 2)} cm; bench procedure version ${session.conditions.methodVersion}.`,
    ...(session.readings.notes && { notes: session.readings.notes }),
    instruments: instrumentLines(session),
    readings: rawReadings(session),
    ...(beyond && { beyond }),
    figures,
    ...(distances && { distances }),
    gaps,
  };
}

function instrumentLines({ instruments, date }: SessionEntry): SessionCalculation['instruments'] {
  return instruments.map(({ kind, id, name, calibration, unit }) => ({
    kind,
    id,
    name,
    calibrated: calibration ? showDate(calibration.date) : 'not before the session',
    due: calibration ? showDate(calibration.due) : '',
    isOverdue: calibration !== undefined && calibration.due < date,
    uncertainty: calibration ? statedUncertainty({ ...calibration, unit: unitSigns(unit) }) : 'not known',
  }));
}

function figureCalculation(
  panel: PanelEntry,
  session: SessionEntry | undefined,
  figure: Figure,
  currency: string,
  seen: SeenFormulas,
): Calculation {
  const { id: methodId, version, address } = methodOf(figure);
  const method = methodById(methodId);
  const shown = showFigure(figure, currency);
  const unit = unitWords(figure.unit, currency);
  const metric = METRICS.find((it) => it.id === figure.metric);
  const small = (value: number) => Number(value.toPrecision(2)).toString().replace('-', '−');
  const u = figure.standardUncertainty;
  const anchor = calculationAnchor(figure.metric, session, panel.current);
  const held = session?.limits.find((it) => it.id === figure.metric);
  return {
    anchor,
    datedAnchor: `${figure.metric}-${session?.date ?? 'no-session'}`,
    name: metric?.name ?? figure.metric,
    id: figure.id,
    shown,
    basis: figure.basis,
    methodName: method.name,
    methodAddress: address,
    methodVersion: version,
    ...(figure.calculation && method.formula && formulaOnce(methodId, method.formula, seen, anchor)),
    ...(figure.calculation && { calculation: equationText(figure.calculation) }),
    ...(held && { sentence: sentenceOf(held) }),
    budget: figure.budget.map((it) => {
      const { source, contribution } = it;
      // What two inputs share may cancel; what floating point leaves of it is nought.
      const cancels = hasCancelled(figure, it);
      return {
        source: say(source.what),
        type: source.type,
        u: cancels ? '0' : `${small(Math.abs(contribution))}${unit ? ` ${unit}` : ''}`,
        relative: cancels
          ? '0 %'
          : figure.value === 0
            ? ''
            : `${small(Math.abs((100 * contribution) / figure.value))} %`,
        evaluation: cancels ? `${say(source.evaluation)}; cancels here` : say(source.evaluation),
      };
    }),
    ...(u &&
      figure.coverageFactor &&
      figure.interval95 && {
        combined: `u = ${small(u)}${unit ? ` ${unit}` : ''}, ${figure.degreesOfFreedom === Number.POSITIVE_INFINITY ? 'degrees of freedom not limited' : `${figure.degreesOfFreedom} effective degrees of freedom`}, k = ${fixed(figure.coverageFactor, 2)}; 95 % interval ${small4(figure.interval95[0])} to ${small4(figure.interval95[1])}${unit ? ` ${unit}` : ''}`,
      }),
    unassessed: figure.unassessed,
    inputs: figure.inputs,
    notes: figure.notes.map(say),
    flags: figure.flags,
  };
}

/** The formula where the page has not had it yet; else where it stands. */
function formulaOnce(
  method: string,
  tex: string,
  seen: SeenFormulas,
  anchor: string,
): Pick<Calculation, 'formula' | 'formulaAt'> {
  const before = seen.get(method);
  if (before !== undefined) return { formulaAt: before };
  seen.set(method, anchor);
  return { formula: formula(tex, true) };
}

function small4(value: number): string {
  return Number(value.toPrecision(4)).toString().replace('-', '−');
}
