import type { Ledger, PanelEntry } from '../../../ledger/ledger.ts';
import { carriedWords } from '../../../words/carried-words.ts';
import { daggerOf } from '../../../words/flags.ts';
import { fixed, money, showFigure, unitBehind } from '../../../words/format.ts';
import { inInches } from '../../../words/other-unit.ts';
import { panelAddress } from '../../shared/panel-address.ts';
import { type DrawnPanel, drawnPanels, frontierFactors, type LeftOut } from './drawn-panels.ts';
import { markShape } from './mark-shapes.ts';
import {
  type AxisWords,
  type DrawnMark,
  type Offer,
  type PictureLayout,
  pictureLayout,
  type Sheet,
} from './picture-layout.ts';

/** A mark with the panel that it stands for. */
export interface PanelMark extends DrawnMark {
  address: string;
  /** The panel and its figures, to who can't see where it stands. */
  label: string;
  /** Address of its shape within the page. */
  shape: string;
}

/** A size class with the shape of its marks. */
export interface ShapeKey {
  id: string;
  name: string;
  shape: string;
}

/** All panels in one picture: what they cost against what they give. */
export interface PowerPicture {
  title: string;
  about: string;
  layouts: Array<PictureLayout & { panels: PanelMark[] }>;
  keys: ShapeKey[];
  leftOut: LeftOut[];
}

const SHEETS: readonly Sheet[] = [
  {
    name: 'wide',
    width: 720,
    height: 440,
    frame: { left: 40, top: 26, right: 700, bottom: 396 },
    nameSize: 13,
    wordSize: 12,
  },
  {
    name: 'narrow',
    width: 358,
    height: 440,
    frame: { left: 34, top: 26, right: 346, bottom: 396 },
    nameSize: 13,
    wordSize: 12,
  },
];

/** The picture of a ledger's panels; without layouts where there is none to draw. */
export function pictureView(ledger: Ledger): PowerPicture {
  const { guide } = ledger;
  const { drawn, leftOut } = drawnPanels(ledger);
  const shorts = shortNames(drawn.map((it) => it.panel));
  const offers = drawn.map(
    ({ panel, price, power, perWatt }, i): Offer => ({
      price: price.value,
      power: power.value,
      perWatt: perWatt.value,
      interval: power.interval95 ?? undefined,
      short: shorts[i] + (daggerOf(perWatt.flags)?.mark ?? ''),
      isOnFrontier: panel.frontier === 'on',
    }),
  );
  const factors = frontierFactors(offers);
  const order = [...offers.keys()].toSorted(
    (a, b) => (factors[a] ?? 0) - (factors[b] ?? 0) || (offers[a]?.perWatt ?? 0) - (offers[b]?.perWatt ?? 0) || a - b,
  );
  const classes = guide.sizeClasses.filter((it) => drawn.some(({ panel }) => panel.sizeClass === it));
  const shapes = new Map(classes.map((it) => [it, `picture-${guide.sizeClasses.indexOf(it) + 1}`]));
  const named = drawn.map((it) => ({
    address: panelAddress(it.panel.slug),
    label: label(it, guide.currency),
    shape: (it.panel.sizeClass && shapes.get(it.panel.sizeClass)) ?? '',
  }));
  const distance = guide.referenceDistance.value;
  return {
    title: 'Price against optical power',
    about: `Price against the light that reaches a frame of a panel’s size at ${distance} cm (${inInches(distance)}), on scales of equal ratios: up and to the left is more for less.`,
    layouts: (offers.length > 0 ? SHEETS : []).map((sheet) => {
      const layout = pictureLayout(offers, order, sheet, axisWords(guide.currency, sheet.name));
      return { ...layout, panels: layout.marks.flatMap((mark, i) => (named[i] ? [{ ...mark, ...named[i] }] : [])) };
    }),
    keys: classes.map((it) => ({
      id: shapes.get(it) ?? '',
      name: it.name,
      shape: markShape(guide.sizeClasses.indexOf(it)),
    })),
    leftOut,
  };
}

/** The models' names; with the maker's where two of them are alike. */
function shortNames(panels: readonly PanelEntry[]): string[] {
  const count = Map.groupBy(panels, (it) => it.data.model);
  return panels.map((it) => (count.get(it.data.model)?.length === 1 ? it.data.model : it.name));
}

/** "Kelpwright Gannet: €849, 207 W, €4.10 a watt". */
function label({ panel, price, power, perWatt }: DrawnPanel, currency: string): string {
  const [paid, light, each] = [price, power, perWatt].map((it) => showFigure(it, currency));
  const doubt = daggerOf(perWatt.flags) ? '; in doubt' : '';
  const carried = carriedWords(power);
  return `${panel.name}: ${paid?.value}, ${light?.value}${unitBehind(light?.unit ?? '')}, ${each?.value} a watt${doubt}${carried ? `; light ${carried}` : ''}`;
}

/** What stands on axes and lines; a narrow sheet has room for signs, not for words. */
function axisWords(currency: string, sheet: Sheet['name']): AxisWords {
  const amount = (value: number) => money(value, currency, decimalsOfRound(value));
  return {
    price: amount,
    power: (value) => fixed(value, decimalsOfRound(value)),
    perWatt: (value) => amount(value) + (sheet === 'wide' ? ' a watt' : '/W'),
  };
}

/** Decimals that a round number needs: none for 20, two for 0.05; money has two of them or none. */
function decimalsOfRound(value: number): number {
  return Number.isInteger(value) ? 0 : Math.max(0, (String(value).split('.')[1] ?? '').length);
}
