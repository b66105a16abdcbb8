import type { PanelEntry } from '../../ledger/ledger.ts';
import { cautiousEnd } from '../../measure/exposure/cautious-end.ts';
import type { LimitResult } from '../../measure/exposure/index.ts';
import { isRetinaOver } from '../../measure/exposure/retina.ts';
import { isFigure } from '../../measure/figure.ts';
import { sameDistance } from '../../measure/irradiance/same-distance.ts';
import { methodById } from '../../measure/methods.ts';
import { metricById } from '../../measure/metrics.ts';
import type { Mode } from '../../measure/modes.ts';
import { isCode } from '../../measure/statement.ts';
import { cautionAddress } from '../../words/caution-words.ts';
import { HAZARD_CAUTIONS, type Hazard } from '../../words/limits/hazard-cautions.ts';
import { limitWords } from '../../words/limits/index.ts';
import { SPECTRAL_UNKNOWN } from '../../words/limits/infrared-phrases.ts';
import { PULSING_CAUTION } from '../../words/limits/pulsing.ts';
import { RETINA_BOUNDS } from '../../words/limits/retina.ts';
import { heldName, overSentence, unheldNames } from '../../words/limits/row-words.ts';
import { CLOSING } from '../../words/limits/wording.ts';
import { say } from '../../words/say.ts';
import { type ShownFigure, shownFigure } from '../shared/shown-figure.ts';
import { type LimitRow, limitRow } from './limit-rows.ts';

/** What there is to read of one hazard, folded: what came out, and what it rests on. */
export interface LimitGroup {
  title: string;
  /** Where the page of cautions tells of it. */
  caution: string;
  outcomes: Array<{ title: string; words: string }>;
  /** What the figures were taken from, where that hangs on this panel's readings. */
  background: string[];
  /** Where the limits with their sources stand, and what is taken for granted with every panel. */
  methods: Array<{ name: string; address: string }>;
}

/** What has no share, with the one reason that all of it has. */
export interface Unheld {
  /** Addresses of old sections that have nothing else to stand on. */
  ids: string[];
  what: string;
  reason: string;
}

/** A panel's figures held against published limits. */
export interface LimitsView {
  /** What is over its limit at the cautious end; undefined where nothing is. */
  over?: string;
  rows: LimitRow[];
  /** Beside a private guideline, which is no limit. */
  beds: LimitRow[];
  unheld: Unheld[];
  /** The panel's sound without the room's, which is held against no limit and stands with the fields. */
  sound: ShownFigure;
  /** What has to be known of figures that stand here. */
  notes: string[];
  groups: LimitGroup[];
  /** What none of it is. */
  closing: string;
}

interface Group {
  id: string;
  title: string;
  /** All of one caution. */
  hazards: readonly [Hazard, ...Hazard[]];
}

const GROUPS: readonly Group[] = [
  { id: 'limits-eyes', title: 'Eyes', hazards: ['infrared-share', 'infrared-time', 'retina'] },
  { id: 'limits-skin', title: 'Skin', hazards: ['skin'] },
  { id: 'limits-flicker', title: 'Flicker', hazards: ['flicker', 'pulsing'] },
  { id: 'limits-fields', title: 'Fields, reference levels for the public', hazards: ['field'] },
  { id: 'limits-beds', title: 'Fields, guideline for sleeping places', hazards: ['precaution'] },
  { id: 'limits-sound', title: 'Sound', hazards: ['sound'] },
];

/** A panel's current session against published limits; undefined where it has never been on the bench. */
export function limitsView(panel: PanelEntry, currency: string): LimitsView | undefined {
  const { current } = panel;
  if (!current) return undefined;
  const { limits } = current;
  const told = limits.filter((it) => !saysNothing(it, limits, current.conditions.distance));
  const rowsOf = (own: readonly LimitResult[]) =>
    // The share and the time at one distance, both ends of one field.
    [
      ...Map.groupBy(
        own.filter((it) => isFigure(it.figure)),
        rowKey,
      ).values(),
    ].map(([first, ...others]) => limitRow(panel, first as LimitResult, others, currency));
  const unheld = unheldOf(told.filter((it) => !isFigure(it.figure) && it.hazard !== 'sound'));
  const grouped = GROUPS.map((group) => {
    const own = told.filter((it) => group.hazards.includes(it.hazard));
    const rows = group.id === 'limits-sound' ? [] : rowsOf(own);
    if (rows[0]) rows[0].id = group.id;
    else unheld.find((it) => own.some((one) => it.results.includes(one)))?.ids.push(group.id);
    return { ...group, own, rows };
  });
  const over = told.flatMap(overOf);
  const said = new Set<string>();
  const rows = grouped.filter((it) => it.id !== 'limits-beds').flatMap((it) => it.rows);
  return {
    ...(over.length > 0 && { over: overSentence(over) }),
    rows: rows.map((row, i) => withoutRepeats(row, rows[i - 1])),
    beds: grouped.filter((it) => it.id === 'limits-beds').flatMap((it) => it.rows),
    unheld: unheld.map(({ results: _, ...it }) => it),
    sound: shownFigure(panel, panel.figures.get('sound-of-panel'), 'sound-of-panel', currency),
    notes: notesOf(told),
    groups: grouped.map(({ title, hazards, own }) => ({
      title,
      caution: cautionAddress(HAZARD_CAUTIONS[hazards[0]]),
      // Limits are named where there is no share of them too.
      ...groupWords(
        limits.filter((it) => own.includes(it) || (hazards.includes(it.hazard) && !('distance' in it))),
        said,
      ),
    })),
    closing: CLOSING,
  };
}

/** A limit's remark is said where the limit comes first. */
function withoutRepeats(row: LimitRow, before: LimitRow | undefined): LimitRow {
  if (!row.limit || !before?.limit || row.name !== before.name || row.limit.note !== before.limit.note) return row;
  const { note: _, by: __, ...limit } = row.limit;
  return { ...row, limit };
}

/** Distances of less than this, of the reading's, lie where the reading does for a reader's eye. Our own choice. */
const BESIDE_READING = 0.05;

/**
 * True for what another line says already: what is not known a few millimetres nearer than the reading, the same distance
 * a second time, a share at the mains' frequency where the meter showed another, and the nearer end of the lines of flicker
 * where there is none farther up.
 */
function saysNothing(result: LimitResult, all: readonly LimitResult[], readAt: number): boolean {
  if (isFigure(result.figure) && !('distance' in result)) return false;
  if (result.hazard === 'field') return result.end === 'mild' && isFigure(result.strict);
  if (result.hazard === 'flicker') return result.line === 'lowRisk' && all.some((it) => hasNoLine(it, result.mode));
  if (!('distance' in result)) return false;
  const first = all.find((it) => it.hazard === result.hazard);
  if (first === result) return false;
  if (sameDistance(result.distance, readAt)) return true;
  return !isFigure(result.figure) && Math.abs(result.distance - readAt) < BESIDE_READING * readAt;
}

/** The standard has not even the line that goes farthest at the frequency of a mode. */
const hasNoLine = (it: LimitResult, mode: Mode) =>
  it.hazard === 'flicker' &&
  it.mode === mode &&
  it.line === 'noEffect' &&
  !isFigure(it.figure) &&
  isCode(it.figure.reason, 'flicker-no-line-above');

/** Results of one thing stand in one line. */
function rowKey(result: LimitResult): string {
  if ('distance' in result) return `${heldName(result)} ${result.distance}`;
  if (result.hazard === 'retina') return `${result.hazard} ${result.mode}`;
  return result.hazard === 'field' ? `${result.hazard} ${result.reading.kind}` : result.id;
}

/** What has no figure, by its reason: one sentence for all that has the same. */
function unheldOf(results: readonly LimitResult[]): Array<Unheld & { results: readonly LimitResult[] }> {
  const reasonOf = ({ figure }: LimitResult) => (isFigure(figure) ? '' : say(figure.reason));
  return [...Map.groupBy(results, reasonOf)].map(([reason, own]) => ({
    ids: [],
    what: unheldNames(own),
    reason,
    results: own,
  }));
}

/** A result that is over its limit at the cautious end, with how many times; undefined where that has no end. */
function overOf(result: LimitResult): Array<readonly [string, number | undefined]> {
  const { hazard, figure } = result;
  if (result.hazard === 'retina') return isRetinaOver(result) ? [[heldName(result), undefined]] : [];
  const perLimit = hazard === 'flicker' ? 1 : 100;
  if (!isFigure(figure) || !['infrared-share', 'skin', 'flicker', 'field'].includes(hazard)) return [];
  const end = cautiousEnd(figure, 'high');
  if (end === undefined) return [[heldName(result), undefined]];
  return end > perLimit ? [[heldName(result), end / perLimit]] : [];
}

/** What stays open beside the table, since it is of what stands in it. */
function notesOf(told: readonly LimitResult[]): string[] {
  return [
    ...new Set(
      told.flatMap((it) => {
        if (!isFigure(it.figure)) return [];
        if (it.hazard === 'infrared-share') return it.isSpectralErrorKnown ? [] : [SPECTRAL_UNKNOWN];
        if (it.hazard === 'retina') return [RETINA_BOUNDS];
        if (it.hazard === 'pulsing') return [PULSING_CAUTION];
        const step = it.figure.notes.find((note) => isCode(note, 'flicker-near-step'));
        return step ? [`${say(step)}.`] : [];
      }),
    ),
  ];
}

/** A range between readings, whose ends and whose reason are all of its line. */
const isRange = ({ hazard, figure }: LimitResult) =>
  hazard === 'infrared-share' && isFigure(figure) && figure.bound !== undefined;

/**
 * What came out and what it rests on, each thing once. A time to a limit says again what its share has said, a range what
 * its line has, and why there is no figure stands beside the table. What is so for every panel, its method's page says.
 *
 * @param said sentences of the groups before, by their titles: a field's reading is held against two publications
 */
function groupWords(
  own: readonly LimitResult[],
  said: Set<string>,
): Pick<LimitGroup, 'outcomes' | 'background' | 'methods'> {
  const told = own.map((result) => ({ result, words: limitWords(result) }));
  const isSaid = ({ result }: (typeof told)[number]) => result.hazard !== 'infrared-time' && !isRange(result);
  const bySubject = Map.groupBy(told.filter(isSaid), ({ words }) => words.subject);
  return {
    outcomes: [...bySubject].flatMap(([title, all]) => {
      const sentences = [...new Set(all.flatMap((it) => it.words.beside))];
      const words = sentences.filter((it) => !said.has(`${title} ${it}`)).join(' ');
      for (const it of sentences) said.add(`${title} ${it}`);
      return words === '' ? [] : [{ title, words }];
    }),
    background: [...new Set(told.flatMap(({ words }) => words.own))],
    methods: [...new Set(own.map((it) => metricById(it.figure.metric).method))].map((id) => ({
      name: methodById(id).name,
      address: `/methods/${id}/`,
    })),
  };
}
