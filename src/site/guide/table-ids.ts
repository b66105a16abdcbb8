import { UNKNOWN_SIZE } from '../../content/rules/page-parts.ts';
import type { ClassTable, Conditions, Ledger, RankBasis } from '../../ledger/ledger.ts';
import { versionsAlike } from '../../measure/irradiance/bench-procedure.ts';

/** A class's name in addresses and on the page. */
export const classId = (sizeClass: ClassTable['sizeClass']) => sizeClass?.id ?? UNKNOWN_SIZE;

/** The same of a table: its class's where it is the first and measured as the guide does, else what sets it apart too. */
export function tableId(
  sizeClass: ClassTable['sizeClass'],
  { isReference, distance, methodVersion }: Conditions,
  index: number,
): string {
  if (index === 0 && isReference) return classId(sizeClass);
  return `${classId(sizeClass)}-${String(distance).replace('.', '-')}-cm-v${versionsAlike(methodVersion)[0]}`;
}

/** Parts of a page that ranks which stand or fall with the panels: classes, and their tables. */
export function rankingParts(ledger: Ledger, basis: RankBasis): string[] {
  const classes = basis === 'optical' ? ledger.classes : ledger.classesByEmitted;
  return classes.flatMap(({ sizeClass, groups, unranked }) => {
    const id = classId(sizeClass);
    const tables = groups.map(({ conditions }, index) => tableId(sizeClass, conditions, index));
    // Panels without a rank are listed in the first table of their class.
    if (unranked.length > 0) tables.push(id);
    return tables.length > 0 ? [...new Set([id, ...tables.map((it) => `table-${it}`)])] : [];
  });
}
