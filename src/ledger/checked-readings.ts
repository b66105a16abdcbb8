import type { Content } from '../content/read/content.ts';
import type { InstrumentKind } from '../content/schema/instrument.ts';
import { instrumentUnit } from '../content/schema/instrument-units.ts';
import type { Panel } from '../content/schema/panel.ts';
import type { Session } from '../content/schema/session.ts';
import type { Facts, InstrumentUse, SetDistance } from '../measure/checks/index.ts';
import { type FigureOrGap, isFigure } from '../measure/figure.ts';

const MODES = ['red', 'near-infrared', 'combined'] as const;
const each = (prefix: string, suffixes: readonly string[]) => suffixes.map((it) => `${prefix}-${it}`);

/** Metrics that are read off each kind of meter. */
const READ: Partial<Record<InstrumentKind, readonly string[]>> = {
  irradiance: [...each('peak-irradiance', MODES), 'mean-irradiance'],
  spectrum: each('wavelength', ['red', 'near-infrared']),
  mains: each('mains-draw', [...MODES, 'standby']),
  magnetic: each('magnetic-field', ['on', 'off']),
  electric: each('electric-field', ['on', 'off']),
  radio: each('radio-field', ['on', 'off']),
  sound: each('sound', ['on', 'off']),
  flicker: each('flicker', MODES),
};

/** What the plausibility checks look at besides figures: distances, warm-up, LEDs, meters and rooms. */
export function checkedReadings(
  panel: Panel,
  session: Session | undefined,
  content: Content,
  figures: ReadonlyMap<string, FigureOrGap>,
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
  const bench = session?.distance;
  const fields = (['magnetic', 'electric', 'radio'] as const).flatMap((kind): SetDistance[] => {
    const distance = session?.[kind]?.distance;
    if (!distance) return [];
    const metric = `${kind}-field`;
    return [
      {
        of: kind,
        value: distance.value,
        at: ['session', kind, 'distance'],
        concerns: [`${metric}-on`, `${metric}-off`],
      },
    ];
  });
  const claimed = panel.claims?.irradiance?.distance;
  return [
    ...(bench
      ? [
          {
            of: 'bench' as const,
            value: bench.value,
            at: ['session', 'distance'],
            concerns: ['peak-irradiance-combined', 'mean-irradiance', 'optical-power'],
          },
        ]
      : []),
    ...fields,
    ...(claimed
      ? [
          {
            of: 'claim' as const,
            value: claimed.value,
            at: ['claims', 'irradiance', 'distance'],
            concerns: ['peak-irradiance-combined'],
          },
        ]
      : []),
  ];
}

/** LEDs counted on the piece, or else the maker's number. */
function ledCount({ leds, claims }: Panel): number | undefined {
  if (!leds) return claims?.ledCount;
  // Every second row of a staggered field has one LED less.
  return leds.columns * leds.rows - (leds.staggered ? Math.floor(leds.rows / 2) : 0);
}

function instrumentUses(
  session: Session,
  content: Content,
  figures: ReadonlyMap<string, FigureOrGap>,
): InstrumentUse[] {
  return (Object.entries(READ) as Array<[InstrumentKind, readonly string[]]>).flatMap(([kind, all]) => {
    const metrics = all.filter((metric) => isFigure(figures.get(metric)));
    if (metrics.length === 0) return [];
    const instrument = content.instruments.get(session.instruments[kind] ?? '')?.data;
    const factor = instrument && instrumentUnit(instrument)?.factor;
    return [
      {
        kind,
        name: instrument?.name,
        metrics,
        ...(instrument &&
          factor !== undefined && { lowest: instrument.range.from * factor, step: instrument.resolution * factor }),
      },
    ];
  });
}

/** Rooms of all sessions by metric, lowest first; gone through once for a content. */
const roomsOf = new WeakMap<Content, ReadonlyMap<string, readonly number[]>>();

function allRooms(content: Content): ReadonlyMap<string, readonly number[]> {
  const known = roomsOf.get(content);
  if (known) return known;
  const sessions = [...content.panels.values()].flatMap(({ data }) => data.sessions);
  const rooms = new Map(
    ROOMS.map(([kind, metric]) => [
      metric,
      sessions.flatMap((session) => roomReading(session, kind) ?? []).toSorted((a, b) => a - b),
    ]),
  );
  roomsOf.set(content, rooms);
  return rooms;
}

const ROOMS = [
  ['magnetic', 'magnetic-field-off'],
  ['electric', 'electric-field-off'],
  ['radio', 'radio-field-off'],
] as const;

function roomReading(session: Session, kind: (typeof ROOMS)[number][0]): number | undefined {
  const off = session[kind]?.off;
  return off && !off.bound ? off.value : undefined;
}

function otherRooms(session: Session, content: Content): Facts['rooms'] {
  const all = allRooms(content);
  return new Map(
    ROOMS.flatMap(([kind, metric]) => {
      const sorted = all.get(metric) ?? [];
      const own = roomReading(session, kind);
      const skipped = own === undefined ? sorted.length : sorted.indexOf(own);
      const count = own === undefined ? sorted.length : sorted.length - 1;
      // The sorted list less the session's own reading, without making a list of it.
      const other = (place: number) => sorted[place < skipped ? place : place + 1] as number;
      if (count === 0) return [];
      return [[metric, { usual: (other((count - 1) >> 1) + other(count >> 1)) / 2, count }] as const];
    }),
  );
}
