import type { Content, Entry } from '../content/read/content.ts';
import type { Guide } from '../content/schema/guide.ts';
import { type InstrumentKind, quantityId, quantityOf } from '../content/schema/instrument.ts';
import type { Panel } from '../content/schema/panel.ts';
import type { Session } from '../content/schema/session.ts';
import { gap, isFigure } from '../measure/figure.ts';
import type { Instrument } from '../measure/instrument/instrument.ts';
import type { DistanceSetting } from '../measure/irradiance/distance-setting.ts';
import { ledAreaFigure, sideFigure } from '../measure/irradiance/optical-power.ts';
import type { Statement } from '../measure/statement.ts';
import { withCarried } from './carried-bench.ts';
import type { FieldFigures } from './field-figures.ts';
import { madeOfFiles } from './file-figures.ts';
import { type FindIn, findAnew } from './files/file-maker.ts';
import { modesOf } from './files/mode-light.ts';
import { instrumentOf } from './instruments.ts';
import { readingFigures } from './reading-figures.ts';
import type { SessionBench } from './session-bench.ts';

declare module '../measure/statement.ts' {
  interface StatementData {
    'field-not-measured': object;
  }
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

/**
 * Puts a panel's readings together with the instruments and the guide's settings.
 *
 * @param findIn what finds something in its files
 */
export function panelContext(
  { id: slug, data: panel }: Entry<Panel>,
  content: Content,
  today: string,
  findIn: FindIn = findAnew,
): PanelContext {
  const guide = content.guide.data;
  const sessions = panel.sessions.toSorted((a, b) => b.date.localeCompare(a.date));
  // The sides are the panel's, and are not measured again in every session.
  const measured = sessions.find((it) => it.instruments.length !== undefined);
  const field = fieldFigures(slug, panel, guide, instrumentFinder(content, measured)('length'));
  const files = content.benchFiles.get(slug)?.read ?? [];
  const benches = new Map(
    sessions.map((session): [string, SessionBench] => {
      const id = `${slug}/${session.date}`;
      const instrumentFor = instrumentFinder(content, session);
      const distance = distanceSetting(session, guide, field);
      const own = files.filter((it) => it.date === session.date);
      const modes = modesOf(own, { id, session, guide, instrumentFor, distance });
      const { bands } = modes;
      const readings = readingFigures(id, session, instrumentFor, distance, bands);
      const taken = { id, panel, session, guide, instrumentFor, field, distance };
      const made = madeOfFiles(own, { ...taken, typed: readings, modes, findIn });
      const bench = { ...taken, slug, own: session, lightId: id, bands, readings, files: own, made };
      return [session.date, bench];
    }),
  );
  return {
    slug,
    panel,
    content,
    today,
    field,
    sessions: [...benches.values()].map((bench) => withCarried(bench, benches)),
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
