import { addDays } from 'date-fns/addDays';
import { formatISO } from 'date-fns/formatISO';
import { parseISO } from 'date-fns/parseISO';
import { standardAnchor } from '../../content/rules/site-addresses.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import type { StandardEntry } from '../../ledger/standard-entry.ts';
import { isCode } from '../../measure/statement.ts';
import { fixed, showDate } from '../../words/format.ts';
import {
  chartDescription,
  chartValue,
  dayWords,
  driftCaveats,
  driftWords,
  heldWords,
  limitWordsOf,
  runWords,
} from '../../words/standard-words.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { type ControlDrawing, controlDrawings } from './control-drawing.ts';

/** A check standard as the page of instruments shows it. */
export interface StandardView {
  anchor: string;
  name: string;
  /** What it is, and from how far it is read. */
  about: string;
  note: string | undefined;
  /** The answer, in one line. */
  answer: string;
  /** What stands behind it, a sentence each. */
  more: string[];
  /** Why limits were restarted. */
  restarts: Array<{ date: string; reason: string }>;
  /** Days beyond the limits, with what the tester wrote of them. */
  beyond: Array<{ date: string; value: string; note: string | undefined }>;
  /** Sessions that are in doubt for them. */
  flagged: Array<{ name: string; date: string; address: string }>;
  unit: string;
  description: string;
  drawings: ControlDrawing[];
  rows: StandardRow[];
}

/** A day of the table behind the chart. */
export interface StandardRow {
  date: string;
  /** Mean of the day; undefined where every reading was struck out. */
  value: string | undefined;
  /** The readings as they were taken, those that were struck out with the reason. */
  readings: Array<{ text: string; struck: string | undefined }>;
  range: string | undefined;
  words: string[];
}

/** The check standards that an instrument reads. */
export function standardsOf(ledger: Ledger, instrument: string): StandardView[] {
  return ledger.standards.filter((it) => it.instrument.id === instrument).map((it) => viewOf(it, ledger));
}

function viewOf(entry: StandardEntry, ledger: Ledger): StandardView {
  const { data, stages, current, unit, days, usedUp, expectedSigma } = entry;
  const usedUpBy = usedUp && formatISO(addDays(parseISO(usedUp.calibrated), usedUp.days), { representation: 'date' });
  const from = data.distance ? `Read from ${data.distance.written}.` : '';
  const drift = driftWords(current, entry, stages.length > 1);
  const more = [
    limitWordsOf(current, entry, { first: data.limitsFrom, expectedSigma }),
    runWords(current),
    ...driftCaveats(current, usedUpBy),
  ].filter((it) => it !== undefined);
  return {
    anchor: standardAnchor(entry.id),
    name: data.name,
    about: [data.what, from].filter(Boolean).join(' '),
    note: data.note,
    answer: `${heldWords(stages)}; ${drift}.`,
    more,
    restarts: stages.slice(1).map((it) => ({ date: showDate(it.from), reason: it.reason ?? '' })),
    beyond: stages.flatMap((stage) =>
      stage.points
        .filter((it) => it.beyond)
        .map((it) => ({
          date: showDate(it.date),
          value: `${chartValue(it.value, stage)} ${unit}`,
          note: days.find((day) => day.date === it.date)?.note,
        })),
    ),
    flagged: flaggedSessions(entry, ledger),
    unit,
    description: chartDescription(data.name, stages, unit),
    drawings: controlDrawings(entry),
    rows: rowsOf(entry),
  };
}

function flaggedSessions({ id }: StandardEntry, { panels }: Ledger): StandardView['flagged'] {
  return [...panels.values()].flatMap(({ slug, name, sessions }) =>
    sessions
      .filter(({ flags }) => flags.some((it) => isCode(it.finding, 'standard-beyond-limits') && it.finding.id === id))
      .map(({ date }) => ({
        name,
        date: showDate(date),
        address: `${panelAddress(slug)}methodology/#session-${date}`,
      })),
  );
}

/** Newest first, as sessions are. */
function rowsOf({ days, stages }: StandardEntry): StandardRow[] {
  const points = new Map(
    stages.flatMap((stage) => stage.points.map((point) => [point.date, { stage, point }] as const)),
  );
  return days.toReversed().map(({ date, readings, note }): StandardRow => {
    const found = points.get(date);
    const range = found?.point.range;
    return {
      date: showDate(date),
      value: found && chartValue(found.point.value, found.stage),
      readings: readings.map(({ value, struck }) => ({ text: plain(value), struck })),
      range: found && range !== undefined ? chartValue(range, found.stage) : undefined,
      words: [...(found ? dayWords(found.point, found.stage) : []), ...(note === undefined ? [] : [note])],
    };
  });
}

/** A reading with the digits that it was written with. */
const plain = (value: number) => fixed(value, value.toString().split('.')[1]?.length ?? 0);
