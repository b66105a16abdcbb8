import type { PanelEntry } from '../../ledger/ledger.ts';
import { UNTIMED_NOTE } from '../../measure/exposure/exposure-time.ts';
import { CLOSING, type LimitResult } from '../../measure/exposure/index.ts';
import { isFigure } from '../../measure/figure.ts';
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

const GROUPS: ReadonlyArray<{ id: string; title: string; holds: (id: string) => boolean }> = [
  { id: 'eyes', title: 'Eyes', holds: (id) => id.startsWith('infrared-') || id === 'retinal-hazard' },
  { id: 'skin', title: 'Skin', holds: (id) => id.startsWith('skin-') },
  { id: 'flicker', title: 'Flicker', holds: (id) => id.startsWith('flicker-') || id.startsWith('pulsing-') },
  {
    id: 'fields',
    title: 'Fields, against reference levels for the public',
    holds: (id) => id.includes('-field-share'),
  },
  {
    id: 'beds',
    title: 'Fields, against a private precautionary guideline for sleeping places',
    holds: (id) => id.endsWith('-field-precaution'),
  },
  { id: 'sound', title: 'Sound', holds: (id) => id.startsWith('sound-') },
];

/** A panel's current session against published limits; undefined where it has never been on the bench. */
export function limitsView(panel: PanelEntry, currency: string): LimitsView | undefined {
  const { current } = panel;
  if (!current) return undefined;
  return {
    groups: GROUPS.map(({ id, title, holds }) => {
      const results = current.limits.filter((it) => holds(it.id) && !saysNothing(it, current.conditions.distance));
      const background = new Set(results.flatMap((it) => it.background));
      background.delete(CLOSING);
      return {
        id: `limits-${id}`,
        title,
        caution: `/cautions/#${results[0]?.caution}`,
        rows: rowsOf(panel, results, currency),
        background: [...background],
      };
    }),
    closing: CLOSING,
  };
}

/** Distances of less than this, of the reading's, lie where the reading does for a reader's eye. Our own choice. */
const BESIDE_READING = 0.05;

/** What is not known a few millimetres nearer than the reading is not worth a row beside that of the reading itself. */
function saysNothing({ figure, distance }: LimitResult, readAt: number): boolean {
  if (isFigure(figure) || distance === undefined || distance === readAt) return false;
  return Math.abs(distance - readAt) < BESIDE_READING * readAt;
}

/** Results of one thing stand together: the share and the time at one distance, both lines of one mode. */
function rowsOf(panel: PanelEntry, results: readonly LimitResult[], currency: string): LimitRow[] {
  const things = Map.groupBy(results, (it) => it.title.split(':')[0] as string);
  return [...things].map(([title, own]) => ({
    title,
    // Flags are put on the figures of the panel. Of the notes the words below tell all but what 1000 s stands for.
    figures: own.map(({ figure }) => {
      const shown = shownFigure(panel, panel.figures.get(figure.metric) ?? figure, figure.metric, currency);
      return {
        ...shown,
        notes: shown.notes.filter((it) => it === UNTIMED_NOTE),
        label: LABELS[figure.metric] ?? labelOf(shown.name),
      };
    }),
    words: wordsOf(own),
  }));
}

/** Where there is no share or multiple of a limit, what stands in its place. */
const LABELS: Readonly<Record<string, string>> = {
  'retinal-hazard': 'no share of a limit',
  'sound-of-panel': 'no limit is held against it',
};

/** "Flicker: multiple of the low-risk line, red alone" to what the row's head does not say. */
function labelOf(name: string): string {
  return (name.split(': ')[1] ?? name).replace(/, (both channels|red alone|near-infrared alone)$/, '');
}

/** Opens the sentence of a gap that names the reason, which its cell does already. */
const SAYS_THE_GAP = /^No (share|time|multiple|level) /;

/** What came out, each thing once. A time to a limit says again what its share has said. */
function wordsOf(results: readonly LimitResult[]): string[] {
  const told = results.filter((it) => !it.id.startsWith('infrared-stay-'));
  return [...new Set(told.flatMap((it) => it.outcome.filter((one) => isFigure(it.figure) || !SAYS_THE_GAP.test(one))))];
}
