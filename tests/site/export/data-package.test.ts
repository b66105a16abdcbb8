import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { csvParse } from 'd3-dsv';
import { Package } from 'datapackage';
import { Table } from 'tableschema';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeFiles } from '../../../src/build/write-files.ts';
import type { Ledger } from '../../../src/ledger/ledger.ts';
import { type FigureMap, isFigure } from '../../../src/measure/figure.ts';
import { METRICS } from '../../../src/measure/metrics.ts';
import { isLeftOut } from '../../../src/site/export/figure-rows.ts';
import { packageName } from '../../../src/site/export/tables/data-package.ts';
import { packageFiles } from '../../../src/site/export/tables/package-files.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

let ledger: Ledger;
let folder: string;
beforeAll(async () => {
  ledger = demoLedger().ledger;
  folder = mkdtempSync(join(tmpdir(), 'package-'));
  const own = packageFiles(ledger);
  await writeFiles(own, folder);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('a general validator takes the package, and every table row by row with its keys', async () => {
  // Frictionless’ own libraries, profile of version 1 of the specification.
  const pack = await Package.load(join(folder, 'data/datapackage.json'), { strict: true });
  expect(pack.errors).toEqual([]);
  expect(pack.resourceNames).toEqual([
    'panels',
    'sessions',
    'metrics',
    'figures',
    'readings',
    'prices',
    'carried',
    'meters',
    'corrections',
  ]);
  for (const resource of pack.resources) {
    expect(await resource.checkRelations(), resource.name).toBe(true);
    const rows = await resource.read({ keyed: true });
    expect(rows.length, resource.name).toBeGreaterThan(0);
  }
});

test('the validator refuses a table that is not what its schema says', async () => {
  const pack = await Package.load(join(folder, 'data/datapackage.json'), { strict: true });
  const { schema } = pack.getResource('sessions').descriptor;
  const head = schema.fields.map((it: { name: string }) => it.name);
  const good = ['fennimarsh-reed', '2026-10-13', 'true', '2', '15.24', 'true', '2100', '20'];
  const read = async (row: string[]) => (await Table.load([head, row], { schema })).read();
  await expect(read(good)).resolves.toHaveLength(1);
  await expect(read(good.with(4, 'six inches'))).rejects.toThrow();
  await expect(read(good.with(1, 'last autumn'))).rejects.toThrow();
  await expect(read(good.with(0, ''))).rejects.toThrow();
});

/** All but what only a file of the bench could have given, where there was none. */
const toldOf = (figures: FigureMap) =>
  METRICS.flatMap((metric) => {
    const it = figures.get(metric.id);
    return it && !isLeftOut(metric, it) ? [it] : [];
  });

test('no figure and no gap of a published panel is missing, and none is there twice', () => {
  const rows = csvParse(textOf('figures'));
  const key = (it: { panel?: string; session?: string; metric?: string }) => `${it.panel}/${it.session}/${it.metric}`;
  const keys = rows.map(key);
  expect(new Set(keys).size).toBe(keys.length);
  const wanted = [...ledger.panels.values()]
    .filter((it) => it.data.status === 'published')
    .flatMap(({ slug, sessions, figures }) =>
      sessions.length === 0
        ? toldOf(figures).map((it) => ({ of: `${slug}//${it.metric}`, it }))
        : sessions.flatMap((session) =>
            toldOf(session.figures).map((it) => ({ of: `${slug}/${session.date}/${it.metric}`, it })),
          ),
    );
  expect(keys.toSorted()).toEqual(wanted.map((it) => it.of).toSorted());
  const byKey = new Map(rows.map((it) => [key(it), it]));
  for (const { of, it } of wanted) {
    const row = byKey.get(of);
    if (isFigure(it)) expect(Number(row?.value), of).toBe(Number(it.value.toPrecision(12)));
    else expect(row?.reason, of).not.toBe('');
  }
});

test('a title becomes a name that the specification takes', () => {
  expect(packageName('The Curlew Strand panel ledger')).toBe('the-curlew-strand-panel-ledger');
  expect(packageName('Ledger für Lampen (2026)')).toBe('ledger-fu-r-lampen-2026');
  expect(packageName('灯')).toBe('guide');
});

function textOf(table: string): string {
  const file = packageFiles(ledger).find((it) => it.path === `data/tables/${table}.csv`);
  return [...(file?.text() ?? [])].join('');
}
