import { csvFormatBody, csvFormatRow } from 'd3-dsv';
import type { Ledger, PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import type { LimitResult } from '../../measure/exposure/index.ts';
import { type Figure, type FigureOrGap, type Flag, isFigure } from '../../measure/figure.ts';
import { isInDoubt } from '../../measure/handed-on.ts';
import { METRICS } from '../../measure/metrics.ts';
import type { Rank } from '../../measure/money/ranking.ts';
import { cautionAddress } from '../../words/caution-words.ts';
import { claimText } from '../../words/claim-text.ts';
import { methodOf } from '../../words/format.ts';
import { CITATIONS } from '../../words/limits/citations.ts';
import { HAZARD_CAUTIONS } from '../../words/limits/hazard-cautions.ts';
import { limitWords } from '../../words/limits/index.ts';
import { textOf, titleOf } from '../../words/limits/wording.ts';
import { isAlone } from '../../words/rank-words.ts';
import { say } from '../../words/say.ts';
import { statedUncertainty } from '../../words/stated-uncertainty.ts';
import { rawReadings } from '../calculation/raw-readings.ts';

/** Version of the two files' form; goes up when a field changes its meaning or goes. */
export const DATA_FORMAT = 2;

/** Units as data files write them: the base currency in the place of "currency". */
const unitOf = (unit: string, currency: string) => unit.replace('currency', currency);

function sessionData(session: SessionEntry, currency: string) {
  return {
    date: session.date,
    distance_cm: session.conditions.distance,
    method_version: session.conditions.methodVersion,
    reference_conditions: session.conditions.isReference,
    instruments: Object.fromEntries(
      session.instruments.map(({ kind, id, calibration, unit }) => [
        kind,
        {
          id,
          calibration: calibration?.date ?? null,
          holds_until: calibration?.due ?? null,
          uncertainty: calibration ? statedUncertainty({ ...calibration, unit }) : null,
        },
      ]),
    ),
    figures: Object.fromEntries(
      METRICS.map((metric) => [metric.id, figureData(session.figures.get(metric.id), currency)]).filter(([, it]) => it),
    ),
    readings: rawReadings(session).map((it) => ({ ...it })),
    limits: session.limits.map(limitData),
    flags: session.flags.map(({ check, severity, finding, concerns }) => ({
      check,
      severity,
      text: say(finding),
      concerns,
    })),
    claims: session.claims.map((it) => {
      const { subject, outcome, text } = claimText(it);
      return {
        subject,
        claimed: it.claimed,
        unit: it.unit,
        outcome,
        text,
        measured: it.measured?.id ?? null,
        difference: it.difference,
      };
    }),
  };
}

function limitData(result: LimitResult) {
  const words = limitWords(result);
  return {
    figure: result.id,
    title: titleOf(words),
    sentence: textOf(words),
    limit: result.limit ? CITATIONS[result.limit] : null,
    caution: cautionAddress(HAZARD_CAUTIONS[result.hazard]),
  };
}

function figureData(it: ReturnType<PanelEntry['figures']['get']>, currency: string) {
  if (!it) return undefined;
  if (!isFigure(it)) return { value: null, reason: say(it.reason) };
  const method = methodOf(it);
  return {
    id: it.id,
    value: it.value,
    unit: unitOf(it.unit, currency),
    ...(it.bound && { bound: it.bound }),
    standard_uncertainty: it.standardUncertainty,
    interval95: it.interval95,
    ...(it.uncertaintyAbsent && { uncertainty_absent: say(it.uncertaintyAbsent) }),
    basis: it.basis,
    method: method.id,
    method_version: method.version,
    ...(it.notes.length > 0 && { notes: it.notes.map(say) }),
    ...(it.flags.length > 0 && { flags: flagsData(it) }),
  };
}

/** A figure's flags, with the figure that one was handed on from; two sentences of one check are one. */
function flagsData({ flags }: Figure): Array<{ check: string; severity: Flag['severity']; from: string | null }> {
  const all = flags.map(({ check, severity, from = null }) => ({ check, severity, from }));
  return [...new Map(all.map((it) => [JSON.stringify(it), it])).values()];
}

/** A rank with what its words on the pages say: that a panel is alone, or that what it is ranked by is in doubt. */
function rankData(rank: Rank | undefined, rankedBy: FigureOrGap | undefined) {
  if (!rank) return null;
  const { rangeAbsent, ...place } = rank;
  const absent = rangeAbsent === undefined ? {} : { rangeAbsent: say(rangeAbsent) };
  return { ...place, ...absent, alone: isAlone(rank), in_doubt: isFigure(rankedBy) && isInDoubt(rankedBy) };
}

const publishedPanels = (ledger: Ledger) => [...ledger.panels.values()].filter((it) => it.data.status === 'published');

/**
 * `data/panels.json`: every figure and every raw reading of every published panel. In pieces, a panel each: of
 * thousands of panels it is longer than one text can be.
 */
export function* panelsJson(ledger: Ledger): Generator<string> {
  const { guide, today } = ledger;
  const head = JSON.stringify({
    format: DATA_FORMAT,
    title: guide.title,
    publisher: guide.publisher,
    site: guide.site,
    built_for: today,
    currency: guide.currency,
    reference: { distance_cm: guide.referenceDistance.value, method_version: guide.methodVersion },
  });
  yield `${head.slice(0, -1)},"panels":[`;
  let separator = '';
  for (const panel of publishedPanels(ledger)) {
    yield separator + JSON.stringify(panelData(panel, guide));
    separator = ',';
  }
  yield ']}';
}

function panelData(panel: PanelEntry, { site, currency }: Ledger['guide']) {
  return {
    slug: panel.slug,
    address: `${site.replace(/\/$/, '')}/panels/${panel.slug}/`,
    maker: panel.maker.name,
    model: panel.data.model,
    size_class: panel.sizeClass?.id ?? null,
    obtained: panel.data.obtained ?? null,
    claimed: panel.data.claims ?? null,
    prices: panel.prices.map(({ price, figure }) => ({ ...price, base: { value: figure.value, currency } })),
    rank: rankData(panel.rank, panel.figures.get('price-per-watt')),
    rank_absent: panel.rankAbsent ? say(panel.rankAbsent) : null,
    rank_by_emitted: rankData(panel.byEmitted.rank, panel.figures.get('price-per-emitted-watt')),
    rank_by_emitted_absent: panel.byEmitted.rankAbsent ? say(panel.byEmitted.rankAbsent) : null,
    frontier: panel.frontier ?? null,
    step_ups: panel.stepUps.best.map((it) => ({
      panel: it.panel,
      extra_price: it.extraPrice,
      extra_power: figureData(it.extraPower, currency),
      extra_price_per_watt: it.extraPricePerWatt ? figureData(it.extraPricePerWatt, currency) : null,
    })),
    // A panel without a session still has a size and a price.
    ...(panel.sessions.length === 0 && {
      figures: Object.fromEntries(
        METRICS.map((metric) => [metric.id, figureData(panel.figures.get(metric.id), currency)]),
      ),
    }),
    sessions: panel.sessions.map((session) => sessionData(session, currency)),
  };
}

const COLUMNS = [
  'kind',
  'panel',
  'session',
  'metric',
  'value',
  'unit',
  'bound',
  'standard_uncertainty',
  'interval95_low',
  'interval95_high',
  'basis',
  'method',
  'method_version',
  'written',
  'struck',
  'reason',
  'flags',
] as const;

type CsvRow = Partial<Record<(typeof COLUMNS)[number], string | number | null>>;

/**
 * A text that a spreadsheet would run as a formula gets an apostrophe before it. A reading such as "-3 C" is
 * none, though it starts with a sign.
 */
function harmless(text: string): string {
  const isReading = /^-\d+(\.\d+)?( [^-+*=]*)?$/.test(text);
  return /^[=+\-@\t\r]/.test(text) && !isReading ? `'${text}` : text;
}

/** `data/panels.csv`: the same, one figure or raw reading a line; in pieces too. */
export function* panelsCsv(ledger: Ledger): Generator<string> {
  yield `${csvFormatRow([...COLUMNS])}\n`;
  for (const panel of publishedPanels(ledger)) {
    const rows = csvRows(panel, ledger.guide.currency);
    if (rows.length > 0) yield `${csvFormatBody(rows, [...COLUMNS])}\n`;
  }
}

function csvRows(panel: PanelEntry, currency: string): CsvRow[] {
  const figures = (from: PanelEntry['figures'], session: string): CsvRow[] =>
    METRICS.flatMap((metric): CsvRow[] => {
      const it = from.get(metric.id);
      if (!it) return [];
      const base = { kind: 'figure', panel: panel.slug, session, metric: metric.id };
      if (!isFigure(it)) return [{ ...base, reason: say(it.reason) }];
      const method = methodOf(it);
      return [
        {
          ...base,
          value: it.value,
          unit: unitOf(it.unit, currency),
          bound: it.bound ?? '',
          standard_uncertainty: it.standardUncertainty,
          interval95_low: it.interval95?.[0] ?? null,
          interval95_high: it.interval95?.[1] ?? null,
          basis: it.basis,
          method: method.id,
          method_version: method.version,
          reason: it.uncertaintyAbsent ? say(it.uncertaintyAbsent) : '',
          flags: [...new Set(flagsData(it).map(({ check, from }) => (from ? `${check}@${from}` : check)))].join(' '),
        },
      ];
    });
  const sessions = panel.sessions.flatMap((session) => [
    ...figures(session.figures, session.date),
    ...rawReadings(session).map(
      (it): CsvRow => ({
        kind: 'reading',
        panel: panel.slug,
        session: session.date,
        metric: it.path,
        value: it.value ?? null,
        unit: it.unit ?? '',
        bound: it.bound ?? '',
        written: harmless(it.written),
        struck: harmless(it.struck ?? ''),
      }),
    ),
  ]);
  return panel.sessions.length > 0 ? sessions : figures(panel.figures, '');
}
