/** The guide's page: sorts and narrows its tables, calculates with other prices, and keeps all of it in the address. */

import { afterPaint } from '../../shared/browser/after-paint.ts';
import {
  type GuideState,
  type Known,
  plainNumber,
  readAddress,
  SETS,
  type SetName,
  writeAddress,
} from './guide-address.ts';
import { type Filtered, type FilterRow, filterNames, RowFilter } from './guide-filter.ts';
import type { PackedOffers } from './offers.ts';
import type { OwnPrices } from './own-prices.ts';
import { decodeRow, PRICE_FILTER } from './row-data.ts';
import { SortableTable } from './sortable-table.ts';

type Calculator = typeof import('./own-prices.ts');
type Painter = typeof import('./own-price-cells.ts');
type BudgetPainter = typeof import('./budget-answer.ts');

const tables = [...document.querySelectorAll<HTMLTableElement>('table[data-sortable]')].map((element) => ({
  element,
  sortable: new SortableTable(element),
}));
const tools = document.querySelector<HTMLFormElement>('#guide-tools');
if (tools) start(tools);

function start(form: HTMLFormElement): void {
  /** Asks what can be spent, where a page asks it; of the tools, but at the head of the page. */
  const ask = document.querySelector<HTMLFormElement>('#ask');
  const fields = () =>
    [form, ...(ask ? [ask] : [])].flatMap((it) => [...it.querySelectorAll<HTMLInputElement>('input[name]')]);
  const find = <T extends HTMLElement>(selector: string) => form.querySelector<T>(selector) as T;
  const status = { ignored: find('[data-ignored]'), count: find('[data-count]'), own: find('[data-own-status]') };
  const ranges = form.dataset.ranges?.split(' ') ?? [];
  const filters = filterNames(ranges);
  const rows = tables.flatMap(({ element, sortable }) =>
    sortable.rows.map(
      (row): FilterRow => ({ ...decodeRow(row.dataset.f ?? '', ranges), sizeClass: element.dataset.class ?? '' }),
    ),
  );
  const filter = new RowFilter(rows, ranges);
  const values = (name: string) =>
    [...form.querySelectorAll<HTMLInputElement>(`input[name="${name}"]`)].map((it) => it.value);
  const known: Known = {
    ranges,
    sets: { class: values('class'), maker: values('maker'), nm: values('nm'), flicker: values('flicker') },
    panels: rows.map((it) => it.slug),
    tables: tables.map((it) => it.sortable.id),
    columns: [...document.querySelectorAll<HTMLElement>('th[data-col]')].map((it) => it.dataset.col ?? ''),
  };
  let state: GuideState = readAddress('', known).state;

  /** The form's fields as a state; own prices and sorting are kept beside it. */
  const read = (): GuideState => {
    const search = new URLSearchParams();
    for (const { name, value, type, checked } of fields())
      if (type !== 'checkbox' || checked) search.append(name, value);
    const { state: found } = readAddress(`?${search}`, known);
    // What no field of this page asks for is carried on.
    const spend = !ask && state.spend !== undefined ? { spend: state.spend } : {};
    return { ...found, ...spend, own: state.own, sorts: state.sorts };
  };
  const fill = () => {
    const wanted = new URLSearchParams(writeAddress(state, known));
    for (const field of fields()) {
      const own = wanted.getAll(field.name);
      if (field.type === 'checkbox') field.checked = own.includes(field.value);
      else if (document.activeElement !== field || own[0] !== undefined) field.value = own[0] ?? '';
    }
  };
  const writeNow = (isNew: boolean) => {
    const next = `${location.pathname}${writeAddress(state, known)}${location.hash}`;
    if (next === `${location.pathname}${location.search}${location.hash}`) return;
    history[isNew ? 'pushState' : 'replaceState'](null, '', next);
  };
  let isNewAddress = false;
  /** Browsers take a while over a new address, down to drawing the page's icon anew: the rows are painted first. */
  const address = (isNew: boolean) => {
    isNewAddress ||= isNew;
    writing.plan();
  };
  const writing = afterPaint(() => {
    writeNow(isNewAddress);
    isNewAddress = false;
  });

  const showFilters = (filtered: Filtered) => {
    let at = 0;
    const isNarrowed = filtered.count < rows.length;
    for (const { sortable } of tables) {
      const end = at + sortable.rows.length;
      sortable.narrow(isNarrowed ? filtered.isLeft.subarray(at, end) : undefined);
      at = end;
    }
    status.count.textContent = `${filtered.count} of ${rows.length} ranked panels ${isNarrowed ? 'are left by the filters' : 'shown'}.`;
  };
  /** Counts are for reading, not for the paint that a reader waits for. */
  const showCounts = (filtered: Filtered) => {
    for (const name of filters) {
      const field = form.querySelector(`[data-without="${name}"]`);
      if (!field) continue;
      const isSet = isFilterSet(state, name);
      field.textContent = isSet ? `leaves ${filtered.count} of ${filtered.without.get(name)}` : `${filtered.count} now`;
    }
    for (const field of form.querySelectorAll<HTMLElement>('[data-by]')) {
      const name = field.dataset.by as SetName | 'claims';
      field.textContent = `(${filter.leftBy(name, field.dataset.value ?? '', state)})`;
    }
  };
  let filtered: Filtered;
  const counting = afterPaint(() => showCounts(filtered));
  const narrow = () => {
    filtered = filter.apply(state);
    showFilters(filtered);
    counting.plan();
  };

  let loading:
    | Promise<{ calculator: Calculator; painter: Painter; budget: BudgetPainter; offers: PackedOffers }>
    | undefined;
  const load = () => {
    loading ??= (async () => {
      const [calculator, painter, budget] = await Promise.all([
        import('./own-prices.ts'),
        import('./own-price-cells.ts'),
        import('./budget-answer.ts'),
      ]);
      return { calculator, painter, budget, offers: await calculator.loadOffers() };
    })();
    return loading;
  };
  let isCalculated = false;
  const calculateNow = async () => {
    const prices: OwnPrices = { own: state.own, extra: state.extra ?? 0 };
    const isWanted = state.own.size > 0 || (state.extra ?? 0) > 0;
    if (!isWanted && !isCalculated && state.spend === undefined) {
      void loading?.then(({ budget }) => budget.clearAnswer());
      return showOwn(undefined);
    }
    try {
      const { calculator, painter, budget, offers } = await load();
      const calculation = calculator.calculate(offers, prices);
      if (isWanted || isCalculated) {
        const shown = isWanted ? calculation : undefined;
        const painted = tables.map((it) => ({ element: it.element, rows: it.sortable.rows }));
        painter.paintTables(painted, shown);
        painter.paintFrontier(shown, offers);
        for (const { sortable } of tables) sortable.refresh();
        isCalculated = isWanted;
        // A filter on the price goes by the price that the reader has.
        for (const row of rows) {
          const own = calculation.panels.get(row.slug)?.price;
          if (own !== undefined) row.numbers = { ...row.numbers, [PRICE_FILTER]: own };
        }
        narrow();
      }
      if (ask) budget.paintAnswer(offers, prices, state.spend);
      showOwn(offers, (slug) => painter.stepUpWords(offers, prices, slug));
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      status.own.textContent = `Other prices can’t be used now: ${reason}.`;
      const answer = document.querySelector('[data-spend-answer]');
      if (answer && state.spend !== undefined) answer.textContent = `No answer now: ${reason}.`;
    }
  };
  const showOwn = (offers: PackedOffers | undefined, stepUps?: (slug: string) => Array<Node | string>) => {
    const list = find('[data-own-list]');
    list.replaceChildren(
      ...[...state.own].map(([slug, price]) => {
        const item = document.createElement('li');
        const offer = offers?.panels.find((it) => it.slug === slug);
        const remove = document.createElement('button');
        remove.type = 'button';
        remove.textContent = 'Remove';
        remove.setAttribute('aria-label', `Remove your price of ${offer?.name ?? slug}`);
        remove.addEventListener('click', () => setOwn(slug, undefined));
        item.append(
          `${offer?.name ?? slug}: ${price} ${offers?.currency ?? ''} (the guide: ${offer?.price ?? '–'}). `,
          ...(stepUps?.(slug) ?? []),
          ' ',
          remove,
        );
        return item;
      }),
    );
    const isWanted = state.own.size > 0 || (state.extra ?? 0) > 0;
    find('[data-own-reset]').hidden = !isWanted;
    status.own.textContent = isWanted
      ? 'Prices, prices per watt, ranks and the frontier are yours now, and say so.'
      : '';
  };
  const setOwn = (slug: string, price: number | undefined) => {
    const own = new Map(state.own);
    if (price === undefined) own.delete(slug);
    else own.set(slug, price);
    state = { ...state, own };
    address(true);
    void calculateNow();
  };

  const apply = (search: string) => {
    const found = readAddress(search, known);
    state = found.state;
    status.ignored.textContent = found.ignored;
    fill();
    for (const { sortable } of tables) sortable.sort(state.sorts.get(sortable.id));
    narrow();
    for (const part of form.querySelectorAll<HTMLDetailsElement>('details'))
      part.open ||= isInUse(state, part.dataset.part, filters);
    void calculateNow();
  };
  const follow = (isNew: boolean) => {
    const before = state;
    state = read();
    narrow();
    address(isNew);
    if (before.spend !== state.spend || before.extra !== state.extra) void calculateNow();
  };

  for (const { sortable } of tables) {
    sortable.onSort = (sorting) => {
      state = { ...state, sorts: new Map(state.sorts).set(sortable.id, sorting) };
      address(true);
    };
  }
  // Typing in one field is one step back, however many letters it takes.
  let typedIn: EventTarget | null = null;
  const onInput = (event: Event) => {
    const isTyping = event.target instanceof HTMLInputElement && event.target.type !== 'checkbox';
    follow(!isTyping || typedIn !== event.target);
    typedIn = isTyping ? event.target : null;
  };
  for (const it of ask ? [form, ask] : [form]) {
    it.addEventListener('submit', (event) => event.preventDefault());
    it.addEventListener('input', onInput);
  }
  // What the answer needs is there by the time that a sum is written.
  ask?.addEventListener('focusin', () => void load().catch(() => undefined), { once: true });
  ask?.addEventListener('reset', () => {
    const { spend: _, ...rest } = state;
    state = rest;
    address(true);
    void calculateNow();
  });
  find('[data-filter-reset]').addEventListener('click', () => {
    const { own, extra, spend, sorts } = state;
    state = {
      ranges: {},
      sets: {},
      own,
      sorts,
      ...(extra !== undefined && { extra }),
      ...(spend !== undefined && { spend }),
    };
    fill();
    narrow();
    address(true);
  });
  find('[data-own-add]').addEventListener('click', () => {
    const panel = find<HTMLSelectElement>('#own-panel');
    const field = find<HTMLInputElement>('#own-price');
    const price = plainNumber(field.value);
    if (panel.value === '' || !price) {
      status.own.textContent = 'Choose a panel and write a price above 0.';
      (panel.value === '' ? panel : field).focus();
      return;
    }
    field.value = '';
    setOwn(panel.value, price);
  });
  find('[data-own-reset]').addEventListener('click', () => {
    const { extra: _, ...rest } = state;
    state = { ...rest, own: new Map() };
    fill();
    address(true);
    void calculateNow();
    find<HTMLSelectElement>('#own-panel').focus();
  });
  addEventListener('popstate', () => {
    typedIn = null;
    apply(location.search);
  });
  form.hidden = false;
  if (ask) ask.hidden = false;
  apply(location.search);
}

function isFilterSet(state: GuideState, name: string): boolean {
  if (name === 'since') return state.since !== undefined;
  if (name === 'claims') return state.hasHeld === true;
  const set = SETS.find((it) => it === name);
  return set ? (state.sets[set]?.length ?? 0) > 0 : state.ranges[name] !== undefined;
}

/** A part of the tools that the address speaks of stands open. */
function isInUse(state: GuideState, part: string | undefined, filters: readonly string[]): boolean {
  if (part === 'own') return state.own.size > 0 || state.extra !== undefined;
  return filters.some((name) => isFilterSet(state, name));
}
