import type { Content, Entry } from '../content/read/content.ts';
import type { Guide } from '../content/schema/guide.ts';
import { type InstrumentKind, quantityId, quantityOf } from '../content/schema/instrument.ts';
import type { Panel } from '../content/schema/panel.ts';
import type { Session } from '../content/schema/session.ts';
import { type Figure, type FigureOrGap, gap, isFigure } from '../measure/figure.ts';
import type { Instrument } from '../measure/instrument/instrument.ts';
import type { DistanceSetting } from '../measure/irradiance/distance-setting.ts';
import { ledAreaFigure, sideFigure } from '../measure/irradiance/optical-power.ts';
import type { Statement } from '../measure/statement.ts';
import { instrumentOf } from './instruments.ts';
import { type InstrumentFinder, readingFigures } from './reading-figures.ts';

declare module '../measure/statement.ts' {
  interface StatementData {
    'field-not-measured': object;
  }
}

/** Width, height and area of the LED field; gaps where it was not measured. */
export interface FieldFigures {
  width: FigureOrGap;
  height: FigureOrGap;
  area: FigureOrGap;
}

/** One session on the bench: its readings, and what they were taken with. All of its other figures are made from it. */
export interface SessionBench {
  slug: string;
  panel: Panel;
  guide: Guide;
  /** `<panel>/<date>` */
  id: string;
  session: Session;
  instrumentFor: InstrumentFinder;
  field: FieldFigures;
  distance: DistanceSetting;
  /** Its plain readings as figures. */
  readings: readonly Figure[];
}

/** A panel with its sessions, before anything is made of their readings. */
export interface PanelContext {
  slug: string;
  panel: Panel;
  content: Content;
  /** The day for which the guide is built. */
  today: string;
  field: FieldFigures;
  /** Newest first. */
  sessions: readonly SessionBench[];
}

/** Puts a panel's readings together with the instruments and the guide's settings. */
export function panelContext({ id: slug, data: panel }: Entry<Panel>, content: Content, today: string): PanelContext {
  const guide = content.guide.data;
  const sessions = panel.sessions.toSorted((a, b) => b.date.localeCompare(a.date));
  const field = fieldFigures(slug, panel, guide, instrumentFinder(content, sessions[0])('length'));
  return {
    slug,
    panel,
    content,
    today,
    field,
    sessions: sessions.map((session): SessionBench => {
      const id = `${slug}/${session.date}`;
      const instrumentFor = instrumentFinder(content, session);
      const distance = distanceSetting(session, guide, field);
      const readings = readingFigures(id, session, instrumentFor, distance);
      return { slug, panel, guide, id, session, instrumentFor, field, distance, readings };
    }),
  };
}

/** The instruments that a session names, by what they read. */
function instrumentFinder(
  content: Content,
  session: Session | undefined,
): (kind: InstrumentKind) => Instrument | undefined {
  return (kind) => {
    const id = session?.instruments[kind];
    const instrument = id === undefined ? undefined : content.instruments.get(id);
    const quantity = quantityOf(instrument?.data, kind);
    if (!session || !instrument || !quantity) return undefined;
    return instrumentOf(quantityId(instrument.id, instrument.data, kind), quantity, session.date);
  };
}

/** The distance that a session's light was read from, and over what it was set. */
function distanceSetting(session: Session, guide: Guide, { width, height, area }: FieldFigures): DistanceSetting {
  return {
    distance: (session.distance ?? guide.referenceDistance).value,
    halfWidth: guide.distanceSetting.value,
    area: isFigure(area) ? area.value : undefined,
    ...(isFigure(width) && isFigure(height) && { field: { width: width.value, height: height.value } }),
  };
}

function fieldFigures(slug: string, panel: Panel, guide: Guide, tape: Instrument | undefined): FieldFigures {
  if (!panel.field) {
    const reason: Statement = { code: 'field-not-measured' };
    return { width: gap('field-width', reason), height: gap('field-height', reason), area: gap('led-area', reason) };
  }
  const side = (name: 'width' | 'height', value: number) =>
    sideFigure({ panel: slug, side: name, value, edgeSetting: guide.edgeSetting.value, instrument: tape });
  const width = side('width', panel.field.width.value);
  const height = side('height', panel.field.height.value);
  return { width, height, area: ledAreaFigure(slug, width, height) };
}
