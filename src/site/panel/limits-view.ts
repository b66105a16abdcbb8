import type { PanelEntry } from '../../ledger/ledger.ts';
import { isUntimed } from '../../measure/exposure/exposure-time.ts';
import type { LimitResult } from '../../measure/exposure/index.ts';
import { type FigureOrGap, isFigure } from '../../measure/figure.ts';
import { cautionAddress } from '../../words/caution-words.ts';
import { HAZARD_CAUTIONS, type Hazard } from '../../words/limits/hazard-cautions.ts';
import { limitWords } from '../../words/limits/index.ts';
import { CLOSING, type LimitWords } from '../../words/limits/wording.ts';
import { say } from '../../words/say.ts';
import { type ShownFigure, shownFigure } from '../shared/shown-figure.ts';

/** What was held against a limit: one or two figures, and what came out in words. */
export interface LimitRow {
  title: string;
  figures: Array<ShownFigure & { label: string }>;
  words: string[];
}

/** Figures of one hazard. */
export interface LimitGroup {
  id: string;
  title: string;
  /** Where the page of cautions tells of it. */
  caution: string;
  rows: LimitRow[];
  /** The limits, and what was taken for granted, each once. */
  background: string[];
}

/** A panel's figures held against published limits. */
export interface LimitsView {
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
  { id: 'eyes', title: 'Eyes', hazards: ['infrared-share', 'infrared-time', 'retina'] },
  { id: 'skin', title: 'Skin', hazards: ['skin'] },
  { id: 'flicker', title: 'Flicker', hazards: ['flicker', 'pulsing'] },
  {
    id: 'fields',
    title: 'Fields, against reference levels for the public',
    hazards: ['field'],
  },
  {
    id: 'beds',
    title: 'Fields, against a private precautionary guideline for sleeping places',
    hazards: ['precaution'],
  },
  { id: 'sound', title: 'Sound', hazards: ['sound'] },
];

/** A result with its words, made once for a page. */
interface Told {
  result: LimitResult;
  words: LimitWords;
}

/** A panel's current session against published limits; undefined where it has never been on the bench. */
export function limitsView(panel: PanelEntry, currency: string): LimitsView | undefined {
  const { current } = panel;
  if (!current) return undefined;
  return {
    groups: GROUPS.map(({ id, title, hazards }) => {
      const told = current.limits
        .filter((it) => hazards.includes(it.hazard) && !saysNothing(it, current.conditions.distance))
        .map((result): Told => ({ result, words: limitWords(result) }));
      return {
        id: `limits-${id}`,
        title,
        caution: cautionAddress(HAZARD_CAUTIONS[hazards[0]]),
        rows: rowsOf(panel, told, currency),
        background: [...new Set(told.flatMap(({ words }) => words.background))],
      };
    }),
    closing: CLOSING,
  };
}

/** Distances of less than this, of the reading's, lie where the reading does for a reader's eye. Our own choice. */
const BESIDE_READING = 0.05;

/** What is not known a few millimetres nearer than the reading is not worth a row beside that of the reading itself. */
function saysNothing(result: LimitResult, readAt: number): boolean {
  if (isFigure(result.figure) || !('distance' in result) || result.distance === readAt) return false;
  return Math.abs(result.distance - readAt) < BESIDE_READING * readAt;
}

/** Results of one thing stand together: the share and the time at one distance, both lines of one mode. */
function rowsOf(panel: PanelEntry, told: readonly Told[], currency: string): LimitRow[] {
  return [...Map.groupBy(told, ({ words }) => words.subject)].map(([title, own]) => ({
    title,
    figures: own.map(({ result: { figure }, words }) => ({
      // Flags are put on the figures of the panel.
      ...shownFigure(panel, panel.figures.get(figure.metric) ?? figure, figure.metric, currency),
      notes: notesOf(figure),
      label: words.label,
    })),
    words: wordsOf(own),
  }));
}

/** Of a figure's notes the words below tell all but what 1000 s stands for. */
function notesOf(figure: FigureOrGap): string[] {
  return isFigure(figure) && isUntimed(figure) ? [say({ code: 'exposure-time-untimed' })] : [];
}

/**
 * What came out, each thing once. A time to a limit says again what its share has said, and why there is no figure stands
 * in the figure's cell.
 */
function wordsOf(told: readonly Told[]): string[] {
  const own = told.filter(({ result }) => result.hazard !== 'infrared-time');
  return [...new Set(own.flatMap(({ words }) => words.outcome))];
}
