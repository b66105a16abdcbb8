import type { ClassTable, Ledger, PanelEntry } from './ledger.ts';

/** The panels that are ranked together. */
export type RankedTogether = ClassTable['groups'][number]['panels'];

/**
 * A function that tells of a panel what follows from where it stands among those ranked with it. It is worked out for all
 * panels when one is first asked for: a class would be searched for each of its panels.
 *
 * @param within what there is to tell of the panels of one ranking; of one of which there is nothing, undefined is told
 */
export function amongRanked<T>(within: (panels: RankedTogether) => Iterable<readonly [PanelEntry, T]>) {
  const known = new WeakMap<Ledger['classes'], ReadonlyMap<PanelEntry, T>>();
  return (panel: PanelEntry, { classes }: Ledger): T | undefined => {
    const all =
      known.get(classes) ?? new Map(classes.flatMap((it) => it.groups.flatMap((group) => [...within(group.panels)])));
    known.set(classes, all);
    return all.get(panel);
  };
}
