import { acceptedReadings, pointReadings } from '../../content/read/grid-points.ts';
import type { BeyondPlace, Edge } from '../../content/schema/beyond.ts';
import { roomLight } from '../../ledger/beyond-light.ts';
import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { readingText, withSigns } from '../../words/format.ts';

/** A place past an edge on the drawing, cm from the field's upper left corner, and its reading in words. */
export interface DrawnPlace {
  x: number;
  y: number;
  text: string;
  /** Where the text stands, clear of the dot and of its neighbours. */
  textX: number;
  textY: number;
  /** Every reading of the place was rejected. */
  isRejected: boolean;
}

/** The LED field with the places past its edges, to scale; lengths in cm, as the drawing's units. */
export interface BeyondDrawing {
  width: number;
  height: number;
  housing?: { x: number; y: number; width: number; height: number };
  viewBox: string;
  pixelWidth: number;
  pixelHeight: number;
  radius: number;
  typeSize: number;
  /** Straight lines out from the middles of the edges that were read past. */
  rules: Array<{ x1: number; y1: number; x2: number; y2: number }>;
  places: DrawnPlace[];
  description: string;
}

/** One place of the table. */
export interface BeyondRow {
  /** "8 cm past the right edge" */
  place: string;
  /** Readings with the panel on, as written; rejected ones with their reason. */
  on: Array<{ written: string; rejected?: string }>;
  /** With the panel off, and where that was read if not here. */
  off: string;
}

/** What was read past the edges in one session, ready to print. */
export interface BeyondView {
  anchor: string;
  /** Number of places with an accepted reading. */
  count: number;
  rows: BeyondRow[];
  /** Undefined where the LED field was not measured. */
  drawing?: BeyondDrawing;
}

/** Longer side of field and places on the screen, CSS pixels. */
const LARGEST_PX = 400;
/** Size of the type, of a dot, and room for a reading beside the outermost dots, CSS pixels. */
const TYPE_PX = 12;
const DOT_PX = 3.5;
const MARGIN_PX = 34;

/** Which way an edge lies from the middle of the field, on a drawing that runs to the right and down. */
const OUTWARD: Readonly<Record<Edge, readonly [number, number]>> = {
  left: [-1, 0],
  right: [1, 0],
  top: [0, -1],
  bottom: [0, 1],
};

/** Address of the readings past the edges on a panel's calculation page; every session has its own. */
export const beyondAnchor = (session: SessionEntry): string => `past-the-edges-${session.date}`;

/** Readings past the edges of a session; undefined where there are none. */
export function beyondView(panel: PanelEntry, session: SessionEntry): BeyondView | undefined {
  const places = session.readings.beyond;
  if (!places) return undefined;
  const drawing = beyondDrawing(panel, places, session.conditions.distance);
  return {
    anchor: beyondAnchor(session),
    count: places.filter((it) => acceptedReadings(it.on).length > 0).length,
    rows: places.map((place) => ({
      place: placeWords(place),
      on: pointReadings(place.on).map(({ reading, rejected }) => ({
        written: withSigns(reading.written),
        ...(rejected !== undefined && { rejected }),
      })),
      off: offWords(place, places),
    })),
    ...(drawing && { drawing }),
  };
}

const placeWords = ({ edge, past }: BeyondPlace) => `${past.written} past the ${edge} edge`;

function offWords(place: BeyondPlace, places: readonly BeyondPlace[]): string {
  const room = roomLight(place, places);
  if (!room) return 'not read';
  return room.from === place
    ? withSigns(room.reading.written)
    : `${withSigns(room.reading.written)}, read at ${room.from.past.written}`;
}

/** The reading at a place: the mean of those that count, a bound as one. */
function readingWords(place: BeyondPlace): string {
  const accepted = acceptedReadings(place.on);
  if (accepted.length === 0) return 'struck';
  const mean = accepted.reduce((sum, it) => sum + it, 0) / accepted.length;
  const bound = pointReadings(place.on).find((it) => it.rejected === undefined)?.reading.bound;
  return readingText(mean, bound);
}

function beyondDrawing(
  { data: { field, housing } }: PanelEntry,
  readings: readonly BeyondPlace[],
  distance: number,
): BeyondDrawing | undefined {
  if (!field) return undefined;
  const [width, height] = [field.width.value, field.height.value];
  const at = (edge: Edge, past: number) => {
    const [x, y] = OUTWARD[edge];
    return { x: width / 2 + x * (width / 2 + past), y: height / 2 + y * (height / 2 + past) };
  };
  const spots = readings.map(({ edge, past }) => at(edge, past.value));
  const outer = housing && {
    x: (width - housing.width.value) / 2,
    y: (height - housing.height.value) / 2,
    width: housing.width.value,
    height: housing.height.value,
  };
  const corners = [
    { x: 0, y: 0 },
    { x: width, y: height },
    ...(outer ? [outer, { x: outer.x + outer.width, y: outer.y + outer.height }] : []),
    ...spots,
  ];
  const [left, right] = ends(corners.map((it) => it.x));
  const [top, bottom] = ends(corners.map((it) => it.y));
  const scale = LARGEST_PX / Math.max(right - left, bottom - top);
  const cm = (pixels: number) => pixels / scale;
  const margin = cm(MARGIN_PX);
  const whole = { width: right - left + 2 * margin, height: bottom - top + 2 * margin };
  return {
    width,
    height,
    ...(outer && { housing: rounded(outer) }),
    viewBox: [left - margin, top - margin, whole.width, whole.height].map(hundredths).join(' '),
    pixelWidth: Math.round(scale * whole.width),
    pixelHeight: Math.round(scale * whole.height),
    radius: hundredths(cm(DOT_PX)),
    typeSize: hundredths(cm(TYPE_PX)),
    rules: [...new Set(readings.map((it) => it.edge))].map((edge) => {
      const farthest = Math.max(...readings.filter((it) => it.edge === edge).map((it) => it.past.value));
      const [from, to] = [at(edge, 0), at(edge, farthest)];
      return rounded({ x1: from.x, y1: from.y, x2: to.x, y2: to.y });
    }),
    places: readings.map((place) => {
      const { x, y } = at(place.edge, place.past.value);
      const isSide = OUTWARD[place.edge][0] !== 0;
      return {
        ...rounded({
          x,
          y,
          textX: isSide ? x : x + cm(DOT_PX + 1.4 * TYPE_PX),
          textY: isSide ? y - cm(DOT_PX + 0.8 * TYPE_PX) : y,
        }),
        text: readingWords(place),
        isRejected: acceptedReadings(place.on).length === 0,
      };
    }),
    description: `LED field ${width} by ${height} cm${outer ? ' with its housing' : ''}, to scale with the places past its edges, ${distance} cm from the LED plane; readings with the panel on, mW/cm²`,
  };
}

const ends = (values: readonly number[]): [number, number] => [Math.min(...values), Math.max(...values)];
const hundredths = (value: number) => Number(value.toFixed(2));

function rounded<T extends Record<string, number>>(lengths: T): T {
  return Object.fromEntries(Object.entries(lengths).map(([key, value]) => [key, hundredths(value)])) as T;
}
