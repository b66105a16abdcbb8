import { editContent } from '../../content/edit/edit-content.ts';
import type { Price } from '../../content/schema/panel.ts';
import { nearest } from '../../content/schema/suggest.ts';
import { type Answer, keyOf, type Slip } from '../ask/slips.ts';
import type { FileChange } from '../files/changes.ts';
import type { PanelFile } from '../files/panel-files.ts';
import { newestOf, newPrice, priceEdits, pricesIn } from './new-price.ts';
import type { PriceRow } from './price-row.ts';
import { type Before, priceSlips } from './price-slips.ts';

/** One row, and what would be written for it. */
export interface PlannedPrice extends Before {
  row: PriceRow;
  panel: PanelFile;
  price: Price;
  slips: Slip[];
}

/** What rows would do to a content folder. */
export interface Plan {
  planned: PlannedPrice[];
  /** Rows that have no panel, or no amount. */
  aside: Slip[];
  files: FileChange[];
}

/**
 * Works out what rows would do, each after those of earlier days.
 *
 * @param answers what has been decided of slips; rows that were left out are passed over
 * @param currency the guide's, for panels without a price
 * @throws EditError where a panel's file can't be read or changed
 */
export function planPrices(
  rows: readonly PriceRow[],
  panels: readonly PanelFile[],
  answers: ReadonlyMap<string, Answer>,
  currency: string,
): Plan {
  const isAlone = rows.length === 1;
  const plan: Plan = { planned: [], aside: [], files: [] };
  const texts = new Map<PanelFile, string>();
  for (const row of rows.toSorted((a, b) => a.date.localeCompare(b.date))) {
    const entry = isAlone ? undefined : row.place;
    const found = panelOf(row, panels, answers, entry);
    if ('slip' in found) {
      if (answers.get(keyOf(found.slip)) !== 'skip') plan.aside.push(found.slip);
      continue;
    }
    const { panel } = found;
    const text = texts.get(panel) ?? panel.text;
    const read = pricesIn(text, panel.path);
    const before: Before = {
      newest: newestOf(read.prices),
      same: read.prices.find((it) => it.date === row.date),
      earlier: newestOf(read.prices.filter((it) => it.date < row.date)),
    };
    const price = newPrice(
      row,
      { ...(before.newest && { newest: before.newest }), ...(before.same && { same: before.same }) },
      currency,
    );
    if (price.list === undefined && price.paid === undefined) {
      const slip: Slip = {
        id: 'no-price',
        entry,
        text: `${panel.name}: neither a paid price nor a list price (${row.place}).`,
        offer: undefined,
      };
      if (answers.get(keyOf(slip)) !== 'skip') plan.aside.push(slip);
      continue;
    }
    const edits = priceEdits(price, read);
    const slips =
      edits.length === 0 ? [nothingNew(panel, price, entry)] : slipsOf(row, price, before, panel.name, entry);
    if (slips.some((it) => answers.get(keyOf(it)) === 'skip')) continue;
    plan.planned.push({ ...before, row, panel, price, slips });
    texts.set(panel, editContent(text, panel.path, edits));
  }
  plan.files = [...texts].flatMap(([{ path, text: old }, after]) =>
    after === old ? [] : [{ path, before: old, after }],
  );
  return plan;
}

/** What a tester has asked to be confirmed is not asked about again. */
function slipsOf(row: PriceRow, price: Price, before: Before, name: string, entry: string | undefined): Slip[] {
  return priceSlips(price, before, { name, entry }).filter(({ id }) => !row.isConfirmed || id !== 'unchanged');
}

function nothingNew(panel: PanelFile, { date }: Price, entry: string | undefined): Slip {
  const text = `${panel.name}: just this price of ${date} is in the file already.`;
  return { id: 'unchanged', entry, text, offer: 'Go on without it?', together: 'Go on without these?' };
}

/** The panel that a row names: by its folder, by its full name, or by its model where one panel alone has it. */
function panelOf(
  { panel: asked, place }: PriceRow,
  panels: readonly PanelFile[],
  answers: ReadonlyMap<string, Answer>,
  entry: string | undefined,
): { panel: PanelFile } | { slip: Slip } {
  const isName = (name: string | undefined) => name?.toLowerCase() === asked.toLowerCase();
  const exact = panels.find(({ slug, name }) => isName(slug) || isName(name));
  const byModel = panels.filter(({ model }) => isName(model));
  const panel = exact ?? (byModel.length === 1 ? byModel[0] : undefined);
  if (panel) return { panel };
  const near = nearest(
    asked,
    panels.flatMap(({ slug, name, model }) => [slug, name, ...(model ? [model] : [])]),
  );
  const candidate = panels.find(({ slug, name, model }) => near && [slug, name, model].includes(near));
  const slip: Slip = {
    id: 'unknown-panel',
    entry,
    text: `There is no panel "${asked}" (${place})${candidate ? `; the nearest is ${candidate.name}, ${candidate.slug}.` : '.'}`,
    offer: candidate && `Take ${candidate.slug}?`,
  };
  return candidate && answers.get(keyOf(slip)) === 'accept' ? { panel: candidate } : { slip };
}
