import { CORRECTIONS_TABLE } from './corrections-table.ts';
import { FIGURES_TABLE } from './figures-table.ts';
import { METRICS_TABLE } from './metrics-table.ts';
import { PANELS_TABLE } from './panels-table.ts';
import { PRICES_TABLE } from './prices-table.ts';
import { READINGS_TABLE } from './readings-table.ts';
import { CARRIED_TABLE, METERS_TABLE, SESSIONS_TABLE } from './sessions-table.ts';
import type { Table } from './table.ts';

/** The tables of the data package, what others lead to first. */
export const TABLES: readonly Table[] = [
  PANELS_TABLE,
  SESSIONS_TABLE,
  METRICS_TABLE,
  FIGURES_TABLE,
  READINGS_TABLE,
  PRICES_TABLE,
  CARRIED_TABLE,
  METERS_TABLE,
  CORRECTIONS_TABLE,
];

/** Address of a table, below `/data/`. */
export const tablePath = ({ name }: Pick<Table, 'name'>) => `tables/${name}.csv`;
