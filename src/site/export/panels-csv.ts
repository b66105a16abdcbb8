import { csvFormatBody, csvFormatRow } from 'd3-dsv';
import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { isFigure } from '../../measure/figure.ts';
import { METRICS } from '../../measure/metrics.ts';
import { methodOf } from '../../words/format.ts';
import { say } from '../../words/say.ts';
import { rawReadings } from '../calculation/raw-readings.ts';
import { dataUnit, figureNumbers, flagsData, harmless, publishedPanels } from './data-parts.ts';
import { isLeftOut } from './figure-rows.ts';

const COLUMNS = [
  'kind',
  'panel',
  'session',
  'metric',
  'value',
  'unit',
  'bound',
  'standard_uncertainty',
  'interval95_low',
  'interval95_high',
  'basis',
  'method',
  'method_version',
  'written',
  'struck',
  'reason',
  'flags',
  'carried_over',
] as const;

type CsvRow = Partial<Record<(typeof COLUMNS)[number], string | number | null>>;

/** `data/panels.csv`: what `panels.json` has, one figure or raw reading a line; in pieces too. */
export function* panelsCsv(ledger: Ledger): Generator<string> {
  yield `${csvFormatRow([...COLUMNS])}\n`;
  for (const panel of publishedPanels(ledger)) {
    const rows = csvRows(panel, ledger.guide.currency);
    if (rows.length > 0) yield `${csvFormatBody(rows, [...COLUMNS])}\n`;
  }
}

function csvRows(panel: PanelEntry, currency: string): CsvRow[] {
  const figures = (from: PanelEntry['figures'], session: string): CsvRow[] =>
    METRICS.flatMap((metric): CsvRow[] => {
      const it = from.get(metric.id);
      if (!it || isLeftOut(metric, it)) return [];
      const base = { kind: 'figure', panel: panel.slug, session, metric: metric.id };
      if (!isFigure(it)) return [{ ...base, reason: say(it.reason) }];
      const method = methodOf(it);
      const { value, uncertainty, interval95 } = figureNumbers(it);
      return [
        {
          ...base,
          value,
          unit: dataUnit(it.unit, currency),
          bound: it.bound ?? '',
          standard_uncertainty: uncertainty,
          interval95_low: interval95?.[0] ?? null,
          interval95_high: interval95?.[1] ?? null,
          basis: it.basis,
          method: method.id,
          method_version: method.version,
          reason: it.uncertaintyAbsent ? say(it.uncertaintyAbsent) : '',
          flags: [...new Set(flagsData(it).map(({ check, from }) => (from ? `${check}@${from}` : check)))].join(' '),
          carried_over: [
            ...(it.carriedOver?.from ?? []),
            ...(it.carriedOver?.isWhole === false ? ['in part'] : []),
          ].join(' '),
        },
      ];
    });
  const sessions = panel.sessions.flatMap((session) => [
    ...figures(session.figures, session.date),
    ...rawReadings(session).map(
      (it): CsvRow => ({
        kind: 'reading',
        panel: panel.slug,
        session: session.date,
        metric: it.path,
        value: it.value ?? null,
        unit: it.unit ?? '',
        bound: it.bound ?? '',
        written: harmless(it.written),
        struck: harmless(it.struck ?? ''),
      }),
    ),
  ]);
  return panel.sessions.length > 0 ? sessions : figures(panel.figures, '');
}
