import { fieldPath } from '../../content/schema/problem.ts';
import type { Ledger, PanelEntry, SessionEntry, SessionFile } from '../../ledger/ledger.ts';
import { stepUpsOf } from '../../ledger/step-ups-of.ts';
import type { LimitResult } from '../../measure/exposure/index.ts';
import { type FigureOrGap, isFigure } from '../../measure/figure.ts';
import { isInDoubt } from '../../measure/handed-on.ts';
import type { Rank } from '../../measure/money/ranking.ts';
import { cautionAddress } from '../../words/caution-words.ts';
import { claimText } from '../../words/claim-text.ts';
import { CITATIONS } from '../../words/limits/citations.ts';
import { HAZARD_CAUTIONS } from '../../words/limits/hazard-cautions.ts';
import { limitWords } from '../../words/limits/index.ts';
import { CLOSING, titleOf } from '../../words/limits/wording.ts';
import { isAlone } from '../../words/rank-words.ts';
import { say } from '../../words/say.ts';
import { rawReadings } from '../calculation/raw-readings.ts';
import type { TextRef } from '../shared/browser/text-ref.ts';
import { fileAddress } from '../shared/file-addresses.ts';
import { correctionsData } from './corrections-data.ts';
import { publishedPanels, short, valueData } from './data-parts.ts';
import { type FigureKinds, figureKinds, stepUpKinds } from './figure-kinds.ts';
import { FIGURE_COLUMNS, figureRow, figureRows } from './figure-rows.ts';
import { instrumentsData, usedData } from './instruments-data.ts';
import type { PanelPiece, Piece } from './panel-piece.ts';
import { READING_COLUMNS, readingRow } from './reading-rows.ts';
import { type LimitEntry, type Lists, listed, lists } from './shared-lists.ts';
import { sharedPlaces } from './shared-places.ts';
import { standardsData } from './standards-data.ts';
import { type NoteTable, noteTable, type TextTable, textTable } from './text-table.ts';

/** Version of the file's form; goes up when a field changes its meaning or goes. */
export const DATA_FORMAT = 5;

/** What rows hold, and the entries of `lists`, by the name of the lists that they stand in. */
export const COLUMNS = {
  figures: FIGURE_COLUMNS,
  readings: READING_COLUMNS,
  limits: ['figure', 'title', 'background', 'limit', 'caution'],
  step_ups: ['panel', 'extra_price', 'extra_power', 'extra_price_per_watt'],
} as const;

/** What every panel is written with. */
interface Pen {
  texts: TextTable;
  kinds: FigureKinds;
  lists: Lists;
  stepUpKinds: ReturnType<typeof stepUpKinds>;
  site: string;
  currency: string;
  /** Where each panel stands in the list. */
  placeOf: ReadonlyMap<string, number>;
}

/** A panel's, with its own lists of notes. */
type PanelPen = Pen & { notes: NoteTable };

/**
 * `data/panels.json`: every figure and every raw reading of every published panel. In pieces, a panel each: of
 * thousands of panels it is longer than one text can be. What many panels have alike is said once, at its beginning
 * and its end; the texts come last, since they are found on the way.
 */
export function* panelsJson(ledger: Ledger): Generator<Piece> {
  const { guide, today } = ledger;
  const { currency } = guide;
  const kinds = figureKinds(ledger);
  const panels = publishedPanels(ledger);
  const places = sharedPlaces();
  const pen: Pen = {
    texts: textTable(places.table((text) => text)),
    kinds,
    lists: lists(places),
    stepUpKinds: stepUpKinds(currency),
    site: guide.site.replace(/\/$/, ''),
    currency,
    placeOf: new Map(panels.map((it, i) => [it.slug, i])),
  };
  const head = JSON.stringify({
    format: DATA_FORMAT,
    title: guide.title,
    publisher: guide.publisher,
    site: guide.site,
    built_for: today,
    currency,
    reference: { distance_cm: guide.referenceDistance.value, method_version: guide.methodVersion },
    columns: COLUMNS,
    metrics: kinds,
    step_up_metrics: pen.stepUpKinds,
    limits: CITATIONS,
    instruments: instrumentsData(ledger),
    standards: standardsData(ledger),
    corrections: correctionsData(ledger),
  });
  yield `${head.slice(0, -1)},"panels":[`;
  const given = JSON.stringify([kinds, ...pen.placeOf.keys()]);
  let separator = '';
  for (const panel of panels) {
    if (separator) yield separator;
    const piece: PanelPiece = {
      panel: panel.slug,
      given,
      places,
      toString: () => JSON.stringify(panelData(panel, ledger, pen)),
    };
    yield piece;
    separator = ',\n';
  }
  // What was found on the way is there once all others have been written.
  yield { toString: () => listsText(pen) };
}

function listsText({ lists, texts }: Pen): string {
  const said = Object.fromEntries(Object.entries(lists).map(([name, { list }]) => [name, list]));
  return `],"lists":${JSON.stringify(said)},"texts":${JSON.stringify(texts.texts())}}`;
}

function panelData(panel: PanelEntry, ledger: Ledger, ofAll: Pen) {
  const { slug } = panel;
  const pen: PanelPen = { ...ofAll, notes: noteTable() };
  const { texts, currency } = pen;
  const data = {
    slug,
    address: `${pen.site}/panels/${slug}/`,
    maker: panel.maker.name,
    model: panel.data.model,
    size_class: panel.sizeClass?.id ?? null,
    ...(panel.data.formerly && { formerly: panel.data.formerly }),
    obtained: panel.data.obtained ?? null,
    claimed: panel.data.claims ?? null,
    prices: panel.prices.map(({ price, figure }) => ({ ...price, base: { value: figure.value, currency } })),
    rank: rankData(panel.rank, panel.figures.get('price-per-watt'), pen),
    rank_absent: panel.rankAbsent ? texts.filled(say(panel.rankAbsent)) : null,
    rank_by_emitted: rankData(panel.byEmitted.rank, panel.figures.get('price-per-emitted-watt'), pen),
    rank_by_emitted_absent: panel.byEmitted.rankAbsent ? texts.filled(say(panel.byEmitted.rankAbsent)) : null,
    frontier: panel.frontier ?? null,
    step_ups: stepUpsOf(panel, ledger).map((it) => {
      const id = `${slug}/step-up/${it.panel}`;
      const row = (part: keyof Pen['stepUpKinds'], figure: FigureOrGap) =>
        figureRow(figure, { id: `${id}/${part}`, kind: pen.stepUpKinds[part], currency }, pen);
      return [
        it.panel,
        valueData(it.extraPrice),
        row('power', it.extraPower),
        it.extraPricePerWatt && row('price-per-watt', it.extraPricePerWatt),
      ];
    }),
    // A panel without a session still has a size and a price.
    ...(panel.sessions.length === 0 && {
      figures: listed(figureRows(panel.figures, { ...pen, slug }, pen), pen.lists.figures),
    }),
    sessions: panel.sessions.map((session) => sessionData(slug, session, pen)),
  };
  return { ...data, notes: pen.notes.list };
}

function sessionData(slug: string, session: SessionEntry, pen: PanelPen) {
  const { texts } = pen;
  const { date, conditions } = session;
  return {
    date,
    distance_cm: conditions.distance,
    method_version: conditions.methodVersion,
    reference_conditions: conditions.isReference,
    ...(session.readings.carried && { carried_over: session.readings.carried }),
    instruments: pen.lists.instruments.placeOf(usedData(session)),
    figures: listed(figureRows(session.figures, { ...pen, slug, date }, pen), pen.lists.figures),
    readings: listed(
      rawReadings(session).map((it) => readingRow(it, texts)),
      pen.lists.readings,
    ),
    ...(session.files.length > 0 && { files: session.files.map((it) => fileData(slug, it, pen.site)) }),
    limits: listed(
      session.limits.map((it) => limitRow(it, texts)),
      pen.lists.limits,
    ),
    flags: session.flags.map(({ check, severity, finding, concerns }) => ({
      check,
      severity,
      text: texts.filled(say(finding)),
      concerns,
    })),
    claims: session.claims.map((it) => {
      const { subject, outcome, text } = claimText(it);
      return {
        subject: texts.filled(subject),
        claimed: it.claimed,
        unit: it.unit,
        outcome,
        text: texts.filled(text),
        measured: it.measured?.id ?? null,
        difference: short(it.difference),
      };
    }),
  };
}

/** A file from the bench: which it is by its hash, and where it can be had. */
function fileData(slug: string, file: SessionFile, site: string) {
  const { name, kind, date, field, bytes, sha256 } = file;
  return {
    name,
    kind,
    path: `${date}/${fieldPath(field)}`,
    bytes,
    sha256,
    address: `${site}${fileAddress(slug, file)}`,
  };
}

/** What came out for the panel; beside it what stands there for many panels alike. The sentence is both, one after the other. */
function limitRow(result: LimitResult, texts: TextTable): readonly [LimitEntry, TextRef | null] {
  const words = limitWords(result);
  const found = [...(words.withheld === undefined ? [] : [words.withheld]), ...words.outcome].join(' ');
  return [
    [
      result.id,
      texts.filled(titleOf(words)),
      texts.whole([...words.background, CLOSING].join(' ')),
      result.limit ?? null,
      texts.whole(cautionAddress(HAZARD_CAUTIONS[result.hazard])),
    ],
    found === '' ? null : texts.filled(found),
  ];
}

/** A rank with what its words on the pages say: that a panel is alone, or that what it is ranked by is in doubt. */
function rankData(rank: Rank | undefined, rankedBy: FigureOrGap | undefined, { placeOf }: Pen) {
  if (!rank) return null;
  const { rangeAbsent, panel: _own, tiedWith, ...place } = rank;
  // By their places: of many panels the light of most is tied with that of a hundred others.
  const tied = tiedWith.flatMap((it) => placeOf.get(it) ?? []);
  const absent = rangeAbsent === undefined ? {} : { rangeAbsent: say(rangeAbsent) };
  return {
    ...place,
    tiedWith: tied,
    ...absent,
    alone: isAlone(rank),
    in_doubt: isFigure(rankedBy) && isInDoubt(rankedBy),
  };
}
