/**
 * The comparison: panels are chosen here, and the choice lives in the address. Only the files of the chosen panels are
 * fetched.
 */

import { listed } from '../../../words/format.ts';
import { html } from '../../shared/browser/dom.ts';
import { unpackFigures } from '../../shared/browser/figure-pack.ts';
import { OtherFormat, readJson } from '../../shared/browser/read-json.ts';
import { showUnits } from '../../shared/browser/units.ts';
import { askedPanels, compareAddress, MOST_PANELS } from './compare-address.ts';
import type { RowWords } from './compare-rows.ts';
import { comparison } from './compare-view.ts';
import type { ComparedContender } from './compare-words.ts';
import { COMPARE_FORMAT, type ComparedPanel, type ListedPanel, type PanelList } from './compared-panel.ts';

const form = document.querySelector<HTMLFormElement>('form[data-compare]');
const select = form?.querySelector('select');
const chosenList = document.querySelector<HTMLElement>('[data-chosen]');
const status = document.querySelector<HTMLElement>('[data-compare-status]');
const place = document.querySelector<HTMLElement>('[data-compared]');

/** What the page calls the rows. */
const WORDS: RowWords = JSON.parse(place?.dataset.rows ?? '{}');

/** What gets the focus after a change: a panel's name, its button, or nothing. */
type Focus = { slug: string; on: 'name' | 'remove' } | 'select' | undefined;

class Comparison {
  readonly #panels: ReadonlyMap<string, ListedPanel>;
  readonly #files = new Map<string, Promise<ComparedContender>>();
  readonly #title = document.title;
  #slugs: string[] = [];
  /** Counts what was asked for, so that a slow answer does not overwrite a later one. */
  #turn = 0;
  readonly #select: HTMLSelectElement;
  readonly #chosen: HTMLElement;
  readonly #status: HTMLElement;
  readonly #place: HTMLElement;

  constructor(
    panels: readonly ListedPanel[],
    select: HTMLSelectElement,
    parts: [HTMLElement, HTMLElement, HTMLElement],
  ) {
    this.#panels = new Map(panels.map((it) => [it.slug, it]));
    this.#select = select;
    [this.#chosen, this.#status, this.#place] = parts;
  }

  /** Shows what the address asks for. */
  readAddress(): void {
    const { slugs, said } = askedPanels(location.search, (slug) => this.#panels.has(slug));
    void this.#show(slugs, said);
  }

  /** Adds the panel that is picked in the list. */
  addPicked(): void {
    const slug = this.#select.value;
    if (slug === '') this.#say(['Pick a panel in the list first.']);
    else if (this.#slugs.length >= MOST_PANELS) this.#say(['Five panels are the most; remove one first.']);
    else this.#go([...this.#slugs, slug], undefined);
  }

  #remove(slug: string): void {
    const at = this.#slugs.indexOf(slug);
    const left = this.#slugs.filter((it) => it !== slug);
    const next = left[Math.min(at, left.length - 1)];
    this.#go(left, next === undefined ? 'select' : { slug: next, on: 'remove' });
  }

  #makeFirst(slug: string): void {
    this.#go([slug, ...this.#slugs.filter((it) => it !== slug)], { slug, on: 'name' });
  }

  #go(slugs: string[], focus: Focus): void {
    history.pushState(null, '', compareAddress(slugs));
    void this.#show(slugs, [], focus);
  }

  async #show(slugs: readonly string[], said: readonly string[], focus?: Focus): Promise<void> {
    this.#slugs = [...slugs];
    const turn = ++this.#turn;
    this.#showChoice();
    this.#setFocus(focus);
    const answers = await Promise.allSettled(slugs.map((slug) => this.#file(slug)));
    if (turn !== this.#turn) return;
    const contenders = answers.flatMap((it) => (it.status === 'fulfilled' ? [it.value] : []));
    const unread = slugs.filter((_, i) => answers[i]?.status === 'rejected').map((it) => this.#nameOf(it));
    const outdated = answers
      .map((it) => (it.status === 'rejected' ? it.reason : undefined))
      .find((it) => it instanceof OtherFormat);
    this.#place.replaceChildren(...comparison(contenders, WORDS));
    showUnits(this.#place);
    const names = contenders.map((it) => it.panel.name);
    document.title = names.length > 0 ? `${listed(names)} – ${this.#title}` : this.#title;
    this.#say([
      ...said,
      ...(unread.length > 0 ? [`The figures of ${listed(unread)} could not be read.`] : []),
      ...(outdated ? [`${outdated.message.charAt(0).toUpperCase()}${outdated.message.slice(1)}.`] : []),
      ...(names.length === 0 ? ['No panel is chosen yet. Pick two to five.'] : []),
      ...(names.length === 1 ? [`One panel is shown: ${names[0]}. Add another to compare it with.`] : []),
      ...(names.length > 1 ? [`${names.length} panels side by side: ${listed(names)}. The first is ${names[0]}.`] : []),
    ]);
  }

  #say(sentences: readonly string[]): void {
    this.#status.textContent = sentences.join(' ');
  }

  #nameOf(slug: string): string {
    return this.#panels.get(slug)?.name ?? slug;
  }

  /** A panel's file; one that could not be read is asked for again the next time. */
  #file(slug: string): Promise<ComparedContender> {
    const known = this.#files.get(slug);
    if (known) return known;
    const file = readJson<ComparedPanel>(`/data/compare/${slug}.json`, 'the figures', COMPARE_FORMAT).then((panel) => ({
      panel,
      figures: unpackFigures(panel),
    }));
    this.#files.set(slug, file);
    file.catch(() => this.#files.delete(slug));
    return file;
  }

  /** The chosen panels with their buttons, and the others in the list to pick from. */
  #showChoice(): void {
    const button = (slug: string, name: 'remove' | 'first', text: string, press: () => void) => {
      const it = html(
        'button',
        { type: 'button', 'data-act': name },
        text,
        html('span', { class: 'unseen' }, ` ${this.#nameOf(slug)}`),
      );
      it.addEventListener('click', press);
      return it;
    };
    this.#chosen.replaceChildren(
      ...this.#slugs.map((slug, i) =>
        html(
          'li',
          { 'data-slug': slug },
          html('span', { tabindex: -1, 'data-name': true }, this.#nameOf(slug)),
          i > 0 && button(slug, 'first', 'Make first', () => this.#makeFirst(slug)),
          button(slug, 'remove', 'Remove', () => this.#remove(slug)),
        ),
      ),
    );
    const open = [...this.#panels.values()].filter((it) => it.status !== 'withdrawn' && !this.#slugs.includes(it.slug));
    const groups = Map.groupBy(open, (it) => it.class ?? 'Size not known');
    this.#select.replaceChildren(
      html('option', { value: '' }, 'Pick a panel'),
      ...[...groups].map(([name, panels]) =>
        html('optgroup', { label: name }, ...panels.map((it) => html('option', { value: it.slug }, it.name))),
      ),
    );
  }

  #setFocus(focus: Focus): void {
    if (focus === undefined) return;
    if (focus === 'select') this.#select.focus();
    else {
      const item = [...this.#chosen.children].find((it) => it instanceof HTMLElement && it.dataset.slug === focus.slug);
      item?.querySelector<HTMLElement>(focus.on === 'name' ? '[data-name]' : '[data-act="remove"]')?.focus();
    }
  }
}

if (form && select && chosenList && status && place) {
  form.hidden = false;
  form.addEventListener('submit', (event) => event.preventDefault());
  try {
    const { panels } = await readJson<PanelList>('/data/compare.json', 'the panels', COMPARE_FORMAT);
    const comparisonOfPage = new Comparison(panels, select, [chosenList, status, place]);
    form.addEventListener('submit', () => comparisonOfPage.addPicked());
    addEventListener('popstate', () => comparisonOfPage.readAddress());
    comparisonOfPage.readAddress();
  } catch (error) {
    status.textContent =
      error instanceof OtherFormat
        ? `Nothing can be compared now: ${error.message}.`
        : 'The list of panels could not be read. Load the page again, or open the panels’ own pages.';
  }
}
