/** The guide's page: sorts and narrows its tables, calculates with other prices, and keeps all of it in the address. */

import { afterPaint } from '../../shared/browser/after-paint.ts';
import {
  type FormerNames,
  type GuideState,
  hasOwnPrices,
  type Known,
  readAddress,
  type SetName,
  type SortState,
  writeAddress,
} from './guide-address.ts';
import { type Filtered, filterNames, RowFilter } from './guide-filter.ts';
import { layRows } from './lay-rows.ts';
import type { PackedOffers } from './offers.ts';
import { orderControls } from './order-controls.ts';
import type { OwnPrices } from './own-prices.ts';
import type { OwnPricesForm } from './own-prices-form.ts';
import { rankedRows } from './ranked-rows.ts';
import { rowPicks } from './row-picks.ts';
import { TESTED } from './sortable-table.ts';
import { isFilterSet, showUse, unfold } from './tool-parts.ts';

/** Columns that the ranking by the other watt has too, besides that of the watt. */
const SHARED = ['name', 'price', TESTED];

const tools = document.querySelector<HTMLFormElement>('#guide-tools');
const ranking = document.querySelector<HTMLTableElement>('#ranking');
if (tools && ranking) start(tools, ranking);

function start(form: HTMLFormElement, element: HTMLTableElement): void {
  /** Asks what can be spent, where a page asks it; of the tools, but at the head of the page. */
  const ask = document.querySelector<HTMLFormElement>('#ask');
  const fields = () =>
    [form, ...(ask ? [ask] : [])].flatMap((it) => [...it.querySelectorAll<HTMLInputElement>('input[name]')]);
  const find = <T extends HTMLElement>(selector: string) => form.querySelector<T>(selector) as T;
  const status = { ignored: find('[data-ignored]'), count: find('[data-count]') };
  const ranges = form.dataset.ranges?.split(' ') ?? [];
  const filters = filterNames(ranges);
  const { sortable, rows } = rankedRows(element);
  const filter = new RowFilter(rows, ranges);
  const values = (name: string) =>
    [...form.querySelectorAll<HTMLInputElement>(`input[name="${name}"]`)].map((it) => it.value);
  const known: Known = {
    ranges,
    sets: { class: values('class'), maker: values('maker'), nm: values('nm'), flicker: values('flicker') },
    panels: rows.map((it) => it.slug),
    ...(form.dataset.formerly && { formerly: JSON.parse(form.dataset.formerly) as FormerNames }),
    tables: [...element.tBodies].map((it) => it.id.replace(/^table-/, '')),
    columns: sortable.columns.map((it) => it.id),
  };
  let state: GuideState = readAddress('', known).state;
  const parts = [...form.querySelectorAll<HTMLElement>('[data-part]')];
  for (const it of parts) {
    it.addEventListener('click', () => {
      unfold(it, it.getAttribute('aria-expanded') !== 'true');
      if (it.dataset.part === 'own') openOwnForm().catch(fail);
    });
  }

  /** The form's fields as a state; own prices and sorting are kept beside it. */
  const read = (): GuideState => {
    const search = new URLSearchParams();
    for (const { name, value, type, checked } of fields())
      if (type !== 'checkbox' || checked) search.append(name, value);
    const { state: found } = readAddress(`?${search}`, known);
    // What no field of this page asks for is carried on.
    const spend = !ask && state.spend !== undefined ? { spend: state.spend } : {};
    return { ...found, ...spend, own: state.own, ...(state.sort && { sort: state.sort }) };
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
    linkBases();
  };
  /** The ranking by the other watt is narrowed and sorted as this one, as far as it has the same columns. */
  const linkBases = () => {
    const { sort, ...rest } = state;
    const isShared = sort && (SHARED.includes(sort.column) || sort.column === sortable.first.column);
    const search = writeAddress({ ...rest, ...(isShared && { sort }) }, known);
    for (const it of document.querySelectorAll<HTMLAnchorElement>('[data-bases] a')) it.search = search;
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
    const isNarrowed = filtered.count < rows.length;
    sortable.narrow(isNarrowed ? filtered.isLeft : undefined);
    const words = `${filtered.count} of ${rows.length} ranked panels ${filtered.count === 1 ? 'is' : 'are'} left by the filters.`;
    status.count.textContent = isNarrowed ? words : '';
    find('[data-filter-reset]').hidden = !isNarrowed;
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
  const counting = afterPaint(() => {
    showCounts(filtered);
    for (const it of parts) showUse(it, state, filters);
  });
  const narrow = () => {
    filtered = filter.apply(state);
    showFilters(filtered);
    counting.plan();
  };

  let loading: Promise<[typeof import('./calculator.ts'), PackedOffers]> | undefined;
  const load = () => {
    loading ??= loadCalculator();
    return loading;
  };
  /** There once it has been opened, or there are prices in it. */
  let ownForm: Promise<OwnPricesForm> | undefined;
  const openOwnForm = () => {
    const names = () => rows.map(({ slug }, i) => ({ slug, name: sortable.nameOf(i) }));
    ownForm ??= import('./calculator.ts').then((it) => it.ownPricesForm(form, names(), setOwn, leaveOwn));
    return ownForm;
  };
  const fail = (error: unknown) => {
    const reason = error instanceof Error ? error.message : String(error);
    find('[data-own-status]').textContent = `Other prices can’t be used now: ${reason}.`;
    const answer = document.querySelector('[data-spend-answer]');
    if (answer && state.spend !== undefined) answer.textContent = `No answer now: ${reason}.`;
  };
  let isCalculated = false;
  const numbers = rows.map((it) => it.numbers);
  const calculateNow = async () => {
    const prices: OwnPrices = { own: state.own, extra: state.extra ?? 0 };
    const isWanted = hasOwnPrices(state);
    if (!isWanted && !isCalculated && state.spend === undefined) {
      void loading?.then(([calculator]) => calculator.clearAnswer());
      void ownForm?.then((it) => it.show(state));
      return;
    }
    try {
      const [calculator, offers] = await load();
      if (isWanted || isCalculated) {
        const shown = isWanted ? calculator.calculate(offers, prices) : undefined;
        // What is filtered and sorted by goes with the prices that the reader has.
        calculator.paintRows({ element, rows: sortable.rows, data: rows, numbers }, shown);
        calculator.paintFrontier(shown, offers);
        sortable.refresh();
        isCalculated = isWanted;
        narrow();
      }
      if (ask) calculator.paintAnswer(offers, prices, state.spend);
      const shownForm = await (isWanted ? openOwnForm() : ownForm);
      shownForm?.show(state, offers, (slug) => calculator.stepUpWords(offers, prices, slug));
    } catch (error) {
      fail(error);
    }
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
    sortable.sort(state.sort);
    showOrder(state.sort ?? sortable.first);
    narrow();
    linkBases();
    void calculateNow();
  };
  const follow = (isNew: boolean) => {
    const before = state;
    state = read();
    narrow();
    address(isNew);
    if (before.spend !== state.spend || before.extra !== state.extra) void calculateNow();
  };

  const keepSort = (sort: SortState) => {
    const { sort: _, ...rest } = state;
    const { scope, column, direction } = sortable.first;
    const isFirst = sort.scope === scope && sort.column === column && sort.direction === direction;
    state = isFirst ? rest : { ...rest, sort };
    showOrder(sort);
    address(true);
  };
  const showOrder = orderControls(form, sortable, (sort) => {
    sortable.sort(sort);
    keepSort(sort);
  });
  sortable.onSort = keepSort;
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
    const { own, extra, spend, sort } = state;
    state = {
      ranges: {},
      sets: {},
      own,
      ...(sort && { sort }),
      ...(extra !== undefined && { extra }),
      ...(spend !== undefined && { spend }),
    };
    fill();
    narrow();
    address(true);
    // The button is gone with what it cleared.
    find('[data-part=filter]').focus();
  });
  const leaveOwn = () => {
    const { extra: _, ...rest } = state;
    state = { ...rest, own: new Map() };
    fill();
    address(true);
    void calculateNow();
  };
  const bar = document.querySelector<HTMLElement>('[data-compare]');
  const picks =
    bar &&
    rowPicks(
      bar,
      sortable.rows,
      (row) => rows[row]?.slug ?? '',
      (row) => sortable.nameOf(row),
      (row) => [row - 1, row + 1].filter((it) => rows[it] && rows[it].sizeClass === rows[row]?.sizeClass),
    );
  sortable.onLive = (live) => picks?.addTo(live);
  addEventListener('popstate', () => {
    typedIn = null;
    apply(location.search);
  });
  form.hidden = false;
  if (ask) ask.hidden = false;
  apply(location.search);
  layRows(element);
  if (!location.hash && (state.sort || filters.some((it) => isFilterSet(state, it))) && isOpenedAnew())
    document.querySelector('#all-panels')?.scrollIntoView();
}

/** What calculates with other prices and sums, and what it calculates with; asked for by the first who needs it. */
async function loadCalculator(): Promise<[typeof import('./calculator.ts'), PackedOffers]> {
  const calculator = await import('./calculator.ts');
  return [calculator, await calculator.loadOffers()];
}

/** The page was not come back to: browsers then scroll to where it was left. */
function isOpenedAnew(): boolean {
  const [entry] = performance.getEntriesByType('navigation');
  return entry instanceof PerformanceNavigationTiming && entry.type === 'navigate';
}
