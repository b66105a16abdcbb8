import { csvFormatRow } from 'd3-dsv';
import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { type FigureMap, type FigureOrGap, isFigure } from '../../measure/figure.ts';
import { isInDoubt } from '../../measure/handed-on.ts';
import { METRICS, type Metric } from '../../measure/metrics.ts';
import { say } from '../../words/say.ts';
import { dataUnit, figureNumbers, harmless, publishedPanels } from './data-parts.ts';
import { isLeftOut } from './figure-rows.ts';
import type { PanelPiece, Piece } from './panel-piece.ts';

/** What stands before the figures. */
const OWN_COLUMNS = ['panel', 'maker', 'model', 'size_class', 'session', 'in_doubt', 'carried_over'] as const;

/** A bound as laboratories write it. */
const SIGNS = { below: '<', above: '>' } as const;

/**
 * `data/panels.csv`: a line a session, for spreadsheets; each figure in three columns, its value and both ends of its
 * 95 % interval. Where there is none its reason stands in the place of the value. All else that a figure has, and every
 * reading, is in the tables of the data package, a line each. In pieces, a panel each.
 */
export function* panelsCsv(ledger: Ledger): Generator<Piece> {
  const panels = publishedPanels(ledger);
  const { currency } = ledger.guide;
  const maps = panels.flatMap((panel) => benches(panel).map(({ figures }) => figures));
  const metrics = METRICS.filter((metric) =>
    maps.some((figures) => figures.has(metric.id) && !isLeftOut(metric, figures.get(metric.id))),
  );
  const names = metrics.flatMap(({ id, unit }) => {
    const inUnit = unit === '1' ? '' : ` [${dataUnit(unit, currency)}]`;
    return ['', ' low', ' high'].map((end) => `${id}${end}${inUnit}`);
  });
  yield `${csvFormatRow([...OWN_COLUMNS, ...names])}\n`;
  const given = metrics.map(({ id }) => id).join(' ');
  for (const panel of panels) {
    const line = (bench: Bench) => `${csvFormatRow(cells(panel, bench, metrics))}\n`;
    const piece: PanelPiece = { panel: panel.slug, given, toString: () => benches(panel).map(line).join('') };
    yield piece;
  }
}

/** What a line is of: a session, or a panel that was not on the bench. */
interface Bench {
  date: string;
  figures: FigureMap;
}

const benches = ({ sessions, figures }: PanelEntry): Bench[] =>
  sessions.length > 0 ? sessions.map((it) => ({ date: it.date, figures: it.figures })) : [{ date: '', figures }];

function cells({ slug, maker, data, sizeClass }: PanelEntry, { date, figures }: Bench, metrics: readonly Metric[]) {
  const here = metrics.flatMap((metric) => {
    const it = figures.get(metric.id);
    return it && !isLeftOut(metric, it) ? [it] : [];
  });
  const named = (isSo: (it: FigureOrGap) => boolean) =>
    here
      .filter(isSo)
      .map((it) => it.metric)
      .join(' ');
  return [
    slug,
    harmless(maker.name),
    harmless(data.model),
    sizeClass?.id ?? '',
    date,
    named((it) => isFigure(it) && isInDoubt(it)),
    named((it) => isFigure(it) && it.carriedOver !== undefined),
    ...metrics.flatMap((metric) => {
      const it = figures.get(metric.id);
      return it ? numbers(it) : ['', '', ''];
    }),
  ];
}

/** A figure's three cells. */
function numbers(it: FigureOrGap): [value: string, low: string, high: string] {
  if (!isFigure(it)) return [harmless(say(it.reason)), '', ''];
  const { value, interval95 } = figureNumbers(it);
  const [low = '', high = ''] = interval95?.map(String) ?? [];
  return [`${it.bound ? SIGNS[it.bound] : ''}${value}`, low, high];
}
