import type { SessionEntry } from '../../ledger/ledger.ts';
import type { BudgetComponent, Figure } from '../../measure/figure.ts';
import type { StatementOf } from '../../measure/statement.ts';
import { showDate, unitSigns } from '../../words/format.ts';
import { say } from '../../words/say.ts';
import { statedUncertainty } from '../../words/stated-uncertainty.ts';

/** An instrument of a session with the errors that are its own. */
export interface InstrumentRow {
  kind: string;
  id: string;
  name: string;
  calibrated: string;
  due: string;
  isOverdue: boolean;
  uncertainty: string;
  /** How its readings scatter, and how that is known; empty where it is not. */
  scatter: string;
}

/** Errors that were come by in one way. */
export interface ErrorRow {
  what: string[];
  type: 'A' | 'B';
  evaluation: string;
}

type Source = BudgetComponent['source'];

/** The errors of some figures, each once: as the last of them has it. */
export function sourcesOf(figures: readonly Figure[]): Source[] {
  const byKey = new Map<string, Source>();
  for (const { budget } of figures) for (const { source } of budget) byKey.set(source.key, source);
  return [...byKey.values()];
}

/** What the key of a reading's error has before the error: the reading. */
const readingOf = ({ key }: Source) => key.slice(0, key.lastIndexOf('/'));

/** The instruments of a session itself, without those of what it carries over, and what the errors of their readings say of their scatter. */
export function instrumentRows({ instruments, date }: SessionEntry, sources: readonly Source[]): InstrumentRow[] {
  const byReading = new Map(
    sources.flatMap((it) => (it.what.code === 'resolution' ? [[readingOf(it), it.what.instrument] as const] : [])),
  );
  const scatter = new Map<string, string>();
  for (const it of sources) {
    const instrument = byReading.get(readingOf(it));
    if (it.evaluation.code === 'repeatability-as-stated' && instrument !== undefined)
      scatter.set(instrument, scatterText(it.evaluation));
  }
  const own = instruments.filter((it) => it.readOn === date);
  return own.map(({ kind, id, name, calibration, unit }) => ({
    kind,
    id,
    name,
    calibrated: calibration ? showDate(calibration.date) : 'not before the session',
    due: calibration ? showDate(calibration.due) : '',
    isOverdue: calibration !== undefined && calibration.due < date,
    uncertainty: calibration ? statedUncertainty({ ...calibration, unit: unitSigns(unit) }) : 'not known',
    scatter: [...scatter].find(([of]) => of.toLowerCase() === name.toLowerCase())?.[1] ?? '',
  }));
}

const scatterText = (it: StatementOf<'repeatability-as-stated'>) =>
  'decibels' in it ? `${it.decibels} dB` : `${Number((100 * it.relative).toPrecision(2))} %`;

/** What the table of instruments says already. */
const OF_INSTRUMENT: ReadonlySet<string> = new Set([
  'calibration-as-stated',
  'offset-as-stated',
  'repeatability-as-stated',
]);

/** What is said of a mean's resolution holds for one reading's too. */
const OF_RESOLUTION: ReadonlySet<string> = new Set(['half-step', 'half-step-each']);

/** All other errors, those that were come by in one way together. */
export function errorRows(sources: readonly Source[]): ErrorRow[] {
  const rows = new Map<string, ErrorRow>();
  const isAveraged = sources.some((it) => it.evaluation.code === 'half-step-averaged');
  for (const { what, type, evaluation } of sources) {
    if (isAveraged && OF_RESOLUTION.has(evaluation.code)) continue;
    if (OF_INSTRUMENT.has(evaluation.code)) continue;
    const words = say(evaluation);
    const name = what.code === 'resolution' ? 'Resolution' : say(what);
    const row = rows.get(`${type}${words}`) ?? { what: [], type, evaluation: words };
    if (!row.what.includes(name)) row.what.push(name);
    rows.set(`${type}${words}`, row);
  }
  return [...rows.values()];
}
