import { addMonths } from 'date-fns/addMonths';
import { formatISO } from 'date-fns/formatISO';
import { parseISO } from 'date-fns/parseISO';
import { counted } from '../../content/read/problem-list.ts';
import type { Calibration } from '../../content/schema/instrument.ts';
import { showDate } from '../../words/format.ts';
import { wrapped } from '../ask/wrap.ts';
import type { NewCalibration } from './calibration-input.ts';
import type { CalibrationPlan, InstrumentRead, SessionUse } from './plan.ts';

/** More sessions than these are counted, and not named. */
const MOST_NAMED = 12;

/** What was, what will be, and which sessions it is of: in 80 columns. */
export function calibrationText({ data }: InstrumentRead, calibration: NewCalibration, plan: CalibrationPlan): string {
  const { before, after, concerned, kept } = plan;
  const { date } = calibration;
  const until = after ? ` and before ${showDate(after.date)}, the day of the next one` : '';
  return [
    `${data.name}, calibrated on ${showDate(date)}:`,
    '',
    ...rows(before, calibration, data.unit),
    '',
    concerned.length > 0
      ? wrapped(
          `It counts for ${counted(concerned.length, 'session')} of that day or later${until}, whose figures change with the next build:`,
        )
      : wrapped(`It counts for sessions from that day on${until}. There is none yet, so no figure changes.`),
    ...named(concerned),
    '',
    kept.length > 0
      ? wrapped(
          `It does not concern ${counted(kept.length, 'session')}, which ${kept.length === 1 ? 'keeps' : 'keep'} the calibration of ${kept.length === 1 ? 'its' : 'their'} day:`,
        )
      : 'No other session used this instrument.',
    ...named(kept),
  ].join('\n');
}

function rows(before: Calibration | undefined, now: NewCalibration, unit: string): string[] {
  const due = (it: { date: string; validMonths: number }) =>
    showDate(formatISO(addMonths(parseISO(it.date), it.validMonths), { representation: 'date' }));
  const table: Array<[name: string, then: string, now: string]> = [
    ['', before ? `of ${showDate(before.date)}` : 'none before', `of ${showDate(now.date)}`],
    ['holds until', before ? due(before) : '–', due(now)],
    ['relative', before ? `${before.relative} %` : '–', `${now.relative} %`],
    ['absolute', before ? `${before.absolute} ${unit}` : '–', `${now.absolute ?? 0} ${unit}`],
    ['coverage factor k', before ? String(before.coverageFactor) : '–', String(now.coverageFactor ?? 2)],
  ];
  const isSaid = ([name]: (typeof table)[number]) => name !== 'absolute' || Boolean(before?.absolute || now.absolute);
  return [
    ...table.filter(isSaid).map(([name, then, mine]) => `  ${name.padEnd(18)} ${then.padEnd(18)} ${mine}`.trimEnd()),
    wrapped(`reference          ${now.reference}`, 2),
  ];
}

function named(sessions: readonly SessionUse[]): string[] {
  const more = sessions.length - MOST_NAMED;
  return [
    ...sessions.slice(0, MOST_NAMED).map(({ panel, date }) => `  ${showDate(date).padEnd(12)} ${panel}`),
    ...(more > 0 ? [`  and ${counted(more, 'earlier session')}`] : []),
  ];
}
