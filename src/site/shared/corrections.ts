import type { CorrectedFigure, CorrectionEntry } from '../../ledger/corrections.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { type FigureOrGap, isFigure } from '../../measure/figure.ts';
import { methodById } from '../../measure/methods.ts';
import { metricById } from '../../measure/metrics.ts';
import { correctedOn, correctedText } from '../../words/correction-words.ts';
import { showDate } from '../../words/format.ts';
import { nameOf } from '../../words/names.ts';
import { panelAddress } from './panel-address.ts';

/** Where a correction stands in the public list. */
export const correctionAddress = ({ id }: Pick<CorrectionEntry, 'id'>) => `/changes/#${id}`;

/** What stands beside a figure that was corrected. */
export interface CorrectedMark {
  /** `corrected 6 Oct 2026` */
  text: string;
  /** The correction in the public list. */
  address: string;
  /** `82.1 W → 92.1 W` */
  moved: string;
  why: string;
}

/**
 * The newest correction of a figure, of the session that it is from: a figure that was not read again carries the
 * correction of its readings' day along. Nothing for one that was never corrected.
 */
export function correctedMark(
  corrections: readonly CorrectionEntry[],
  it: FigureOrGap | undefined,
  currency: string,
): CorrectedMark | undefined {
  if (corrections.length === 0 || !isFigure(it)) return undefined;
  const ids = new Set([it.id, ...(it.carriedOver?.from ?? []).map((day) => idOn(it.id, day))]);
  for (const entry of corrections) {
    const figure = entry.figures.find(({ id }) => ids.has(id));
    if (!figure) continue;
    const moved = correctedText(figure, metricById(figure.metric).unit, currency);
    return { text: correctedOn(entry.date), address: correctionAddress(entry), moved, why: entry.why };
  }
  return undefined;
}

/** `<panel>/<session>/<metric>` of another session. */
function idOn(id: string, day: string): string {
  const [panel, , metric] = id.split('/');
  return `${panel}/${day}/${metric}`;
}

/** A correction as the public list and a panel's page tell it. */
export interface CorrectionWords {
  id: string;
  date: string;
  shownDate: string;
  /** Whose it is; left out for a method. */
  panelName?: string;
  panelAddress?: string;
  /** What was wrong, with the way to it: `Mains draw, both channels`. */
  subject: string;
  address: string;
  /** `82.1 W → 92.1 W` */
  moved: string;
  /** What moved with it. */
  also: Array<{ name: string; moved: string; address: string }>;
  why: string;
  /** Day of the session, in words. */
  session?: string;
}

/** A correction in words. */
export function correctionWords(
  entry: CorrectionEntry,
  { guide: { currency }, panels }: Pick<Ledger, 'guide' | 'panels'>,
): CorrectionWords {
  const { id, date, panel, session, figures, method, version, why } = entry;
  const [first, ...rest] = figures;
  const unitOf = ({ metric }: CorrectedFigure) => metricById(metric).unit;
  const at = ({ metric }: CorrectedFigure) => `${panelAddress(panel ?? '')}methodology/#${metric}-${session ?? ''}`;
  const name = panel === undefined ? undefined : panels.get(panel)?.name;
  return {
    id,
    date,
    shownDate: showDate(date),
    ...(panel !== undefined && name !== undefined && { panelName: name, panelAddress: panelAddress(panel) }),
    subject: subjectOf(entry),
    address:
      first && session !== undefined
        ? at(first)
        : panel === undefined
          ? methodAt(method, version)
          : panelAddress(panel),
    moved: first
      ? correctedText(first, unitOf(first), currency)
      : // A text has no unit.
        correctedText(entry, '1', currency),
    also: rest.map((it) => ({
      name: capital(nameOf(it.metric)),
      moved: correctedText(it, unitOf(it), currency),
      address: session === undefined ? panelAddress(panel ?? '') : at(it),
    })),
    why,
    ...(session !== undefined && { session: showDate(session) }),
  };
}

function subjectOf({ figures: [first], method }: CorrectionEntry): string {
  if (first) return capital(nameOf(first.metric));
  return method === undefined ? 'What the page said' : methodName(method);
}

/** The rule of the content holds that there is such a method. */
const methodName = (id: string) => methodById(id).name;

const methodAt = (method = '', version?: number) =>
  `/methods/${method}/${version === undefined ? '' : `#version-${version}`}`;

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
