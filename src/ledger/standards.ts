import type { Content } from '../content/read/content.ts';
import { type InstrumentKind, type InstrumentQuantity, quantityId } from '../content/schema/instrument.ts';
import { INSTRUMENT_QUANTITY } from '../content/schema/instrument-kinds.ts';
import { instrumentUnit } from '../content/schema/instrument-units.ts';
import { parseQuantity } from '../content/schema/quantity.ts';
import type { StandardFile } from '../content/schema/standard.ts';
import { QUANTITIES } from '../content/schema/units.ts';
import {
  type ChartStage,
  controlChart,
  nearestReading,
  type StandardReading,
} from '../measure/control/control-chart.ts';
import { daysUntilUsedUp } from '../measure/control/drift.ts';
import { calibrationOn, calibrationsOf, instrumentOf } from './instruments.ts';
import type { StandardDay, StandardEntry } from './standard-entry.ts';

const WITHOUT_SHARE: ReadonlySet<InstrumentKind> = new Set(['sound', 'temperature', 'spectrum']);

/** Charts by content: they are the same for every session. */
const known = new WeakMap<Content, readonly StandardEntry[]>();

/** Every check standard of the content with its chart, by id. */
export function standardEntries(content: Content): readonly StandardEntry[] {
  const made = known.get(content) ?? [...content.standards.values()].map(({ id, data }) => entryOf(id, data, content));
  known.set(content, made);
  return made;
}

function entryOf(id: string, data: StandardFile, content: Content): StandardEntry {
  const meter = content.instruments.get(data.instrument)?.data;
  const file = meter?.quantities.find((it) => data.reads === undefined || it.measures === data.reads);
  if (!meter || !file) throw new Error(`${id}: the instrument "${data.instrument}" was not read`);
  const kind = file.measures;
  const days = data.readings.map((it) => dayOf(it, kind)).toSorted((a, b) => a.date.localeCompare(b.date));
  const accepted = days.map(
    ({ date, readings }): StandardReading => ({
      date,
      values: readings.filter((it) => it.struck === undefined).map((it) => it.value),
    }),
  );
  const step = file.resolution * (instrumentUnit(file)?.factor ?? 0);
  const stages = controlChart(accepted, { limitsFrom: data.limitsFrom, restarts: data.restarts, leastSigma: step / 2 });
  const current = stages.findLast((it) => it.points.length > 0) ?? (stages[0] as ChartStage);
  return {
    id,
    data,
    instrument: { id: data.instrument, quantityId: quantityId(data.instrument, meter, kind), name: file.name, kind },
    unit: QUANTITIES[INSTRUMENT_QUANTITY[kind]].canonical,
    isRelative: !WITHOUT_SHARE.has(kind),
    days,
    stages,
    current,
    calibrated: calibrationsOf(file)
      .map((it) => it.date)
      .filter((it) => it > (days[0]?.date ?? '') && it <= (days.at(-1)?.date ?? ''))
      .toReversed(),
    expectedSigma: expectedSigma(file, current),
    usedUp: usedUp(data.instrument, file, current),
  };
}

function dayOf({ date, value, note }: StandardFile['readings'][number], kind: InstrumentKind): StandardDay {
  const repeats = Array.isArray(value) ? value : [value];
  return {
    date,
    note,
    readings: repeats.map((it) =>
      typeof it === 'object'
        ? { value: canonical(it.value, kind), struck: it.struck }
        : { value: canonical(it, kind), struck: undefined },
    ),
  };
}

function canonical(written: number | string, kind: InstrumentKind): number {
  const parsed = parseQuantity(written, INSTRUMENT_QUANTITY[kind]);
  if ('fault' in parsed) throw new Error(`"${written}": a reading that is none was let through`);
  return parsed.reading.value;
}

function expectedSigma(file: InstrumentQuantity, { points, limits }: ChartStage): number | undefined {
  const repeats = points.map((it) => it.repeats).toSorted((a, b) => a - b);
  const usual = repeats[Math.floor(repeats.length / 2)];
  if (usual === undefined || !limits) return undefined;
  const { repeatability, repeatabilityDecibels } = file;
  const single =
    repeatabilityDecibels ?? (repeatability === undefined ? undefined : (repeatability / 100) * limits.centre);
  return single === undefined ? undefined : single / Math.sqrt(usual);
}

/** Against the expanded uncertainty that the calibration states, at the centre line. */
function usedUp(id: string, file: InstrumentQuantity, { limits, drift, points }: ChartStage): StandardEntry['usedUp'] {
  const last = points.at(-1)?.date;
  const calibration = last === undefined ? undefined : calibrationOn(file, last);
  if (!limits || !drift || !calibration || last === undefined) return undefined;
  const { calibrationRelative, calibrationAbsolute } = instrumentOf(id, file, last);
  const expanded = calibration.coverageFactor * Math.hypot(calibrationRelative * limits.centre, calibrationAbsolute);
  const days = daysUntilUsedUp(drift, expanded);
  return days === undefined ? undefined : { calibrated: calibration.date, days };
}

/** What a session's check standards showed about its day: one for each that its instruments read. */
export interface StandardStatus {
  entry: StandardEntry;
  near: ReturnType<typeof nearestReading>;
}

/**
 * The check standards of the instruments of a session. One that was not kept yet on the day has nothing to say.
 *
 * @param instruments ids
 */
export function standardsOn(
  standards: readonly StandardEntry[],
  instruments: readonly string[],
  day: string,
): StandardStatus[] {
  return standards
    .filter(({ instrument }) => instruments.includes(instrument.id))
    .map((entry) => ({ entry, near: nearestReading(entry.stages, day, entry.data.nearDays) }))
    .filter(({ entry, near }) => near || day >= (entry.stages[0]?.points[0]?.date ?? ''));
}
