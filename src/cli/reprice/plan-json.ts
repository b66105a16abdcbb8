import type { Price } from '../../content/schema/panel.ts';
import type { Plan } from './plan.ts';
import { changeOf } from './price-table.ts';

/** One price as `reprice --json` gives it; every key is always there. */
export interface JsonPrice {
  panel: string;
  file: string;
  /** The price of that day that was replaced, or else the one before it; null for a first one. */
  before: Price | null;
  after: Price;
  /** In % of what was paid before, or of the list price where one of the two was not; null where there is nothing to compare. */
  change: number | null;
  /** True where a price of the same day was there. */
  replaced: boolean;
  written: boolean;
}

/** What was written, or would be. */
export function planJson({ planned }: Plan, folder: string, isWritten: boolean): JsonPrice[] {
  return planned.map(({ panel, price, same, earlier }) => ({
    panel: panel.slug,
    file: `${folder}/${panel.path}`,
    before: same ?? earlier ?? null,
    after: price,
    change: changeOf(same ?? earlier, price) ?? null,
    replaced: same !== undefined,
    written: isWritten,
  }));
}
