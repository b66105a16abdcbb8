import type { PanelEntry } from '../../ledger/ledger.ts';
import { cautiousEnd, roundedTo } from '../../measure/exposure/cautious-end.ts';
import { isUntimed } from '../../measure/exposure/exposure-time.ts';
import type { LimitResult } from '../../measure/exposure/index.ts';
import { type Figure, type FigureOrGap, isFigure } from '../../measure/figure.ts';
import type { MetricId } from '../../measure/metrics.ts';
import { number } from '../../measure/numbers.ts';
import { capital, hertzWords } from '../../words/limits/amounts.ts';
import { guidelineWords, heldName, type LimitCell, limitCell, publishedBy } from '../../words/limits/row-words.ts';
import { type ShownFigure, shownFigure } from '../shared/shown-figure.ts';
import type { Share } from './share-bar.ts';
import { sharedDay, undated } from './shared-day.ts';

/** Where something was read: a length, or as the tester wrote it. */
export type Place = { cm: number } | { written: string };

/** A line of the table: what was read, the limit, and the share of it. */
export interface LimitRow {
  /** The old section's address, on the first line of what it told. */
  id?: string;
  /** "Infrared at the eye" */
  name: string;
  place?: Place;
  /** From which day all of the line is, where it was not read again. */
  carried?: string;
  /** What was read; or that it was not read there, and what is known all the same. */
  read: { figure?: ShownFigure; text?: string };
  /** Undefined where it is held against none. */
  limit?: LimitCell & { by?: string };
  /** What is drawn; left out where no share is known. */
  share?: Share;
  /** In the place of the bar: what the guideline or the pulsing is called. */
  words?: string;
  /** The share, and what stands under it, smaller: the time to the limit, the other end. */
  figures: Array<ShownFigure & { behind?: string }>;
}

/** The line of a result that has a figure, with those of the other results that say more of the same thing. */
export function limitRow(
  panel: PanelEntry,
  result: LimitResult,
  others: readonly LimitResult[],
  currency: string,
): LimitRow {
  const limit = limitCell(result);
  const by = publishedBy(result);
  const place = placeOf(result);
  const share = shareOf(result, others);
  const words = wordsOf(result);
  const isRange = 'there' in result && result.there?.kind === 'range';
  const figure = (it: FigureOrGap, behind?: string) => {
    // Flags are put on the figures of the panel.
    const isNoTime = isFigure(it) && isUntimed(it);
    const isMultiple = isFigure(it) && it.unit === '1';
    const { absent, ...shown } = shownFigure(panel, panel.figures.get(it.metric) ?? it, it.metric, currency);
    return {
      ...shown,
      // Multiples have no unit, and are said to be some.
      ...(shown.shown && isMultiple && { shown: { ...shown.shown, unit: 'times' } }),
      // That it was not read there stands in its line, and what is no time has no uncertainty.
      ...(absent !== undefined && !isRange && !isNoTime && { absent }),
      notes: [],
      ...(behind && { behind: isNoTime ? 'not limited by this standard' : behind }),
    };
  };
  const read = readOf(panel, result, currency);
  const figures = [
    figure(result.figure),
    ...others.filter(({ figure: it }) => isFigure(it)).map((it) => figure(it.figure, behindOf(it))),
  ];
  const carried = sharedDay([read.figure, ...figures]);
  return {
    name: capital(heldName(result)),
    ...(place && { place }),
    ...(carried && { carried }),
    read: { ...read, ...(read.figure && { figure: undated(read.figure, carried) }) },
    ...(limit && { limit: { ...limit, ...(by && result.hazard !== 'precaution' && { by }) } }),
    ...(share && { share }),
    ...(words && { words }),
    figures: figures.map((it) => undated(it, carried)),
  };
}

/** What a figure under the share is. */
function behindOf(result: LimitResult): string {
  if (result.hazard === 'infrared-time') return 'until it is used up';
  if (result.hazard === 'retina') return 'if one emitter gave all';
  const mild = result.hazard === 'field' ? result.levels.mild?.frequency : undefined;
  return mild?.from === 'mains' ? `at ${hertzWords(mild.hertz)}` : '';
}

function placeOf(result: LimitResult): Place | undefined {
  switch (result.hazard) {
    case 'infrared-share':
    case 'infrared-time':
      return { cm: result.distance };
    case 'field':
    case 'precaution':
    case 'sound':
      return { written: result.reading.distance ?? 'distance not recorded' };
    default:
      return undefined;
  }
}

/** The reading that a result rests on. */
function readOf(panel: PanelEntry, result: LimitResult, currency: string): LimitRow['read'] {
  const figure = (metric: MetricId) => shownFigure(panel, panel.figures.get(metric), metric, currency);
  switch (result.hazard) {
    case 'infrared-share':
    case 'infrared-time':
      if (result.there?.kind === 'range')
        return { text: `not read there, ${number(roundedTo(result.there.low, 'low'))} % at least` };
      if (result.there) return { text: 'read before the middle' };
      return { figure: figure(result.isFromSpectrum ? 'infrared-sum' : 'peak-irradiance-near-infrared') };
    case 'skin':
      return { figure: figure('peak-irradiance-combined') };
    case 'flicker':
    case 'pulsing':
      return {
        figure: figure(`flicker-${result.mode}`),
        ...(isFigure(result.frequency) && { text: `at ${hertzWords(result.frequency.value)}` }),
      };
    case 'field':
    case 'precaution':
      return { figure: figure(`${result.reading.kind}-field-on`) };
    case 'sound':
      return { figure: figure('sound-on'), text: 'with the room' };
    case 'retina':
      if (!isFigure(result.figure)) return {};
      return { figure: figure(result.mode === 'combined' ? 'peak-irradiance-combined' : 'infrared-sum') };
  }
}

function wordsOf(result: LimitResult): string | undefined {
  if (result.hazard === 'precaution') return guidelineWords(result);
  if (result.hazard === 'pulsing')
    return result.pulsing === 'slow' ? 'slow modulation' : 'looks like deliberate pulsing';
  return undefined;
}

/** The least and the most that the share may be, %, over both ends where two are told. */
function shareOf(result: LimitResult, others: readonly LimitResult[]): Share | undefined {
  if (!isFigure(result.figure)) return undefined;
  const [least, most] = endsOf(result.figure);
  switch (result.hazard) {
    case 'infrared-share':
      return result.there?.kind === 'range' ? { least: result.there.low, most } : { least, most };
    case 'skin':
      return { least, most };
    case 'retina': {
      const one = others.find(({ figure }) => isFigure(figure))?.figure;
      return {
        least: result.figure.interval95?.[0] ?? least,
        most: isFigure(one) ? (cautiousEnd(one, 'high') ?? most) : most,
      };
    }
    case 'field': {
      const mild = others.find(({ figure }) => isFigure(figure))?.figure;
      return isFigure(mild) ? { least: endsOf(mild)[0], most } : { least, most };
    }
    case 'flicker':
      return { least: 100 * least, most: 100 * most };
    default:
      return undefined;
  }
}

/** The ends of a figure's interval; a bound from below has no other end, and goes beyond every scale. */
function endsOf(figure: Figure): [least: number, most: number] {
  if (figure.bound === 'below') return [0, figure.value];
  if (figure.bound === 'above') return [figure.value, Number.POSITIVE_INFINITY];
  const [low, high] = figure.interval95 ?? [figure.value, figure.value];
  return [low, high];
}
