import { countedLeds } from '../content/read/counted-leds.ts';
import { acceptedReadings } from '../content/read/grid-points.ts';
import type { Panel } from '../content/schema/panel.ts';
import type { Session } from '../content/schema/session.ts';
import type { BeamSource } from '../measure/beam/estimate.ts';
import { type OpticsFigures, opticsFigures, opticsGaps } from '../measure/beam/figures.ts';
import { opticsFlags } from '../measure/beam/flags.ts';
import type { PanelModel } from '../measure/beam/panel-model.ts';
import { sessionOptics } from '../measure/beam/session-light.ts';
import type { Spread } from '../measure/beam/spread.ts';
import { TABLE_DISTANCES } from '../measure/beam/table-distances.ts';
import { type Figure, type FigureOrGap, type Flag, isFigure } from '../measure/figure.ts';
import { type Instrument, NO_INSTRUMENT } from '../measure/instrument/instrument.ts';
import type { DistanceSetting } from '../measure/irradiance/distance-setting.ts';
import type { Said } from '../measure/statement.ts';
import { beyondLight } from './beyond-light.ts';
import { estimateOnce } from './optics-store.ts';
import { bandsOf } from './reading-figures.ts';

/** What the optics model makes of one session. */
export interface ModelledLight {
  figures: OpticsFigures;
  flags: readonly Flag[];
  /** Which readings tell most of the light that misses the frame; undefined where nothing came of it. */
  source: BeamSource | undefined;
  /** What the simulation says of emitted power over mains draw. */
  efficiency: Spread | undefined;
  /** The panel as the model has found it, for drawing; undefined where the beam is withheld. */
  model: PanelModel | undefined;
  /** Modelled values at the session's own distance. */
  own: OpticsFigures['distances'][number] | undefined;
}

/** What the model is told besides the session. */
export interface LightContext {
  slug: string;
  /** `<panel>/<date>` */
  id: string;
  panel: Panel;
  session: Session;
  instrument: Instrument | undefined;
  field: { width: FigureOrGap; height: FigureOrGap };
  distance: DistanceSetting;
  /** The common figure, and the mains draw with both channels on, where there are such. */
  power: Figure | undefined;
  mains: Figure | undefined;
}

/** Distances closer than this, cm, are one. */
const SAME = 1e-6;

/** Works out a session's light by the model; gaps with the reason where it can't be. */
export function modelledLight(context: LightContext): ModelledLight {
  const { slug, id, panel, session, instrument, field, distance, power, mains } = context;
  const none = (reason: Said): ModelledLight => ({
    figures: opticsGaps(reason),
    flags: [],
    source: undefined,
    efficiency: undefined,
    model: undefined,
    own: undefined,
  });
  if (!isFigure(field.width) || !isFigure(field.height)) return none('the LED field was not measured');
  const { grid } = session;
  const sweep = (session.distances ?? []).flatMap(({ distance, centre }) =>
    centre === undefined ? [] : [{ distance: distance.value, readings: acceptedReadings(centre) }],
  );
  const leds = panel.leds && countedLeds(panel.leds);
  const claimed = panel.claims;
  if (!grid && sweep.length === 0) return none('neither a grid nor a distance sweep was measured');
  const light = sessionOptics({
    panel: slug,
    session: id,
    instrument,
    bands: bandsOf(session).combined,
    width: field.width,
    height: field.height,
    distance,
    ...(grid && { grid: { points: grid.rows.map((row) => row.map(acceptedReadings)), inset: grid.inset.value } }),
    ...(sweep.length > 0 && { sweep }),
    ...(session.beyond && { beyond: beyondLight(session.beyond) }),
    ...(claimed?.beamAngle && { beamAngle: claimed.beamAngle.value }),
    ...(claimed?.ledCount !== undefined && { ledCount: claimed.ledCount }),
    ...(leds && { leds }),
    ...(mains && mains.standardUncertainty !== null && { mains }),
    targets: [...TABLE_DISTANCES, distance.distance],
  });
  if ('withheld' in light) return none(light.withheld);
  if (!instrument) return none(NO_INSTRUMENT);
  const result = estimateOnce(light.input);
  const inputs = [
    ...(grid ? [`${id}/grid.rows`] : []),
    ...(session.beyond ? [`${id}/beyond`] : []),
    ...(sweep.length > 0 ? [`${id}/distances`] : []),
    field.width.id,
    field.height.id,
  ];
  const figures = opticsFigures(result, {
    session: id,
    instrument,
    inputs,
    notes: light.notes,
    ...(power && { power }),
  });
  const isOwn = (it: { distance: number }, index: number) =>
    index >= TABLE_DISTANCES.length && Math.abs(it.distance - distance.distance) < SAME;
  return {
    figures: { ...figures, distances: figures.distances.slice(0, TABLE_DISTANCES.length) },
    flags: opticsFlags(result),
    source: result.estimates?.source,
    efficiency: result.estimates?.efficiency,
    model: result.estimates?.model,
    own: figures.distances.find(isOwn),
  };
}
