import type { CorrectedValue } from '../../../ledger/corrections.ts';
import { correctedCell, publicCorrections } from '../corrections-data.ts';
import { harmless, short } from '../data-parts.ts';
import { type Cell, REQUIRED, type Table } from './table.ts';

/** A row a figure, or a text, that was corrected. */
export const CORRECTIONS_TABLE: Table<'corrections'> = {
  name: 'corrections',
  title: 'Corrections',
  description:
    'What was published wrong, what is right, and why; a row for each figure that was corrected or moved with it.',
  fields: [
    { name: 'correction', type: 'string', description: 'Its anchor on the page of changes.', constraints: REQUIRED },
    { name: 'date', type: 'date', description: 'Day of the correction.', constraints: REQUIRED },
    { name: 'panel', type: 'string', description: 'The panel that it is of; a withdrawn one has no row in panels.' },
    { name: 'session', type: 'date', description: 'Day of the session whose figure it is.' },
    { name: 'method', type: 'string', description: 'The method that it is of.' },
    { name: 'metric', type: 'string', description: 'The figure; empty where a text was wrong.' },
    { name: 'from', type: 'string', description: 'What stood there: a number in the figure’s unit, or words.' },
    { name: 'from_low', type: 'number', description: 'Lower end of its 95 % interval, where that is known.' },
    { name: 'from_high', type: 'number', description: 'Upper end.' },
    { name: 'to', type: 'string', description: 'What stood there since; empty where there was no figure any more.' },
    { name: 'to_low', type: 'number', description: 'Lower end of its 95 % interval, where that is known.' },
    { name: 'to_high', type: 'number', description: 'Upper end.' },
    { name: 'why', type: 'string', description: 'How it came about.', constraints: REQUIRED },
  ],
  primaryKey: [],
  foreignKeys: [],
  *rows(ledger) {
    for (const { id, date, panel, session, method, from, to, figures, why } of publicCorrections(ledger)) {
      const moved = figures.length > 0 ? figures : [{ metric: null, from, to }];
      for (const it of moved) {
        yield [
          id,
          date,
          panel ?? null,
          session ?? null,
          method ?? null,
          it.metric,
          ...cellsOf(it.from),
          ...cellsOf(it.to),
          harmless(why),
        ];
      }
    }
  },
};

function cellsOf(it: CorrectedValue): [Cell, Cell, Cell] {
  const ends = typeof it === 'object' && it?.interval95;
  const cell = correctedCell(it);
  return [
    typeof cell === 'string' ? harmless(cell) : cell,
    ...(ends ? ([short(ends[0]), short(ends[1])] as const) : ([null, null] as const)),
  ];
}
