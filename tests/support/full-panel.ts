/** All that `data/panels.json` has to say of a panel, in full and straight from the ledger: what its rows are held against. */
import { fieldPath } from '../../src/content/schema/problem.ts';
import type { Ledger, PanelEntry, SessionEntry, SessionFile } from '../../src/ledger/ledger.ts';
import { stepUpsOf } from '../../src/ledger/step-ups-of.ts';
import type { LimitResult } from '../../src/measure/exposure/index.ts';
import { type Figure, type FigureOrGap, type Flag, isFigure } from '../../src/measure/figure.ts';
import { isInDoubt } from '../../src/measure/handed-on.ts';
import { METRICS } from '../../src/measure/metrics.ts';
import type { Rank } from '../../src/measure/money/ranking.ts';
import { rawReadings } from '../../src/site/calculation/raw-readings.ts';
import { cautionAddress } from '../../src/words/caution-words.ts';
import { claimText } from '../../src/words/claim-text.ts';
import { methodOf } from '../../src/words/format.ts';
import { CITATIONS } from '../../src/words/limits/citations.ts';
import { HAZARD_CAUTIONS } from '../../src/words/limits/hazard-cautions.ts';
import { limitWords } from '../../src/words/limits/index.ts';
import { textOf, titleOf } from '../../src/words/limits/wording.ts';
import { isAlone } from '../../src/words/rank-words.ts';
import { say } from '../../src/words/say.ts';
import { statedUncertainty } from '../../src/words/stated-uncertainty.ts';

const unitOf = (unit: string, currency: string) => unit.replace('currency', currency);

/** Nothing is said of what only a file could have given, where there was none. */
const hasFile = (it: FigureOrGap | undefined) => isFigure(it) || it?.reason.code !== 'not-measured';

const fileData = ({ name, kind, date, field, bytes, sha256 }: SessionFile, page: string) => ({
  name,
  kind,
  path: `${date}/${fieldPath(field)}`,
  bytes,
  sha256,
  address: `${page}${encodeURIComponent(name)}`,
});

/** @param page the panel's own, with the site's address */
function sessionData(session: SessionEntry, currency: string, page: string) {
  return {
    date: session.date,
    distance_cm: session.conditions.distance,
    method_version: session.conditions.methodVersion,
    reference_conditions: session.conditions.isReference,
    ...(session.readings.carried && { carried_over: session.readings.carried }),
    instruments: Object.fromEntries(
      session.instruments.map(({ kind, id, readOn, calibration, unit }) => [
        kind,
        {
          id,
          calibration: calibration?.date ?? null,
          holds_until: calibration?.due ?? null,
          uncertainty: calibration ? statedUncertainty({ ...calibration, unit }) : null,
          ...(readOn !== session.date && { read_on: readOn }),
        },
      ]),
    ),
    figures: Object.fromEntries(
      METRICS.filter((it) => !it.isOfFiles || hasFile(session.figures.get(it.id)))
        .map((metric) => [metric.id, figureData(session.figures.get(metric.id), currency)])
        .filter(([, it]) => it),
    ),
    readings: rawReadings(session).map((it) => ({ ...it })),
    ...(session.files.length > 0 && { files: session.files.map((it) => fileData(it, `${page}files/`)) }),
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
        difference: it.difference && digits(it.difference, 10),
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

/** A number to so many significant digits. */
const digits = (it: number, count: number) => Number(it.toPrecision(count));

function figureData(it: ReturnType<PanelEntry['figures']['get']>, currency: string) {
  if (!it) return undefined;
  if (!isFigure(it)) return { value: null, reason: say(it.reason) };
  const method = methodOf(it);
  return {
    id: it.id,
    value: digits(it.value, 12),
    unit: unitOf(it.unit, currency),
    ...(it.bound && { bound: it.bound }),
    standard_uncertainty: it.standardUncertainty && digits(it.standardUncertainty, 6),
    interval95: it.interval95?.map((end) => digits(end, 8)) ?? null,
    ...(it.uncertaintyAbsent && { uncertainty_absent: say(it.uncertaintyAbsent) }),
    basis: it.basis,
    method: method.id,
    method_version: method.version,
    ...(it.notes.length > 0 && { notes: it.notes.map(say) }),
    ...(it.flags.length > 0 && { flags: flagsData(it) }),
    ...(it.carriedOver && { carried_over: { from: it.carriedOver.from, in_part: !it.carriedOver.isWhole } }),
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

/** A panel in full. */
export function fullPanel(panel: PanelEntry, ledger: Ledger) {
  const { site, currency } = ledger.guide;
  return {
    slug: panel.slug,
    address: `${site.replace(/\/$/, '')}/panels/${panel.slug}/`,
    maker: panel.maker.name,
    model: panel.data.model,
    size_class: panel.sizeClass?.id ?? null,
    ...(panel.data.formerly && { formerly: panel.data.formerly }),
    obtained: panel.data.obtained ?? null,
    claimed: panel.data.claims ?? null,
    prices: panel.prices.map(({ price, figure }) => ({ ...price, base: { value: figure.value, currency } })),
    rank: rankData(panel.rank, panel.figures.get('price-per-watt')),
    rank_absent: panel.rankAbsent ? say(panel.rankAbsent) : null,
    rank_by_emitted: rankData(panel.byEmitted.rank, panel.figures.get('price-per-emitted-watt')),
    rank_by_emitted_absent: panel.byEmitted.rankAbsent ? say(panel.byEmitted.rankAbsent) : null,
    frontier: panel.frontier ?? null,
    step_ups: stepUpsOf(panel, ledger).map((it) => ({
      panel: it.panel,
      extra_price: digits(it.extraPrice, 12),
      extra_power: figureData(it.extraPower, currency),
      extra_price_per_watt: it.extraPricePerWatt ? figureData(it.extraPricePerWatt, currency) : null,
    })),
    // A panel without a session still has a size and a price.
    ...(panel.sessions.length === 0 && {
      figures: Object.fromEntries(
        METRICS.map((metric) => [metric.id, figureData(panel.figures.get(metric.id), currency)]),
      ),
    }),
    sessions: panel.sessions.map((session) =>
      sessionData(session, currency, `${site.replace(/\/$/, '')}/panels/${panel.slug}/`),
    ),
  };
}
