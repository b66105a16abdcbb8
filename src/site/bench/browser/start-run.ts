/** The beginning of a run: what is known of it before anything is read. */

import { isBlock, valueAt } from '../../../content/schema/block.ts';
import { CARRIED_NAMES, carriedBlock } from '../../../content/schema/carried.ts';
import { INSTRUMENT_KINDS } from '../../../content/schema/instrument.ts';
import { heldInstruments } from '../../../ledger/held-instruments.ts';
import { ASKS_BEYOND_FROM } from '../../../measure/irradiance/bench-procedure.ts';
import type { BenchPanelFile, BenchSetup } from './bench-data.ts';
import { openSetup } from './open-setup.ts';
import type { Run, RunPanel } from './run.ts';
import { BEYOND_PLACES, SWEEP } from './sheet-points.ts';
import { USUAL_ALONG, USUAL_INSET } from './sheet-setup.ts';

/** What the tester says of a run that begins. */
export interface NewRun {
  /** Nobody else's: a random one. */
  id: string;
  /** `YYYY-MM-DD` */
  date: string;
  panel: RunPanel;
  /** The panel's data, where it is not new. */
  file?: BenchPanelFile;
}

/**
 * A run before its first reading: the guide's version of the procedure, the meters and settings of the panel's last session
 * (of a new panel those whose calibration holds, as `new panel` takes them), the grid of last time, and the places past the
 * edges and along the axis that the procedure asks for.
 */
export function startRun({ id, date, panel, file }: NewRun, setup: BenchSetup): Run {
  const { guide, instruments } = openSetup(setup).entries;
  const sessions = sessionsOf(file).filter((it) => String(it.date) < date);
  const newest = sessions.toSorted((a, b) => String(b.date).localeCompare(String(a.date)));
  const held = heldInstruments(new Map([...instruments].map(([key, it]) => [key, it.data])), date).chosen;
  const last = (keys: readonly PropertyKey[]) =>
    newest.map((it) => valueAt(it, keys)).find((it) => typeof it === 'string' || typeof it === 'number');
  const { methodVersion } = guide.data;
  const distance = last(['distance']);
  const settings = {
    distance: distance === undefined ? guide.data.referenceDistance.written : String(distance),
    ...(methodVersion >= ASKS_BEYOND_FROM && beyondSettings()),
    ...sweepSettings(),
    ...Object.fromEntries(
      ['magnetic', 'electric', 'radio', 'sound'].map((kind) => [
        `${kind}.distance`,
        String(last([kind, 'distance']) ?? (kind === 'sound' ? '1 m' : '6 in')),
      ]),
    ),
  };
  const rows = newest.map((it) => valueAt(it, ['grid', 'rows'])).find(Array.isArray);
  return {
    id,
    panel,
    date,
    methodVersion,
    instruments: Object.fromEntries(
      INSTRUMENT_KINDS.flatMap((kind) => {
        const own = last(['instruments', kind]) ?? held[kind];
        return own === undefined ? [] : [[kind, String(own)] as const];
      }),
    ),
    grid: {
      rows: rows?.length ?? USUAL_ALONG,
      columns: Array.isArray(rows?.[0]) ? rows[0].length : USUAL_ALONG,
      inset: String(last(['grid', 'inset']) ?? USUAL_INSET.written),
    },
    settings,
    carried: {},
    entries: [],
    texts: {},
    photos: [],
    isFinished: false,
  };
}

const sessionsOf = (file: BenchPanelFile | undefined) => {
  const list = valueAt(file?.data, ['sessions']);
  return Array.isArray(list) ? list.filter(isBlock) : [];
};

const beyondSettings = () =>
  Object.fromEntries(
    BEYOND_PLACES.flatMap(({ edge, past, index }) => [
      [`beyond[${index}].edge`, edge],
      [`beyond[${index}].past`, `${past} cm`],
    ]),
  );

const sweepSettings = () => Object.fromEntries(SWEEP.map((it, i) => [`distances[${i}].distance`, `${it} cm`]));

/** Blocks that a run may carry over, with the day of the finished session that read each last. */
export function carriable(file: BenchPanelFile, date: string): Record<string, string> {
  const finished = sessionsOf(file)
    .filter((it) => it.draft !== true && String(it.date) < date)
    .toSorted((a, b) => String(b.date).localeCompare(String(a.date)));
  return Object.fromEntries(
    CARRIED_NAMES.flatMap((name) => {
      const read = finished.find((it) => carriedBlock(name).fields.some((field) => it[field] !== undefined));
      return read ? [[name, String(read.date)] as const] : [];
    }),
  );
}
