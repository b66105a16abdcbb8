/** The page of plots: drawn from its tables, of the panels that the guide's filters leave; picked points are compared. */
import { html } from '../../shared/browser/dom.ts';
import { type FilterNames, filterWords, knownBy } from './filter-words.ts';
import { readAddress } from './guide-address.ts';
import { type FilterRow, RowFilter } from './guide-filter.ts';
import { decodeRow, shownNumbers } from './row-data.ts';

const said = document.querySelector<HTMLElement>('[data-plots-filters]');
const bar = document.querySelector<HTMLElement>('[data-plots-picked]');
const sections = [...document.querySelectorAll<HTMLElement>('[data-plot]')];

/** Hides the rows that the address's filters leave out, and says which filters are on. */
function filter(place: HTMLElement): void {
  const names: FilterNames = JSON.parse(place.dataset.plotsFilters ?? '{}');
  const known = knownBy(names);
  const { state } = readAddress(location.search, known);
  const words = filterWords(state, names);
  if (words.length === 0) return;
  const rows = sections.flatMap((section) => [...section.querySelectorAll<HTMLTableRowElement>('tr[data-f]')]);
  const data = rows.map(
    (row): FilterRow => ({
      ...decodeRow(row.dataset.f ?? '', known.ranges),
      wavelengths: shownNumbers(row.dataset.nm ?? ''),
      sizeClass: row.dataset.class ?? '',
    }),
  );
  const { isLeft } = new RowFilter(data, known.ranges).apply(state);
  rows.forEach((row, i) => {
    row.hidden = isLeft[i] !== 1;
  });
  const slugs = (kept: boolean) => new Set(data.flatMap((it, i) => (!kept || isLeft[i] === 1 ? [it.slug] : [])));
  place.replaceChildren(
    `${slugs(true).size} of ${slugs(false).size} panels, by the guide’s filters: ${words.join('; ')}. `,
    html('a', { href: `/${location.search}` }, 'Change them'),
    ' or ',
    html('a', { href: '/plots/' }, 'show all panels'),
    '.',
  );
}

/** Panels that are picked, over all plots; the bar has the comparison's address less the panels, and how many it takes. */
class Picked {
  readonly #bar: HTMLElement;
  readonly #names = new Map<string, string>();

  constructor(bar: HTMLElement) {
    this.#bar = bar;
  }

  toggle(slug: string, name: string): void {
    if (!this.#names.delete(slug)) {
      if (this.#names.size >= Number(this.#bar.dataset.most)) {
        this.#show('No more than these. ');
        return;
      }
      this.#names.set(slug, name);
    }
    this.#show();
  }

  #show(problem = ''): void {
    for (const it of document.querySelectorAll<HTMLElement>('[data-point]')) {
      it.setAttribute('aria-pressed', String(this.#names.has(it.dataset.point ?? '')));
    }
    const slugs = [...this.#names.keys()];
    this.#bar.hidden = slugs.length === 0;
    const clear = html('button', { type: 'button' }, 'Clear');
    clear.addEventListener('click', () => {
      this.#names.clear();
      this.#show();
      document.querySelector<HTMLElement>('[data-point]')?.focus();
    });
    this.#bar.replaceChildren(
      problem,
      ...[...this.#names].flatMap(([slug, name], i) => [
        i > 0 ? ', ' : '',
        html('a', { href: `/panels/${slug}/` }, name),
      ]),
      ' ',
      slugs.length > 1
        ? html(
            'a',
            { href: `${this.#bar.dataset.compare}${slugs.map(encodeURIComponent).join(',')}`, class: 'go' },
            'Compare them',
          )
        : 'Pick another to compare.',
      ' ',
      clear,
    );
  }
}

async function draw(place: HTMLElement): Promise<void> {
  const picked = new Picked(place);
  try {
    const { drawPlot } = await import('./plot-drawing.ts');
    for (const section of sections) drawPlot(section, (slug, name) => picked.toggle(slug, name));
  } catch {
    for (const it of document.querySelectorAll<HTMLDetailsElement>('[data-plot] details')) it.open = true;
    place.hidden = false;
    place.textContent = 'The plots could not be drawn; the tables hold the same numbers.';
  }
}

if (said && bar) {
  filter(said);
  void draw(bar);
}
