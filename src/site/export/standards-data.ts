import { csvFormatBody, csvFormatRow } from 'd3-dsv';
import type { Ledger } from '../../ledger/ledger.ts';
import type { StandardEntry } from '../../ledger/standard-entry.ts';
import type { ChartStage } from '../../measure/control/control-chart.ts';
import { harmless, short } from './data-parts.ts';

/** The check standards of a guide with their control charts, by id, as `panels.json` has them. */
export function standardsData({ standards }: Ledger): Record<string, unknown> {
  return Object.fromEntries(
    standards.map((entry) => [
      entry.id,
      {
        name: entry.data.name,
        what: entry.data.what,
        instrument: entry.instrument.id,
        unit: entry.unit,
        distance_cm: entry.data.distance?.value ?? null,
        near_days: entry.data.nearDays,
        stages: entry.stages.map((stage) => stageData(stage, entry.data.limitsFrom)),
        days: daysOf(entry).map(({ date, value, readings, struck, beyond, note }) => ({
          date,
          value,
          readings,
          ...(struck.length > 0 && { struck }),
          ...(beyond && { beyond }),
          ...(note !== undefined && { note }),
        })),
      },
    ]),
  );
}

function stageData({ from, reason, limits, drift }: ChartStage, first: number) {
  return {
    from,
    reason: reason ?? null,
    limits: limits && {
      from_days: first,
      centre: limits.centre,
      lower: limits.lower,
      upper: limits.upper,
      standard_deviation: limits.sigma,
      mean_moving_range: limits.meanRange,
      moving_range_upper: limits.rangeUpper,
    },
    drift: drift && {
      per_year: drift.perYear,
      interval95: [drift.perYear - drift.half, drift.perYear + drift.half],
      degrees_of_freedom: drift.degreesOfFreedom,
    },
  };
}

interface DayData {
  date: string;
  /** Mean of the readings that count; null where none does. */
  value: number | null;
  readings: number[];
  struck: Array<{ value: number; reason: string }>;
  beyond: 'above' | 'below' | undefined;
  note: string | undefined;
}

function daysOf({ days, stages }: StandardEntry): DayData[] {
  const points = new Map(stages.flatMap((stage) => stage.points.map((it) => [it.date, it] as const)));
  return days.map(({ date, readings, note }) => ({
    date,
    value: points.get(date)?.value ?? null,
    readings: readings.filter((it) => it.struck === undefined).map((it) => it.value),
    struck: readings.flatMap(({ value, struck }) => (struck === undefined ? [] : [{ value, reason: struck }])),
    beyond: points.get(date)?.beyond,
    note,
  }));
}

const COLUMNS = [
  'standard',
  'instrument',
  'date',
  'value',
  'unit',
  'struck',
  'day_mean',
  'centre',
  'lower_limit',
  'upper_limit',
  'beyond',
  'note',
] as const;

/** `data/standards.csv`: one line a reading of a check standard, with the limits of its day. */
export function* standardsCsv({ standards }: Ledger): Generator<string> {
  yield `${csvFormatRow([...COLUMNS])}\n`;
  for (const entry of standards) {
    const limits = new Map(entry.stages.flatMap((stage) => stage.points.map((it) => [it.date, stage.limits] as const)));
    const rows = daysOf(entry).flatMap(({ date, value: mean, readings, struck, beyond, note }) => {
      const of = limits.get(date);
      const day = {
        standard: entry.id,
        instrument: entry.instrument.id,
        date,
        unit: entry.unit,
        day_mean: short(mean),
        centre: short(of?.centre),
        lower_limit: short(of?.lower),
        upper_limit: short(of?.upper),
        beyond: beyond ?? '',
        note: harmless(note ?? ''),
      };
      return [
        ...readings.map((value) => ({ ...day, value, struck: '' })),
        ...struck.map(({ value, reason }) => ({ ...day, value, struck: harmless(reason) })),
      ];
    });
    if (rows.length > 0) yield `${csvFormatBody(rows, [...COLUMNS])}\n`;
  }
}
