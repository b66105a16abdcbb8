import { FILE_READERS } from '../../content/read/files/readers.ts';
import { pointReadings } from '../../content/read/grid-points.ts';
import type { Reading } from '../../content/schema/quantity.ts';
import type { GridPoint } from '../../content/schema/session.ts';
import type { SessionEntry } from '../../ledger/ledger.ts';

/** One raw reading as it stands in the panel's file. */
export interface RawReading {
  /** `sessions/2026-03-14/peak.red` */
  path: string;
  /** In words: "peak, red". */
  label: string;
  /** As written. */
  written: string;
  /** In the canonical unit; absent for words. */
  value?: number;
  unit?: string;
  bound?: Reading['bound'];
  /** Why it was rejected; the name is that of the file, as in the data files. */
  struck?: string;
}

const NAMES: Record<string, string> = {
  nearInfrared: 'near-infrared',
  roomTemperature: 'room temperature',
  warmUp: 'warm-up',
  hotSpots: 'hot spots',
  fwhm: 'width at half maximum',
};

/** Blocks of a session that name files: these stand in a table of their own. */
const FILE_BLOCKS: ReadonlySet<string | undefined> = new Set(
  FILE_READERS.flatMap((it) => it.places).map(({ path }) => path[0]),
);

const SWEEP_READINGS = [
  ['centre', ''],
  ['red', ', red alone'],
  ['nearInfrared', ', near-infrared alone'],
] as const;

/** Every raw reading of a session in the order of its file, struck-out ones with their reason. */
export function rawReadings(session: SessionEntry): RawReading[] {
  const {
    grid,
    distances,
    beyond,
    instruments: _instruments,
    date: _date,
    methodVersion: _version,
    photos: _photos,
    carried: _carried,
    draft: _draft,
    ...rest
  } = session.readings;
  const list: RawReading[] = [];
  const visit = (value: unknown, path: string[]): void => {
    if (value === undefined || value === null) return;
    const at = { path: path.join('.'), label: path.map((part) => NAMES[part] ?? part).join(', ') };
    if (isReading(value)) {
      list.push({
        ...at,
        written: value.written,
        value: value.value,
        unit: value.unit,
        ...(value.bound && { bound: value.bound }),
      });
    } else if (typeof value === 'object') {
      for (const [key, inner] of Object.entries(value)) visit(inner, [...path, key]);
    } else list.push({ ...at, written: String(value) });
  };
  const point = (of: GridPoint, path: string, label: string) =>
    pointReadings(of).forEach(({ reading, rejected }, k, all) => {
      list.push({
        path: `${path}${all.length > 1 ? `[${k}]` : ''}`,
        label: `${label}${all.length > 1 ? `, reading ${k + 1}` : ''}`,
        written: reading.written,
        value: reading.value,
        unit: reading.unit,
        ...(reading.bound && { bound: reading.bound }),
        ...(rejected !== undefined && { struck: rejected }),
      });
    });
  for (const [key, value] of Object.entries(rest)) if (!FILE_BLOCKS.has(key)) visit(value, [key]);
  if (grid) {
    visit(grid.inset, ['grid', 'inset']);
    grid.rows.forEach((row, i) => {
      row.forEach((it, j) => {
        point(it, `grid.rows[${i}][${j}]`, `grid, row ${i + 1}, point ${j + 1}`);
      });
    });
  }
  distances?.forEach(({ distance, ...readings }, i) => {
    list.push({
      path: `distances[${i}].distance`,
      label: `sweep, distance ${i + 1}`,
      written: distance.written,
      value: distance.value,
      unit: distance.unit,
    });
    for (const [key, words] of SWEEP_READINGS) {
      const it = readings[key];
      if (it) point(it, `distances[${i}].${key}`, `sweep, before the middle at distance ${i + 1}${words}`);
    }
  });
  beyond?.forEach(({ edge, past, on, off }, i) => {
    const place = `${past.written} past the ${edge} edge`;
    list.push({ path: `beyond[${i}].edge`, label: `past the edges, place ${i + 1}, edge`, written: edge });
    list.push({
      path: `beyond[${i}].past`,
      label: `past the edges, place ${i + 1}, how far`,
      written: past.written,
      value: past.value,
      unit: past.unit,
    });
    point(on, `beyond[${i}].on`, `${place}, panel on`);
    if (off) point(off, `beyond[${i}].off`, `${place}, panel off`);
  });
  return list;
}

function isReading(value: unknown): value is Reading {
  return typeof value === 'object' && value !== null && 'written' in value && 'value' in value;
}
