import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { DOUBT_MARK, IMPOSSIBLE_MARK } from '../../words/marks.ts';
import type { SmallPhoto } from '../shared/browser/small-photo.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { type ShownFigure, shownFigure } from '../shared/shown-figure.ts';
import { photoEntry } from '../shared/small-photo.ts';

/** A panel in the list of all of them. */
export interface ListedPanel {
  name: string;
  model: string;
  address: string;
  /** "Torso, measured at 30 cm": its size class, and what sets it apart. */
  about: string;
  /** What a watt of its light costs; its unit stands in the page's head. */
  watt: ShownFigure;
  photo?: SmallPhoto;
  /** For want of a photo, what was measured of it, in a square that the largest panel just fills. */
  outline?: Outline;
}

/** Two rectangles in a square whose side is 1. */
export interface Outline {
  housing: Box | undefined;
  field: Box;
}

interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

export interface ListedMaker {
  id: string;
  /** Ids that it had before, which links may name. */
  formerly: readonly string[];
  name: string;
  panels: ListedPanel[];
}

export interface PanelListView {
  makers: ListedMaker[];
  /** One of them was measured at another distance than the guide's. */
  isFar: boolean;
  /** What the marks beside values mean, as far as there are any. */
  marks: string[];
}

const MARKS: ReadonlyArray<[mark: string, meaning: string]> = [
  [DOUBT_MARK, 'marks a figure in doubt.'],
  [IMPOSSIBLE_MARK, 'marks one that can’t be right.'],
];

/** Every panel of the guide by its maker, withdrawn ones too. */
export function panelListView(ledger: Ledger): PanelListView {
  const panels = [...ledger.panels.values()];
  const { currency } = ledger.guide;
  const largest = Math.max(...panels.flatMap(({ data }) => [data.field, data.housing].flatMap(sides)));
  const makers = Map.groupBy(panels, (it) => it.data.maker);
  const listed = [...makers]
    .map(([id, own]) => ({
      id,
      formerly: own[0]?.maker.formerly ?? [],
      name: own[0]?.maker.name ?? id,
      panels: own.map((it) => listedPanel(it, currency, largest)),
    }))
    .toSorted((a, b) => a.name.localeCompare(b.name, 'en'));
  const used = new Set(listed.flatMap((it) => it.panels.map(({ watt }) => watt.dagger?.mark)));
  return {
    makers: listed,
    isFar: panels.some(({ current }) => current && !current.conditions.isReference),
    marks: MARKS.flatMap(([mark, meaning]) => (used.has(mark) ? [`${mark} ${meaning}`] : [])),
  };
}

function listedPanel(panel: PanelEntry, currency: string, largest: number): ListedPanel {
  const { slug, name, data, sizeClass, current } = panel;
  const watt = shownFigure(panel, panel.figures.get('price-per-watt'), 'price-per-watt', currency);
  const photo = photoEntry(panel);
  const outline = photo.photo ? undefined : outlineOf(panel, largest);
  return {
    name,
    model: data.model,
    address: panelAddress(slug),
    about: [
      sizeClass?.name ?? 'Size not known',
      ...(data.status === 'published' ? [] : [data.status]),
      ...(current && !current.conditions.isReference ? [`measured at ${current.conditions.distance} cm`] : []),
    ].join(', '),
    watt: {
      ...watt,
      ...(watt.shown && { shown: { ...watt.shown, unit: '' } }),
      calculation: `${panelAddress(slug)}${watt.calculation}`,
      flagsAt: `${panelAddress(slug)}#flags`,
    },
    ...photo,
    ...(outline && { outline }),
  };
}

/** A ten-thousandth of the square is less than a hundredth of a pixel. */
const few = (it: number) => Number(it.toFixed(4));

function outlineOf({ data: { field, housing } }: PanelEntry, largest: number): Outline | undefined {
  if (!field) return undefined;
  const box = (it: NonNullable<typeof field>): Box => {
    const [width, height] = [it.width.value / largest, it.height.value / largest];
    return { x: few((1 - width) / 2), y: few((1 - height) / 2), width: few(width), height: few(height) };
  };
  return { housing: housing && box(housing), field: box(field) };
}

const sides = (it: PanelEntry['data']['field']) => (it ? [it.width.value, it.height.value] : []);
