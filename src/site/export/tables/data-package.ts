import type { Ledger } from '../../../ledger/ledger.ts';
import { siteAddress } from '../../shared/site-address.ts';
import { publishedPanels } from '../data-parts.ts';
import { TABLES, tablePath } from './index.ts';
import type { Field, Table } from './table.ts';

/**
 * `data/datapackage.json`: what the tables are, for programs that read Frictionless Data Packages (version 1 of the
 * specification, which validators of both versions take). With them stands what figures were worked out by and no
 * table has: the tariff, the rates, the mains' frequency. It carries the day it was built for as its version, and no
 * time of its making.
 */
export function dataPackage(ledger: Ledger): Record<string, unknown> {
  const { guide, today } = ledger;
  return {
    profile: 'tabular-data-package',
    name: packageName(guide.title),
    id: siteAddress('/data/datapackage.json', guide.site),
    title: guide.title,
    description: guide.about,
    homepage: guide.site,
    version: today,
    ...(guide.licence && {
      licenses: [{ name: guide.licence.id, title: guide.licence.title, path: guide.licence.link }],
    }),
    contributors: [{ title: guide.publisher, role: 'publisher' }],
    conditions: {
      currency: guide.currency,
      rates: guide.rates.map(({ currency, rate, date }) => ({ currency, rate, date })),
      tariff: { price: guide.tariff.price, unit: `${guide.currency}/kWh`, date: guide.tariff.date },
      reference_distance: { value: guide.referenceDistance.value, unit: 'cm' },
      method_version: guide.methodVersion,
      mains_frequency: { value: guide.mainsFrequency, unit: 'Hz' },
      panels: publishedPanels(ledger).length,
    },
    resources: TABLES.map(resourceOf),
  };
}

/** A name as the specification wants it: lower-case letters, digits, dots, hyphens. */
export const packageName = (title: string): string =>
  title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '') || 'guide';

function resourceOf(table: Table) {
  const { name, title, description, fields, primaryKey, foreignKeys } = table;
  return {
    profile: 'tabular-data-resource',
    name,
    title,
    description,
    path: tablePath(table),
    format: 'csv',
    mediatype: 'text/csv',
    encoding: 'utf-8',
    schema: {
      fields: fields.map(fieldOf),
      missingValues: [''],
      ...(primaryKey.length > 0 && { primaryKey }),
      ...(foreignKeys.length > 0 && {
        foreignKeys: foreignKeys.map(({ fields: own, table: resource, to }) => ({
          fields: own,
          reference: { resource, fields: to },
        })),
      }),
    },
  };
}

function fieldOf({ name, type, description, unit, constraints }: Field) {
  return { name, type, description, ...(unit && { unit }), ...(constraints && { constraints }) };
}
