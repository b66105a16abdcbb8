import { countedLeds } from '../content/read/counted-leds.ts';
import { acceptedReadings } from '../content/read/grid-points.ts';
import type { Session } from '../content/schema/session.ts';
import { lightTargets, lightWithout, type PanelLight, panelLight } from '../measure/beam/panel-light.ts';
import { type SessionOptics, sessionOptics } from '../measure/beam/session-light.ts';
import { type Figure, isFigure } from '../measure/figure.ts';
import { correctionInput } from '../measure/instrument/corrected-reading.ts';
import { type Instrument, NO_INSTRUMENT } from '../measure/instrument/instrument.ts';
import type { ModeLight } from '../measure/instrument/spectral-response.ts';
import type { Statement } from '../measure/statement.ts';
import { beyondLight } from './beyond-light.ts';
import { type PackedResult, unpackResult } from './optics-pack.ts';
import type { SessionBench } from './session-bench.ts';

declare module '../measure/statement.ts' {
  interface StatementData {
    'beam-no-readings': object;
    /** While the grid is being read. */
    'grid-not-all-read': { read: number; of: number };
  }
}

/** A session's light before it is worked out: what the model takes, or why it can make nothing of the session. */
export interface LightBasis {
  /** `<panel>/<date>` */
  session: string;
  /** The same of the session in which the light was read. */
  id: string;
  optics: SessionOptics | { withheld: Statement };
  instrument: Instrument | undefined;
  /** How its light is shared out, and what its readings were corrected by. */
  bands: ModeLight;
  /** Ids of the figures and paths of the readings that go in. */
  inputs: readonly string[];
}

/** A session's light, worked out. */
export interface WorkedLight {
  basis: LightBasis;
  /** What came of it; undefined where the model can make nothing of the session. */
  result: PackedResult | undefined;
}

/** Puts together what the model takes of a session. */
export function lightBasis(bench: SessionBench): LightBasis {
  const { lightId: id, session, instrumentFor, field } = bench;
  return {
    session: bench.id,
    id,
    optics: opticsOf(bench),
    instrument: instrumentFor('irradiance'),
    bands: bench.bands.combined,
    inputs: [
      ...(session.grid ? [`${id}/grid.rows`] : []),
      ...(session.beyond ? [`${id}/beyond`] : []),
      ...(sweepOf(session).length > 0 ? [`${id}/distances`] : []),
      ...[field.width, field.height].flatMap((it) => (isFigure(it) ? [it.id] : [])),
      ...correctionInput(bench.bands.combined),
    ],
  };
}

function opticsOf({
  slug,
  lightId,
  panel,
  session,
  instrumentFor,
  field,
  distance,
  bands,
  readings,
}: SessionBench): LightBasis['optics'] {
  if (!isFigure(field.width)) return { withheld: field.width.reason };
  if (!isFigure(field.height)) return { withheld: field.height.reason };
  const { grid } = session;
  const sweep = sweepOf(session);
  if (!grid && sweep.length === 0) return { withheld: { code: 'beam-no-readings' } };
  const leds = panel.leds && countedLeds(panel.leds);
  const claimed = panel.claims;
  const mains = readings.find((it) => it.metric === 'mains-draw-combined');
  return sessionOptics({
    panel: slug,
    session: lightId,
    instrument: instrumentFor('irradiance'),
    bands: bands.combined,
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
    targets: lightTargets(distance.distance),
  });
}

/** Accepted readings on the axis, with the distance of each, cm. */
function sweepOf({ distances = [] }: Session): Array<{ distance: number; readings: number[] }> {
  return distances.flatMap(({ distance, centre }) =>
    centre === undefined ? [] : [{ distance: distance.value, readings: acceptedReadings(centre) }],
  );
}

/**
 * A session's light as figures, from what came of it; gaps with the reason where nothing did.
 *
 * @param power the common figure that the emitted power corrects, where there is one
 */
export function modelledLight({ basis, result }: WorkedLight, power: Figure | undefined): PanelLight {
  const { id, optics, instrument, bands, inputs } = basis;
  if ('withheld' in optics) return lightWithout(optics.withheld);
  if (!instrument) return lightWithout(NO_INSTRUMENT);
  if (!result) throw new Error(`${id}: its light was not worked out`);
  return panelLight(unpackResult(result), {
    session: id,
    instrument,
    bands,
    inputs,
    notes: optics.notes,
    ...(power && { power }),
  });
}
