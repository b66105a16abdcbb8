import { expect, test } from 'vitest';
import { individualsLimits } from '../../../src/measure/control/individuals-chart.ts';
import { standardsCsv, standardsData } from '../../../src/site/export/standards-data.ts';
import { demoLedger } from '../../support/demo-ledger.ts';
import { parseCsv } from '../../support/parse-csv.ts';

const { ledger } = demoLedger();

test('panels.json has each standard with its stages and every day', () => {
  const { 'bench-lamp': lamp } = standardsData(ledger) as Record<string, Record<string, never>>;
  expect(lamp).toMatchObject({
    name: 'Bench lamp',
    instrument: 'bench-thermopile',
    unit: 'mW/cm²',
    distance_cm: 20,
    near_days: 7,
    stages: [
      { from: '2024-11-19', reason: null, limits: { from_days: 8 } },
      { from: '2025-09-16', limits: { from_days: 8 }, drift: { degrees_of_freedom: 24 } },
    ],
  });
  const days = (lamp as unknown as { days: Array<{ date: string; value: number }> }).days;
  expect(days.find((it) => it.date === '2025-12-02')).toMatchObject({
    readings: [42, 41.7, 41.9],
    struck: [{ value: 38.6, reason: 'lamp on for ten minutes only' }],
  });
  expect(days.filter((it) => 'beyond' in it)).toMatchObject([{ date: '2025-10-21', value: 43, beyond: 'above' }]);
});

test('standards.csv has a line a reading, from which the limits can be worked out again', () => {
  const [heads = [], ...lines] = parseCsv([...standardsCsv(ledger)].join(''));
  const rows = lines.map((line) => Object.fromEntries(heads.map((head, i) => [head, line[i] ?? ''])));
  expect(rows).toHaveLength(35 * 3 + 1);
  expect(rows.filter((it) => it.struck !== '')).toMatchObject([{ value: '38.6', date: '2025-12-02' }]);
  const first = Map.groupBy(
    rows.filter((it) => it.struck === '' && (it.date ?? '') >= '2025-09-16'),
    (it) => it.date,
  );
  const means = [...first.values()]
    .slice(0, 8)
    .map((day) => day.reduce((sum, it) => sum + Number(it.value), 0) / day.length);
  const { lower, upper } = individualsLimits(means);
  expect(Number(rows.at(-1)?.lower_limit)).toBeCloseTo(lower, 6);
  expect(Number(rows.at(-1)?.upper_limit)).toBeCloseTo(upper, 6);
});
