import { methodById } from '../../../measure/methods.ts';
import { METRICS } from '../../../measure/metrics.ts';
import { dataUnit } from '../data-parts.ts';
import { figureKinds } from '../figure-kinds.ts';
import { REQUIRED, type Table } from './table.ts';

/** A row a metric: what figures are of, and where their method is explained. */
export const METRICS_TABLE: Table<'metrics'> = {
  name: 'metrics',
  title: 'Metrics and their methods',
  description:
    'What figures are of, each with its unit, its basis, its method in the version by which its figures were worked out, and that method’s formula.',
  fields: [
    { name: 'metric', type: 'string', description: 'As figures name it.', constraints: REQUIRED },
    { name: 'name', type: 'string', description: 'In words.', constraints: REQUIRED },
    { name: 'unit', type: 'string', description: 'Unit of its figures; 1 where it has none.', constraints: REQUIRED },
    {
      name: 'basis',
      type: 'string',
      description:
        'What its figures are, unless one says otherwise: measured, derived from readings by a formula, modelled, or claimed by the maker.',
      constraints: { ...REQUIRED, enum: ['measured', 'derived', 'modelled', 'claimed'] },
    },
    { name: 'method', type: 'string', description: 'Method that yields it.', constraints: REQUIRED },
    { name: 'method_version', type: 'integer', description: 'Version of today.', constraints: REQUIRED },
    { name: 'formula', type: 'string', description: 'Formula, in TeX; empty where a page explains it in words.' },
    {
      name: 'from_files',
      type: 'boolean',
      description: 'Worked out from a file that an instrument wrote; the readings alone do not give it.',
      constraints: REQUIRED,
    },
    { name: 'explained', type: 'string', description: 'Address of the method’s page.', constraints: REQUIRED },
  ],
  primaryKey: ['metric'],
  foreignKeys: [],
  *rows(ledger) {
    const { guide } = ledger;
    const kinds = figureKinds(ledger);
    const site = guide.site.replace(/\/$/, '');
    for (const { id, name, unit, method, isOfFiles = false } of METRICS) {
      const { version, formula } = methodById(method);
      const explained = `${site}/methods/${method}/`;
      const basis = kinds[id]?.basis ?? null;
      yield [id, name, dataUnit(unit, guide.currency), basis, method, version, formula ?? null, isOfFiles, explained];
    }
  },
};
