import { readFileSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { csvParse } from 'd3-dsv';
import { beforeAll, expect, test } from 'vitest';
import type { Ledger } from '../../../../src/ledger/ledger.ts';
import { metricById } from '../../../../src/measure/metrics.ts';
import { packageFiles } from '../../../../src/site/export/tables/package-files.ts';
import { demoLedger } from '../../../support/demo-ledger.ts';

/*
 * A reader who has the data package alone: SQLite reads its tables by the schemas beside them, and `derived.sql` works every
 * derived figure out anew. Nothing of the calculation layer takes part.
 */

interface Field {
  name: string;
  type: string;
}
interface Descriptor {
  conditions: {
    rates: Array<{ currency: string; rate: number }>;
    tariff: { price: number };
    mains_frequency: { value: number };
  };
  resources: Array<{ name: string; path: string; schema: { fields: Field[] } }>;
}

/** Reads a package as its descriptor says, from texts alone. */
function openPackage(read: (path: string) => string): DatabaseSync {
  const db = new DatabaseSync(':memory:');
  const { resources, conditions } = JSON.parse(read('datapackage.json')) as Descriptor;
  for (const { name, path, schema } of resources) {
    const { fields } = schema;
    db.exec(`CREATE TABLE ${name} (${fields.map((it) => `"${it.name}" ${typeOf(it)}`).join(', ')})`);
    const insert = db.prepare(`INSERT INTO ${name} VALUES (${fields.map(() => '?').join(', ')})`);
    for (const row of csvParse(read(path))) insert.run(...fields.map((it) => cellOf(it, row[it.name] ?? '')));
  }
  db.exec('CREATE TABLE rates (currency TEXT, rate REAL); CREATE TABLE conditions (tariff REAL, mains REAL)');
  const rate = db.prepare('INSERT INTO rates VALUES (?, ?)');
  for (const it of conditions.rates) rate.run(it.currency, it.rate);
  db.prepare('INSERT INTO conditions VALUES (?, ?)').run(conditions.tariff.price, conditions.mains_frequency.value);
  db.exec(readFileSync(new URL('derived.sql', import.meta.url), 'utf8'));
  return db;
}

const isNumber = ({ type }: Field) => type === 'number' || type === 'integer';
const typeOf = (field: Field) => (isNumber(field) ? 'REAL' : 'TEXT');
const cellOf = (field: Field, text: string) => (text === '' ? null : isNumber(field) ? Number(text) : text);

interface Compared {
  panel: string;
  session: string;
  metric: string;
  published: number;
  anew: number | null;
}

/** Each derived figure of the package beside what comes out anew. */
const COMPARED = `
  SELECT f.panel, f.session, f.metric, f.value AS published, d.value AS anew
  FROM figures f LEFT JOIN derived d ON d.panel = f.panel AND d.session = f.session AND d.metric = f.metric
  JOIN metrics m ON m.metric = f.metric
  WHERE coalesce(f.basis, m.basis) = 'derived' AND f.value IS NOT NULL AND f.session IS NOT NULL AND m.from_files = 'false'`;

/** A range of the infrared share between two readings is told as a bound; readings give its ends, not a value. */
const isRange = ({ metric }: Compared, bound: string | null) =>
  /^infrared-share-at-\d/.test(metric) && bound === 'below';

let ledger: Ledger;
let db: DatabaseSync;
let compared: Array<Compared & { bound: string | null }>;
beforeAll(() => {
  ledger = demoLedger().ledger;
  const files = new Map(packageFiles(ledger).map((it) => [it.path, it]));
  db = openPackage((path) => [...(files.get(`data/${path}`)?.text() ?? [])].join(''));
  compared = db.prepare(COMPARED.replace('d.value AS anew', 'd.value AS anew, f.bound')).all() as never;
});

test('every derived figure comes out again from the tables alone', () => {
  const own = compared.filter((it) => !isRange(it, it.bound));
  expect(own.length).toBeGreaterThan(400);
  const off = own.filter(
    ({ published, anew }) => anew === null || Math.abs(anew - published) > 1e-9 * Math.abs(published),
  );
  expect(off).toEqual([]);
});

test('what is left out is a range, and there are few', () => {
  const ranges = compared.filter((it) => isRange(it, it.bound));
  expect(ranges.length).toBeLessThan(compared.length / 10);
});

test('every metric that has a derived figure is among them', () => {
  const metrics = new Set(compared.map((it) => it.metric));
  const sessions = [...ledger.panels.values()]
    .filter((it) => it.data.status === 'published')
    .flatMap((it) => it.sessions);
  const derived = sessions
    .flatMap((it) => [...it.figures.values()])
    .filter((it) => 'basis' in it && it.basis === 'derived' && !metricById(it.metric).isOfFiles);
  expect([...metrics].toSorted()).toEqual([...new Set(derived.map((it) => it.metric))].toSorted());
});

test('a reading that is changed in the tables changes what comes out: nothing is copied', () => {
  db.exec("UPDATE readings SET value = value * 2 WHERE reading LIKE 'grid.rows%' AND panel = 'fennimarsh-reed'");
  const row = db.prepare(`${COMPARED} AND f.panel = 'fennimarsh-reed' AND f.metric = 'optical-power'`).get();
  expect(Number(row?.anew) / Number(row?.published)).toBeCloseTo(2, 9);
});
