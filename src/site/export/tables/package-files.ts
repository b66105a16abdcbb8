import type { Ledger } from '../../../ledger/ledger.ts';
import { json, type PublishedFile } from '../published-file.ts';
import { dataPackage } from './data-package.ts';
import { TABLES, tablePath } from './index.ts';
import { tableCsv } from './table.ts';

/** The data package: its descriptor and its tables. */
export function packageFiles(ledger: Ledger): PublishedFile[] {
  return [
    json('data/datapackage.json', () => [JSON.stringify(dataPackage(ledger), undefined, 1)]),
    ...TABLES.map(
      (table): PublishedFile => ({
        path: `data/${tablePath(table)}`,
        type: 'text/csv',
        text: () => tableCsv(table, ledger),
        ...('ofPanels' in table && { isOfPanels: true }),
      }),
    ),
  ];
}
