import { medianSorted } from 'simple-statistics';
import type { Content } from '../content/read/content.ts';
import type { InstrumentKind } from '../content/schema/instrument.ts';
import { quantityOf } from '../content/schema/instrument.ts';
import { instrumentUnit } from '../content/schema/instrument-units.ts';
import type { Panel } from '../content/schema/panel.ts';
import type { Session } from '../content/schema/session.ts';
import { at } from '../measure/at.ts';
import { type Facts, FIELDS, type FieldKind, type InstrumentUse, type SetDistance } from '../measure/checks/index.ts';
import type { FigureMap } from '../measure/figure.ts';
import { isFigure } from '../measure/figure.ts';
import type { MetricId } from '../measure/metrics.ts';
import { CHANNELS, MODES } from '../measure/modes.ts';

const each = <const Prefix extends string, const Suffix extends string>(prefix: Prefix, suffixes: readonly Suffix[]) =>
  suffixes.map((it) => `${prefix}-${it}` as const);

/** Metrics that are read off each kind of instrument. */
const READ: ReadonlyArray<readonly [InstrumentKind, readonly MetricId[]]> = [
  ['irradiance', [...each('peak-irradiance', MODES), 'mean-irradiance']],
  ['spectrum', each('wavelength', CHANNELS)],
  ['mains', each('mains-draw', [...MODES, 'standby'])],
  ['magnetic', each('magnetic-field', ['on', 'off'])],
  ['electric', each('electric-field', ['on', 'off'])],
  ['radio', each('radio-field', ['on', 'off'])],
  ['sound', each('sound', ['on', 'off'])],
  ['flicker', each('flicker', MODES)],
];

/** Figures of a session that are read straight off an instrument of a kind. */
export function metricsReadBy(kind: InstrumentKind, figures: FigureMap): MetricId[] {
  return (READ.find(([it]) => it === kind)?.[1] ?? []).filter((metric) => isFigure(figures.get(metric)));
}

/** What the plausibility checks look at besides figures: distances, warm-up, LEDs, instruments and rooms. */
export function checkedReadings(
  panel: Panel,
  session: Session | undefined,
  content: Content,
  figures: FigureMap,
): Pick<Facts, 'reference' | 'distances' | 'warmUp' | 'ledCount' | 'instruments' | 'rooms'> {
  return {
    reference: content.guide.data.referenceDistance.value,
    distances: setDistances(panel, session),
    warmUp: session?.warmUp?.value,
    ledCount: ledCount(panel),
    instruments: session ? instrumentUses(session, content, figures) : [],
    rooms: session ? otherRooms(session, content) : new Map(),
  };
}

function setDistances(panel: Panel, session: Session | undefined): SetDistance[] {
  const distances: SetDistance[] = [];
  const bench = session?.distance;
  if (bench) {
    const concerns = ['peak-irradiance-combined', 'mean-irradiance', 'optical-power'] as const;
    distances.push({ of: 'bench', value: bench.value, at: ['session', 'distance'], concerns });
  }
  for (const kind of FIELDS) {
    const distance = session?.[kind]?.distance;
    const concerns = each(`${kind}-field`, ['on', 'off']);
    if (distance) distances.push({ of: kind, value: distance.value, at: ['session', kind, 'distance'], concerns });
  }
  const claimed = panel.claims?.irradiance?.distance;
  if (claimed) {
    const at = ['claims', 'irradiance', 'distance'];
    distances.push({ of: 'claim', value: claimed.value, at, concerns: ['peak-irradiance-combined'] });
  }
  return distances;
}

/** LEDs counted on the piece, or else the maker's number. */
function ledCount({ leds, claims }: Panel): number | undefined {
  if (!leds) return claims?.ledCount;
  // Every second row of a staggered field has one LED less.
  return leds.columns * leds.rows - (leds.staggered ? Math.floor(leds.rows / 2) : 0);
}

function instrumentUses(session: Session, content: Content, figures: FigureMap): InstrumentUse[] {
  return READ.flatMap(([kind]) => {
    const metrics = metricsReadBy(kind, figures);
    if (metrics.length === 0) return [];
    const instrument = quantityOf(content.instruments.get(session.instruments[kind] ?? '')?.data, kind);
    const factor = instrument && instrumentUnit(instrument)?.factor;
    return [
      {
        kind,
        name: instrument?.name,
        metrics,
        ...(instrument &&
          factor !== undefined && {
            lowest: instrument.range.from * factor,
            highest: instrument.range.to * factor,
            step: instrument.resolution * factor,
          }),
      },
    ];
  });
}

/** Rooms of all sessions by the kind of field, lowest first; gone through once for a content. */
const roomsOf = new WeakMap<Content, ReadonlyMap<FieldKind, readonly number[]>>();

/** Stands for all that panels are told of each other's rooms. */
export function roomsKey(content: Content): string {
  return JSON.stringify([...allRooms(content)]);
}

function allRooms(content: Content): ReadonlyMap<FieldKind, readonly number[]> {
  const known = roomsOf.get(content);
  if (known) return known;
  const sessions = [...content.panels.values()].flatMap(({ data }) => data.sessions);
  const rooms = new Map(
    FIELDS.map((kind) => [
      kind,
      sessions.flatMap((session) => roomReading(session, kind) ?? []).toSorted((a, b) => a - b),
    ]),
  );
  roomsOf.set(content, rooms);
  return rooms;
}

/** What was read of the room; a bound tells nothing of it. */
function roomReading(session: Session, kind: FieldKind): number | undefined {
  const off = session[kind]?.off;
  return off && !off.bound ? off.value : undefined;
}

function otherRooms(session: Session, content: Content): Facts['rooms'] {
  const rooms = allRooms(content);
  return new Map(
    FIELDS.flatMap((kind) => {
      const all = rooms.get(kind) ?? [];
      const own = roomReading(session, kind);
      const count = own === undefined ? all.length : all.length - 1;
      if (count === 0) return [];
      return [[`${kind}-field-off`, { usual: medianSorted(middleOf(all, own)), count }]];
    }),
  );
}

/** The one or two in the middle of all but one, which has the median of them; whole lists of a thousand are not copied. */
function middleOf(sorted: readonly number[], but: number | undefined): number[] {
  const left = but === undefined ? sorted.length : sorted.indexOf(but);
  const count = but === undefined ? sorted.length : sorted.length - 1;
  const other = (place: number) => at(sorted, place < left ? place : place + 1);
  const [low, high] = [Math.ceil(count / 2) - 1, Math.floor(count / 2)];
  return low === high ? [other(low)] : [other(low), other(high)];
}
