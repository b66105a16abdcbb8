import { type FigureMap, isFigure } from '../../../measure/figure.ts';
import { isInDoubt } from '../../../measure/handed-on.ts';
import { METRICS } from '../../../measure/metrics.ts';
import { say } from '../../../words/say.ts';
import { dataUnit, figureNumbers, flagsData } from '../data-parts.ts';
import { type FigureKinds, figureKinds } from '../figure-kinds.ts';
import { isLeftOut } from '../figure-rows.ts';
import { type Cell, PANEL_FIELD, REQUIRED, type Table, TO_METRIC, TO_PANEL } from './table.ts';

/** A row a figure, or a gap with its reason. What figures of a metric have alike stands with the metric, not in each row. */
export const FIGURES_TABLE: Table<'figures'> = {
  name: 'figures',
  title: 'Figures',
  description:
    'Every figure of every session, in twelve digits, with its 95 % coverage interval; and every figure that could not be had, with the reason. The method and its version stand with the metric.',
  fields: [
    PANEL_FIELD,
    { name: 'session', type: 'date', description: 'Day of the session; none for a panel that was not on the bench.' },
    { name: 'metric', type: 'string', description: 'What it is a figure of.', constraints: REQUIRED },
    { name: 'value', type: 'number', description: 'The figure; empty where there is none, and reason says why.' },
    { name: 'unit', type: 'string', description: 'Its unit.' },
    {
      name: 'bound',
      type: 'string',
      description: 'The value is only a bound: it lies below or above it.',
      constraints: { enum: ['below', 'above'] },
    },
    { name: 'standard_uncertainty', type: 'number', description: 'Standard uncertainty, in the unit of the figure.' },
    { name: 'interval95_low', type: 'number', description: 'Lower end of the 95 % coverage interval.' },
    { name: 'interval95_high', type: 'number', description: 'Upper end of it.' },
    {
      name: 'basis',
      type: 'string',
      description: 'Measured, derived, modelled or claimed, where it is otherwise than the metric says.',
      constraints: { enum: ['measured', 'derived', 'modelled', 'claimed'] },
    },
    {
      name: 'in_doubt',
      type: 'boolean',
      description: 'A check has found what speaks against it; empty where none has.',
    },
    { name: 'flags', type: 'string', description: 'Those checks, parted by blanks; check@metric where handed on.' },
    { name: 'carried_over', type: 'string', description: 'Days of earlier sessions whose readings it rests on.' },
    { name: 'reason', type: 'string', description: 'Why there is no figure, or no uncertainty.' },
  ],
  primaryKey: [],
  foreignKeys: [TO_PANEL, TO_METRIC],
  ofPanels(ledger) {
    const { currency } = ledger.guide;
    const kinds = figureKinds(ledger);
    return {
      given: JSON.stringify(kinds),
      *rows({ slug, sessions, figures }) {
        if (sessions.length === 0) yield* figureCells(figures, slug, null, currency, kinds);
        for (const session of sessions) yield* figureCells(session.figures, slug, session.date, currency, kinds);
      },
    };
  },
};

function* figureCells(
  figures: FigureMap,
  slug: string,
  session: string | null,
  currency: string,
  kinds: FigureKinds,
): Generator<readonly Cell[]> {
  for (const metric of METRICS) {
    const { id } = metric;
    const it = figures.get(id);
    if (!it || isLeftOut(metric, it)) continue;
    if (!isFigure(it)) {
      yield [slug, session, id, ...Array<null>(10).fill(null), say(it.reason)];
      continue;
    }
    const { value, uncertainty, interval95 } = figureNumbers(it);
    const flags = flagsData(it).map(({ check, from }) => (from ? `${check}@${from}` : check));
    yield [
      slug,
      session,
      id,
      value,
      dataUnit(it.unit, currency),
      it.bound ?? null,
      uncertainty,
      interval95?.[0] ?? null,
      interval95?.[1] ?? null,
      it.basis === kinds[id]?.basis ? null : it.basis,
      isInDoubt(it) || null,
      [...new Set(flags)].join(' '),
      it.carriedOver?.from.join(' ') ?? null,
      it.uncertaintyAbsent ? say(it.uncertaintyAbsent) : null,
    ];
  }
}
