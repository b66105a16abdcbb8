import { INSTRUMENT_KINDS, type InstrumentKind } from '../../content/schema/instrument.ts';
import { calibrationDue } from '../../ledger/instruments.ts';
import type { Ledger, QuantityEntry } from '../../ledger/ledger.ts';
import { fixed, unitSigns } from '../../words/format.ts';
import { KIND_WORDS, rangeWords } from '../methods/instrument-words.ts';
import type { SheetData, SheetMeter } from './browser/sheet-data.ts';

/** A meter's row on the sheet. */
export interface MeterRow extends SheetMeter {
  kind: InstrumentKind;
  /** Name of its file. */
  id: string;
  reads: string;
  display: string;
}

/** A check standard's row. */
export interface StandardRow {
  id: string;
  name: string;
  how: string;
  /** Within which today's mean is expected; undefined before there are limits. */
  limits: string | undefined;
}

export interface SheetView {
  data: SheetData;
  meters: readonly MeterRow[];
  /** Kinds that no meter of the guide reads. */
  without: readonly string[];
  standards: readonly StandardRow[];
}

/** What the guide brings to a run sheet: panels with their fields, meters with their calibrations, check standards. */
export function sheetView(ledger: Ledger): SheetView {
  const rows = INSTRUMENT_KINDS.flatMap((kind) =>
    ledger.instruments.flatMap(({ id, quantities, usedIn }) => {
      const quantity = quantities.find((it) => it.data.measures === kind);
      return quantity ? [{ row: meterRow(id, kind, quantity), last: lastUse(ledger, id, kind, usedIn) }] : [];
    }),
  );
  const usual = INSTRUMENT_KINDS.flatMap((kind) => {
    const them = rows.filter((it) => it.row.kind === kind).toSorted((a, b) => b.last.localeCompare(a.last));
    return them[0] ? [them[0].row.key] : [];
  });
  const meters = rows.map((it) => it.row);
  const data: SheetData = {
    panels: Object.fromEntries(
      [...ledger.panels.values()]
        .toSorted((a, b) => a.name.localeCompare(b.name, 'en'))
        .map(({ slug, name, data: { field, formerly }, current }) => {
          const keys = (current?.instruments ?? []).map((it) => `${it.kind}:${it.id}`);
          const own = keys.filter((it) => !usual.includes(it));
          const panel = {
            name,
            ...(formerly && { formerly }),
            ...(field && { width: lengthOf(field.width), height: lengthOf(field.height) }),
            ...(own.length > 0 && { meters: own }),
          };
          return [slug, panel];
        }),
    ),
    meters: meters.map(({ key, kind, name, spans }) => ({ key, kind, name, spans })),
    usual,
    distance: ledger.guide.referenceDistance.value,
  };
  return {
    data,
    meters,
    without: INSTRUMENT_KINDS.filter((kind) => !meters.some((it) => it.kind === kind)).map((it) => KIND_WORDS[it]),
    standards: ledger.standards.map(standardRow),
  };
}

const lengthOf = ({ value, written }: { value: number; written: string }) => ({ cm: value, written });

function meterRow(id: string, kind: InstrumentKind, { data, calibrations }: QuantityEntry): MeterRow {
  return {
    key: `${kind}:${id}`,
    kind,
    id,
    name: data.name,
    reads: KIND_WORDS[kind],
    display: `${rangeWords(data)}, step ${data.resolution}`,
    spans: calibrations.map((it) => ({ date: it.date, due: calibrationDue(it) })),
  };
}

/** Day of the newest session that a meter read this kind in; empty where there is none. */
function lastUse(
  { panels }: Ledger,
  id: string,
  kind: InstrumentKind,
  usedIn: Ledger['instruments'][number]['usedIn'],
): string {
  const days = usedIn
    .filter(({ slug, date }) =>
      panels
        .get(slug)
        ?.sessions.some((it) => it.date === date && it.instruments.some((one) => one.kind === kind && one.id === id)),
    )
    .map((it) => it.date);
  return days.toSorted().at(-1) ?? '';
}

function standardRow({ id, data, instrument, unit, current }: Ledger['standards'][number]): StandardRow {
  const { limits } = current;
  return {
    id,
    name: data.name,
    how: `read with ${instrument.id}${data.distance ? ` from ${data.distance.written}` : ''}`,
    limits: limits && `${fixed(limits.lower, 2)} to ${fixed(limits.upper, 2)} ${unitSigns(unit)}`,
  };
}
