import { madeOf } from '../../ledger/files/file-maker.ts';
import type { WallPhotoView } from '../../ledger/files/wall-photo.ts';
import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { at } from '../../measure/at.ts';
import type { MetricId } from '../../measure/metrics.ts';
import type { Cells } from '../../measure/wall/evenness.ts';
import { fixed } from '../../words/format.ts';
import { pixels } from '../shared/browser/plot.ts';
import { type ShownFigure, shownFigure } from '../shared/shown-figure.ts';
import { wallAddresses } from './wall-addresses.ts';
import { hexOf, STEP_PERCENT, WALL_COLOURS } from './wall-scale.ts';

/** What a page shows of a photo of the wall. */
export interface WallView {
  figures: Record<'lowest' | 'variation' | 'drop' | 'dots', ShownFigure>;
  /** `50 × 70 cm` */
  size: string;
  distance: string;
  /** Sides of both pictures, CSS pixels, in the wall's own proportions. */
  shown: { width: number; height: number };
  photo: { address: string; alt: string };
  map: { address: string; alt: string; marks: MapMarks | undefined };
  scale: Array<{ colour: string; x: number; text: string }>;
  /** Each channel, for the fold. */
  signals: Array<{ name: string; lowest: string; variation: string; drop: string }>;
  /** `30 × 35 squares of 2 cm` */
  squares: string;
}

/** Where the largest fall lies, in the pixels of the map. */
interface MapMarks {
  bright: { x: number; y: number };
  dim: { x: number; y: number };
}

/** Longest side of the pictures on the page, CSS pixels; on a phone two of them stand side by side. */
const LONGEST = 380;
const WIDEST = 260;
const SIGNALS = { luminance: 'Luminance', red: 'Red', green: 'Green', blue: 'Blue' } as const;

/** Undefined where the session has no photo of the wall. */
export function wallView(panel: PanelEntry, session: SessionEntry, currency: string): WallView | undefined {
  const view = madeOf(session.made, 'wallPhoto')?.view;
  const file = session.files.find((it) => it.kind === 'wallPhoto');
  if (!view || !file) return undefined;
  const figure = (metric: MetricId) => shownFigure(panel, session.figures.get(metric), metric, currency, session);
  const { light, cells } = view;
  const addresses = wallAddresses(panel.slug, file);
  const factor = Math.min(LONGEST / Math.max(light.width, light.height), WIDEST / light.width);
  const shown = { width: Math.round(factor * light.width), height: Math.round(factor * light.height) };
  const size = `${length(light.width)} × ${length(light.height)} cm`;
  return {
    figures: {
      lowest: figure('wall-lowest-to-mean'),
      variation: figure('wall-variation'),
      drop: figure('wall-hand-drop'),
      dots: figure('wall-dot-pattern'),
    },
    ...{ size, shown, distance: `${length(view.distance)} cm` },
    photo: { address: addresses.photo, alt: `The wall that the panel lights, ${size}, straightened from the photo` },
    map: { address: addresses.map, alt: mapWords(view, size), marks: marksOf(view, factor) },
    scale: scaleOf(),
    signals: view.signals.map(({ signal, evenness }) => ({
      name: SIGNALS[signal],
      lowest: percent(evenness.lowestToMean),
      variation: percent(evenness.variation),
      drop: percent(evenness.drop.share),
    })),
    squares: cells ? `${cells.columns} × ${cells.rows} squares of about ${length(cells.across)} cm` : '',
  };
}

function scaleOf(): WallView['scale'] {
  return WALL_COLOURS.map((colour, i) => ({
    colour: hexOf(colour),
    x: 26 * i,
    text: i % 2 === 0 ? `${STEP_PERCENT * i}` : '',
  }));
}

function marksOf({ signals }: WallPhotoView, factor: number): MapMarks | undefined {
  const drop = signals[0]?.evenness.drop;
  if (!drop) return undefined;
  const place = ([x, y]: readonly [number, number]) => ({ x: pixels(factor * x), y: pixels(factor * y) });
  return { bright: place(drop.bright), dim: place(drop.dim) };
}

/** What the map shows, in numbers. */
function mapWords({ cells, signals }: WallPhotoView, size: string): string {
  const evenness = signals[0]?.evenness;
  if (!cells || !evenness) return `Map of the light on ${size} of wall`;
  const { drop } = evenness;
  const brightest = Math.max(...cells.means);
  const dimmest = Math.min(...cells.means);
  return `Map of the light on ${size} of wall: brightest ${where(cells, brightest)}, ${percent(brightest / evenness.mean)} of the mean; dimmest ${where(cells, dimmest)}, ${percent(dimmest / evenness.mean)}. Within a hand’s width it falls most from ${length(drop.bright[0])} cm across and ${length(drop.bright[1])} cm down to ${length(drop.dim[0])} and ${length(drop.dim[1])} cm: by ${percent(drop.share)}.`;
}

const DOWN = ['at the top', 'in the middle', 'at the bottom'] as const;
const ACROSS = [' left', '', ' right'] as const;

/** Where a square lies, by thirds of the wall. */
function where({ columns, rows, means }: Cells, value: number): string {
  const place = means.indexOf(value);
  const third = (at: number, of: number) => Math.min(2, Math.floor((3 * (at + 0.5)) / of));
  const [down, across] = [third(Math.floor(place / columns), rows), third(place % columns, columns)];
  if (down === 1 && across !== 1) return across === 0 ? 'at the left' : 'at the right';
  return `${at(DOWN, down)}${at(ACROSS, across)}`;
}

const percent = (share: number) => `${fixed(100 * share, 0)} %`;
const length = (cm: number) => fixed(cm, Number.isInteger(cm) ? 0 : 1);
