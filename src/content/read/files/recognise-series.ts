import type { FileHead, Recognised } from './file-kind.ts';
import { cellValue, type DecimalSign } from './number-cell.ts';
import { tableHead } from './number-table.ts';
import { irradianceFactor, timeColumn, valueColumn } from './series-columns.ts';
import { cellsOf } from './table-form.ts';
import { encodingOf, headLines } from './text-lines.ts';

/** Kinds of logs that only the time from row to row and the head tell apart. */
export type SeriesKind = 'sweep' | 'warmUp' | 'waveform';

/** Longest time from row to row of a record of flicker, s: 500 a second would not show what mains lamps do. */
const FAST = 0.002;
/** Shortest of a warm-up log, s; a sweep has several readings a second. */
const SLOW = 0.9;

/** Words in a file's name or head that say what it is. */
const NAMES: Readonly<Record<SeriesKind, RegExp>> = {
  sweep: /sweep|grid|scan|max.?hold/i,
  warmUp: /warm.?up|cold|settl|burn.?in/i,
  waveform: /flicker|wave|scope|oscillo/i,
};

/** What a table of readings against time is taken for: by the time from row to row, and by what it is called. */
export function recogniseSeries(file: FileHead, kind: SeriesKind): Recognised | undefined {
  const isWhole = file.bytes.length === file.size;
  const head = tableHead(file.bytes, isWhole);
  if ('fault' in head) return undefined;
  const time = timeColumn(head, undefined);
  if ('fault' in time || time.kind === 'rate') return undefined;
  const value = valueColumn(head, time, {});
  if ('fault' in value) return undefined;
  const encoding = encodingOf(file.bytes);
  if (!encoding) return undefined;
  const rows = headLines(file.bytes, encoding, isWhole).slice(head.firstLine - 1);
  const form = head.columns[time.column]?.form ?? 'number';
  const times = rows.flatMap((it) => {
    const own = cellValue(cellsOf(it, head.separator)[time.column] ?? '', form, head.decimal as DecimalSign);
    return Number.isNaN(own) ? [] : [own * (time.kind === 'elapsed' ? time.factor : 1)];
  });
  const length = (times.at(-1) ?? 0) - (times[0] ?? 0);
  if (times.length < 5 || !(length > 0)) return undefined;
  const step = length / (times.length - 1);
  const fits = { sweep: step >= FAST && step < 2 * SLOW, warmUp: step >= SLOW / 9, waveform: step < FAST }[kind];
  const isOfLight = irradianceFactor(value.unit) !== undefined;
  if (!fits || (kind === 'sweep' && !isOfLight)) return undefined;
  const text = `${file.name} ${head.header.map((it) => it.text).join(' ')}`;
  const isCalled = NAMES[kind].test(text);
  const isOther = Object.entries(NAMES).some(([other, it]) => other !== kind && it.test(text));
  const bySteps = kind === 'waveform' ? 0.85 : kind === 'warmUp' && step >= SLOW ? 0.7 : 0.5;
  const unit = value.unit === '' ? 'no unit' : value.unit;
  return {
    confidence: isCalled ? 0.95 : isOther ? 0.2 : bySteps,
    understood: `${isWhole ? `${times.length} readings` : 'readings'} against time, ${stepWords(step)} apart, ${isOfLight || value.unit !== '' ? `in ${unit}` : 'without a unit'}`,
    ...(kind === 'sweep' && /grid/i.test(text) && { entry: { grid: true } }),
  };
}

function stepWords(step: number): string {
  if (step < 1e-3) return `${Number((step * 1e6).toPrecision(3))} µs`;
  return step < 1 ? `${Number((step * 1e3).toPrecision(3))} ms` : `${Number(step.toPrecision(3))} s`;
}
